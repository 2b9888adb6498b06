import { must } from '@bloomrail/engine/outcome/result';
import { flatPass, plainSteel } from '@bloomrail/engine/phenomena/metal-flow/passes.fixture';
import { rollPass } from '@bloomrail/engine/phenomena/metal-flow/roll-pass';
import type { FlowSolution } from '@bloomrail/engine/phenomena/metal-flow/solution';
import { widthAt } from '@bloomrail/engine/section/crossings';
import { exitOutline, json, rolled, widest } from './rolled.ts';
import { between, percentOver, type Row } from './rows.ts';

const source = 'own full 3-D solution';

/** Slices against own full 3-D solutions of the same passes. */
export const solidRows = (): Row[] => [...flatRows(), ...boxRows(), ...ovalRows(), ...railRows()];

interface FlatSolution {
  readonly h0: number;
  readonly b0: number;
  readonly h1: number;
  readonly force: number;
  readonly torque: number;
  readonly forwardSlip: number;
  readonly spreadExponent: number;
  readonly width: number;
}

const flatRows = (): Row[] =>
  json('reference/cases/rolling-3d/flat-passes.json').passes.flatMap((solved: FlatSolution) =>
    flatRowsOf(solved),
  );

function flatRowsOf({ h0, b0, h1, force, torque, forwardSlip, spreadExponent, width }: FlatSolution): Row[] {
  const bar = { h0: h0 / 1e3, h1: h1 / 1e3, b0: b0 / 1e3, R: 0.3, speed: 2, friction: 0.35 };
  const given = { part: 'quarter', nodes: 300, steel: plainSteel, wishes: { slices: 20 } } as const;
  const solution = must(rollPass(flatPass(bar, given)));
  const name = `flat ${h0} × ${b0} → ${h1}`;
  const [top] = solution.rolls;
  const exponent = Math.log(h0 / h1 / solution.elongation) / Math.log(h0 / h1);
  // With L/h 0.5 the shear at the entry weighs most, and is known least.
  const doubt = h0 > 100 ? 15 : 6;
  return [
    between(`${name}: force`, percentOver(top.force / 1e3, force), [-1, 7], '%', source),
    between(`${name}: torque`, percentOver(top.torque / 1e3, torque), [-doubt, doubt], '%', source),
    between(`${name}: forward slip`, solution.forwardSlip - forwardSlip, [-0.015, 0.015], '', source, 4),
    between(`${name}: spread exponent`, exponent - spreadExponent, [-0.05, 0.05], '', source, 3),
    between(`${name}: width`, percentOver(1e3 * widest(solution), width), [-1, 1], '%', source),
    ...balanceRows(name, solution),
  ];
}

/** What every answer owes: energy, volume, and no more shear along the bar than the steel bears. */
function balanceRows(name: string, { energy, quality }: FlowSolution): Row[] {
  const borne = 'what the steel can bear';
  return [
    between(`${name}: energy`, 100 * energy.error, [-1, 1], '%', 'balance', 2),
    between(`${name}: volume`, 100 * quality.volumeDrift, [-0.3, 0.3], '%', 'balance', 2),
    between(`${name}: axial shear, highest of any element`, quality.largestShear, [0, 1], 'k', borne, 2),
  ];
}

/** A shaped pass beside its 3-D solution. */
function besideSolid(name: string) {
  const solution = rolled(name);
  const { results } = json(`reference/cases/rolling-3d/${name}.json`);
  const best = (quantity: string): number =>
    results.find((row: { readonly name: string }) => row.name.startsWith(quantity)).best;
  const percent = (what: string, value: number, quantity: string, low: number, high: number) =>
    between(`${name}: ${what}`, percentOver(value, Math.abs(best(quantity))), [low, high], '%', source);
  const apart = (what: string, value: number, quantity: string, most: number) =>
    between(`${name}: ${what}`, value - best(quantity), [-most, most], '', source, 4);
  const [forces, torques] = [
    solution.rolls.map(({ force }) => force / 1e3),
    solution.rolls.map(({ torque }) => torque / 1e3),
  ];
  const outline = exitOutline(solution);
  return { name, solution, percent, apart, forces, torques, outline };
}

function boxRows(): Row[] {
  const { name, solution, percent, apart, forces, torques, outline } = besideSolid('box-250-to-200');
  return [
    percent('force', forces[0], 'F_y top', 0, 8),
    percent('torque', torques[0], 'torque top', -4, 4),
    apart('elongation', solution.elongation, 'elongation', 0.003),
    percent('width', 1e3 * widest(solution), 'width_max', -0.8, 0.8),
    percent('width in the middle', 1e3 * widthAt(outline, 0), 'width_y0', -0.8, 0.8),
    percent('width 80 mm above it', 1e3 * widthAt(outline, 0.08), 'width_y80', -0.8, 0.8),
    ...balanceRows(name, solution),
  ];
}

function ovalRows(): Row[] {
  const { name, solution, percent, apart, forces, torques, outline } = besideSolid('square-to-oval');
  return [
    percent('force', forces[0], 'F_y top', -4, 4),
    percent('torque', torques[0], 'torque top', -4, 4),
    apart('elongation', solution.elongation, 'elongation', 0.008),
    percent('width 10 mm above the middle', 1e3 * widthAt(outline, 0.01), 'width_y10', -1, 1),
    percent('width', 1e3 * widest(solution), 'width_max', -1, 1),
    ...balanceRows(name, solution),
  ];
}

function railRows(): Row[] {
  const { name, solution, percent, apart, forces, torques, outline } = besideSolid('universal-rail');
  /** Widest across the gap of the part between two places along the roll, mm. */
  const across = (from: number, to: number) =>
    2e3 * Math.max(...outline.vertices.map(({ x, y }) => (x >= from && x <= to ? y : 0)));
  return [
    percent('horizontal force', forces[0], 'F_y horizontal', -8, 8),
    percent('horizontal torque', torques[0], 'torque horizontal', -6, 6),
    percent('foot roll force', forces[1], 'F_z foot', -12, 12),
    percent('head roll force', forces[2], 'F_z head', -25, 25),
    apart('elongation', solution.elongation, 'elongation', 0.01),
    percent('foot width', across(0, 0.06), 'foot_width', -1.5, 1.5),
    percent('head width', across(0.125, 0.18), 'head_width', -4, 4),
    apart('forward slip', solution.forwardSlip, 'forward slip', 0.015),
    ...balanceRows(name, solution),
  ];
}
