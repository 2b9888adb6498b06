import type { Field } from '../../outcome/field.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { type BedSection, bedSection, heatTo, keep, momentsOf, settle } from './bed-section.ts';
import type { BedSteel } from './bed-steel.ts';
import type { Fibres } from './fibres.ts';

/** Temperatures (°C) and shares of pearlite of every fibre at rising times (s). */
export interface FibreHistory {
  readonly times: Field;
  readonly temperature: readonly Field[];
  readonly pearlite: readonly Field[];
}

/**
 * How the bed lets a piece of the bar bend, plane by plane: the moment (N·m) up to which weight and friction hold the
 * curvature. 0 is a free bar, Infinity one that is held.
 */
export interface BedHold {
  readonly height: number;
  readonly side: number;
}

export const freeBar: BedHold = { height: 0, side: 0 };
export const heldBar: BedHold = { height: Number.POSITIVE_INFINITY, side: Number.POSITIVE_INFINITY };

/** Rows by time. Curvature 1/m, positive: head (right side) longer. Stress Pa per fibre at the end, moments released. */
export interface Camber {
  readonly times: Field;
  readonly height: Float64Array;
  readonly side: Float64Array;
  /** Mean strain from the moment of last straightness. */
  readonly strain: Float64Array;
  /** Largest moment that the bed had to hold in the height plane, N·m. */
  readonly largestMoment: number;
  /** Curvatures after release. */
  readonly released: readonly [number, number];
  readonly stress: Float64Array;
  /** Largest plastic strain: zero where the run was elastic and proves little. */
  readonly plastic: number;
}

/**
 * Bending of a section while it cools: plane section, thermal and transformation strain, transformation plasticity and
 * yield in every fibre. The bar is straight, or pre-bent to `preCamber`, and free of stress at the first time.
 * `substeps` divides each interval of the history.
 */
export function camber(
  fibres: Fibres,
  steel: BedSteel,
  history: FibreHistory,
  hold: BedHold = freeBar,
  preCamber: readonly [number, number] = [0, 0],
  substeps = 1,
): Result<Camber> {
  const { times, temperature, pearlite } = history;
  const section = bedSection(fibres, steel, temperature[0], pearlite[0]);
  preBend(section, preCamber);
  const rows = { height: [preCamber[0]], side: [preCamber[1]], strain: [0] };
  let largestMoment = 0;
  for (let k = 1; k < times.length; k++) {
    for (let part = 1; part <= substeps; part++) {
      const share = part / substeps;
      heatTo(
        section,
        between(temperature[k - 1], temperature[k], share),
        between(pearlite[k - 1], pearlite[k], share),
      );
      if (!settleHeld(section, hold)) return unsettled(times[k]);
      largestMoment = Math.max(largestMoment, Math.abs(momentsOf(section)[0]));
      keep(section);
    }
    rows.height.push(section.strain[1]);
    rows.side.push(section.strain[2]);
    rows.strain.push(section.strain[0]);
  }
  if (settle(section, { height: false, side: false }) < 0) return unsettled(times[times.length - 1]);
  keep(section);
  return ok({
    times,
    height: Float64Array.from(rows.height),
    side: Float64Array.from(rows.side),
    strain: Float64Array.from(rows.strain),
    largestMoment,
    released: [section.strain[1], section.strain[2]],
    stress: section.stress,
    plastic: section.plastic.reduce((most, each) => Math.max(most, Math.abs(each)), 0),
  });
}

/** Hot bending by the crew leaves no stress worth counting: the bent shape is the one that is free of stress. */
function preBend({ fibres, reference, strain }: BedSection, [height, side]: readonly [number, number]): void {
  for (let i = 0; i < reference.length; i++) reference[i] -= height * fibres.y[i] + side * fibres.x[i];
  strain[1] = height;
  strain[2] = side;
}

/** Holds both planes first and lets go those whose moment is beyond what the bed can hold. */
function settleHeld(section: BedSection, hold: BedHold): boolean {
  const holding = { height: hold.height > 0, side: hold.side > 0 };
  const asked: [number, number] = [0, 0];
  for (let change = 0; change < 3; change++) {
    if (settle(section, holding, asked[0], asked[1]) < 0) return false;
    const [height, side] = momentsOf(section);
    if (holding.height && Math.abs(height) > hold.height) {
      holding.height = false;
      asked[0] = Math.sign(height) * hold.height;
    } else if (holding.side && Math.abs(side) > hold.side) {
      holding.side = false;
      asked[1] = Math.sign(side) * hold.side;
    } else return true;
  }
  return true;
}

const between = (from: Field, to: Field, share: number): Field =>
  share === 1 ? to : Float64Array.from(to, (each, i) => from[i] + share * (each - from[i]));

const unsettled = (time: number): Result<never> =>
  fail({
    model: 'camber',
    reason: `The section found no equilibrium at ${time.toFixed(0)} s.`,
    residual: 1,
  });
