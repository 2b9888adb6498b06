import { problemOf } from '@bloomrail/engine/line/flow-case/problem';
import { must } from '@bloomrail/engine/outcome/result';
import { mirroredPass, wholePass } from '@bloomrail/engine/phenomena/metal-flow/mirrored-pass.fixture';
import { rollPass } from '@bloomrail/engine/phenomena/metal-flow/roll-pass';
import type { FlowSolution } from '@bloomrail/engine/phenomena/metal-flow/solution';
import { caseNamed, rolled } from './rolled.ts';
import { between, percentOver, type Row, signed } from './rows.ts';

const name = 'universal-rail';

/** The same pass seen from behind, and computed whole. */
export function symmetryRows(): Row[] {
  const problem = must(problemOf(caseNamed(name)));
  // Of the whole's eight modes five do not lean to a side: those the half must have for the same equations.
  const half = { ...problem, wishes: { ...problem.wishes, warping: 5 } };
  const [plain, seen, asWhole, whole] = [problem, mirroredPass(problem), half, wholePass(problem)].map(
    (each) => must(rollPass(each)),
  );
  const source = 'symmetry; the speed is settled to 0.1 %';
  const row = (what: string, value: number, most: number) =>
    between(`${name}, ${what}`, value, [-most, most], '%', source, 4);
  const force = ({ rolls }: FlowSolution) => rolls[0].force;
  return [
    row('seen from behind: horizontal force', percentOver(force(seen), force(plain)), 0.1),
    row('seen from behind: elongation', percentOver(seen.elongation, plain.elongation), 0.1),
    row(
      'seen from behind: side bending, reversed',
      percentOver(-seen.bending.momentY, plain.bending.momentY),
      0.1,
    ),
    row(
      'whole, not half, in the same modes: horizontal force',
      percentOver(force(whole), force(asWhole)),
      0.5,
    ),
    row(
      'whole, not half, in the same modes: elongation',
      percentOver(whole.elongation, asWhole.elongation),
      0.1,
    ),
    row('whole: lower roll against upper', percentOver(whole.rolls[1].force, force(whole)), 0.1),
  ];
}

/** One pass on one mesh with so many slices. */
export interface Meshed {
  readonly slices: number;
  readonly ms: number;
  readonly solution: FlowSolution;
}

export function meshed(nodes: number, slices: number): Meshed {
  const start = performance.now();
  const solution = rolled(name, { nodes, slices });
  return { slices, ms: performance.now() - start, solution };
}

/** How far answers lie apart: of the force, and of the elongation. */
export function scatterRows(what: string, runs: readonly Meshed[]): Row[] {
  const apart = (values: number[]) => Math.max(...values) - Math.min(...values);
  const forces = runs.map(({ solution }) => solution.rolls[0].force);
  const elongations = runs.map(({ solution }) => solution.elongation);
  const row = (of: string, value: number, most: number, unit: string, digits: number) =>
    between(
      `${name}, ${what}: ${of}, largest less smallest`,
      value,
      [0, most],
      unit,
      'its own scatter',
      digits,
    );
  return [
    row('horizontal force', (100 * apart(forces)) / Math.min(...forces), 3, '%', 1),
    row('elongation', apart(elongations), 0.003, '', 4),
  ];
}

export function scatterTable(runs: readonly Meshed[]): string {
  const lines = runs.map(({ slices, ms, solution }) => {
    const { rolls, quality, elongation, energy, steps } = solution;
    const forces = rolls.map(({ force }) => (force / 1e3).toFixed(0));
    const torque = (rolls[0].torque / 1e3).toFixed(1);
    const cells = [quality.nodes, slices, steps.length, ...forces, torque, elongation.toFixed(4)];
    return `| ${[...cells, signed(100 * energy.error, 2), quality.marches, ms.toFixed(0)].join(' | ')} |`;
  });
  return [
    '| nodes | slices wished | slices taken | horizontal kN | foot kN | head kN | torque kN·m | elongation | energy % | marches | ms, this machine, shared |',
    '|---|---|---|---|---|---|---|---|---|---|---|',
    ...lines,
  ].join('\n');
}
