import type { Bar } from '../../bar/bar.ts';
import type { Field } from '../../outcome/field.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import type { ConductOptions } from '../../phenomena/conduction/conduct.ts';
import { type Conductor, conductor } from '../../phenomena/conduction/conductor.ts';
import { type CoolingHistory, coolingHistory } from '../../phenomena/conduction/cooling-history.ts';
import type { HeatProblem, HeatState } from '../../phenomena/conduction/heat-problem.ts';
import { naturalConvection } from '../../phenomena/radiation/free-surface.ts';
import { radiosity } from '../../phenomena/radiation/radiosity.ts';
import { type Row, viewFactors } from '../../phenomena/radiation/view-factors.ts';
import type { TriMesh } from '../../section/mesh.ts';
import { austenite } from '../../steel/austenite.ts';
import { pearlite } from '../../steel/pearlite.ts';
import { pearliteKinetics } from '../../steel/transformation.ts';

/** The middle of the bar from the last pass to the end of the bed. Times in s since the last pass; mesh as it lies. */
export interface Cooling {
  readonly times: Field;
  /** One row per time, °C per node. */
  readonly temperature: readonly Field[];
  readonly pearlite: readonly Field[];
  /** Row at which the bar is on the bed, straight or pre-bent, and free of stress. */
  readonly onBed: number;
  /** Heat taken up by channel, J per metre; negative. */
  readonly gained: Readonly<Record<string, number>>;
}

export interface CoolingCase {
  readonly bar: Bar;
  /** The section as it lies on the bed, y up. */
  readonly mesh: TriMesh;
  readonly air: number;
  readonly emissivity: number;
  /** m, centre to centre. */
  readonly pitch: number;
  /** s between last pass and bed. */
  readonly before: number;
  /** °C, hottest point when the bar leaves. */
  readonly leaveBelow: number;
}

/** Grid bars and rollers of a bed leave air below the rail; the hall's floor is taken this far down, m (assumed). */
const floorBelow = 0.3;

/** Computed in pieces of this length, s; the last one is cut at the temperature of leaving. */
const piece = 3600;
const mostPieces = 12;

/** Alone in the air first, then between equal neighbours, by conduction with the change to pearlite. */
export function cool(each: CoolingCase, options: Omit<ConductOptions, 'observe'> = {}): Result<Cooling> {
  const body = conductor(each.mesh);
  const start = { temperature: each.bar.middle.temperature };
  const alone = coolingHistory(body, problem(each, body), start, Math.max(each.before, 1e-3), options);
  if (!alone.ok) return alone;
  const parts = [alone.value];
  const lowest = Math.min(...Array.from(each.mesh.xy).filter((_, i) => i % 2));
  const onBed = problem(each, body, { pitch: each.pitch, floor: lowest - floorBelow });
  for (let k = 0; k < mostPieces; k++) {
    const from = endOf(parts[parts.length - 1]);
    const next = coolingHistory(body, onBed, from, piece, { ...options, firstStep: k ? 120 : 0.5 });
    if (!next.ok) return next;
    const leaves = timeBelow(next.value, each.leaveBelow);
    if (leaves === undefined) {
      parts.push(next.value);
      continue;
    }
    const last = coolingHistory(body, onBed, from, leaves, { ...options, firstStep: k ? 120 : 0.5 });
    if (!last.ok) return last;
    return ok(joined([...parts, last.value]));
  }
  const hours = (mostPieces * piece) / 3600;
  return fail({
    model: 'cooling bed',
    reason: `After ${hours} h on the bed the bar is still above ${each.leaveBelow} °C.`,
    residual: Math.max(...parts[parts.length - 1].end.temperature) - each.leaveBelow,
  });
}

function problem({ bar, mesh, air, emissivity }: CoolingCase, body: Conductor, row?: Row): HeatProblem {
  const factors = viewFactors(mesh, row);
  return {
    massPerMetre: bar.mass / bar.length,
    law: austenite,
    change: { product: pearlite, kinetics: pearliteKinetics() },
    surface: [radiosity(factors, { emissivity, ambient: air }), naturalConvection(body.skin, air)],
  };
}

const endOf = ({ end }: CoolingHistory): HeatState => ({ temperature: end.temperature, psi: end.psi });

/** Time at which the hottest node passes a temperature, straight between steps; undefined when it stays above. */
function timeBelow({ times, temperature }: CoolingHistory, limit: number): number | undefined {
  for (let k = 1; k < times.length; k++) {
    const [before, after] = [Math.max(...temperature[k - 1]), Math.max(...temperature[k])];
    if (after > limit) continue;
    const share = before > limit ? (before - limit) / (before - after) : 0;
    return Math.max(1, times[k - 1] + share * (times[k] - times[k - 1]));
  }
  return undefined;
}

/** Histories end to end; the state that two share is kept once. */
function joined(parts: readonly CoolingHistory[]): Cooling {
  const times: number[] = [];
  const temperature: Field[] = [];
  const pearlite: Field[] = [];
  const gained: Record<string, number> = {};
  let [offset, onBed] = [0, 0];
  parts.forEach((part, p) => {
    for (let k = p ? 1 : 0; k < part.times.length; k++) {
      times.push(offset + part.times[k]);
      temperature.push(part.temperature[k]);
      pearlite.push(part.pearlite[k]);
    }
    if (p === 0) onBed = times.length - 1;
    offset += part.times[part.times.length - 1];
    for (const [name, heat] of Object.entries(part.end.gained)) gained[name] = (gained[name] ?? 0) + heat;
  });
  return { times: Float64Array.from(times), temperature, pearlite, onBed, gained };
}
