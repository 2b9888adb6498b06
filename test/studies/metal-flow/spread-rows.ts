import { must } from '@bloomrail/engine/outcome/result';
import { meanStress } from '@bloomrail/engine/phenomena/metal-flow/mean-stress.fixture';
import { flatPass, shidaSteel } from '@bloomrail/engine/phenomena/metal-flow/passes.fixture';
import { rollPass } from '@bloomrail/engine/phenomena/metal-flow/roll-pass';
import type { FlowSolution } from '@bloomrail/engine/phenomena/metal-flow/solution';
import { contactLength } from '@bloomrail/engine/phenomena/rolling/contact';
import { pressureFactor } from '@bloomrail/engine/phenomena/rolling/force';
import type { RubbedDraught } from '@bloomrail/engine/phenomena/rolling/pass';
import { beese } from '@bloomrail/engine/phenomena/rolling/spread/beese';
import { elKalaySparling } from '@bloomrail/engine/phenomena/rolling/spread/el-kalay-sparling';
import { helmiAlexander } from '@bloomrail/engine/phenomena/rolling/spread/helmi-alexander';
import { wusatowski } from '@bloomrail/engine/phenomena/rolling/spread/wusatowski';
import { between, percentOver, type Row } from './rows.ts';

/** L/h and reductions that friction 0.35 can still draw in at 300 mm radius, each at four widths: 28 passes. */
const arcs = [
  [0.5, 0.1],
  [1, 0.1],
  [1, 0.2],
  [1, 0.3],
  [1.6, 0.1],
  [1.6, 0.2],
  [1.6, 0.3],
] as const;
const widths = [1, 2, 4, 8];

interface FlatRun {
  readonly solution: FlowSolution;
  readonly draught: RubbedDraught;
}

function flatRun(ratio: number, r: number, width: number): FlatRun {
  const R = 0.3;
  const h0 = (R * r) / (ratio * (1 - r / 2)) ** 2;
  const draught = { h0, h1: h0 * (1 - r), b0: width * h0, R, friction: 0.35 };
  const steel = shidaSteel(0.5);
  const problem = flatPass(
    { ...draught, speed: 2 },
    { part: 'quarter', nodes: 220, steel, temperature: 1050, wishes: { slices: 20 } },
  );
  return { solution: must(rollPass(problem)), draught };
}

const laws = [wusatowski, elKalaySparling('rough, light'), beese, helmiAlexander];

/** Flat passes against what handbooks say of spread and force. */
export function spreadRows(): Row[] {
  const runs = arcs.flatMap(([ratio, r]) => widths.map((width) => flatRun(ratio, r, width)));
  const off = runs.map(widthOff);
  const source = `mean of Wusatowski, El-Kalay & Sparling (rough, light scale), Beese, Helmi & Alexander; all from memory`;
  const name = `${runs.length} flat passes, mean width on leaving`;
  const far = off.reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most), 0);
  return [
    between(`${name}: root mean square`, rootMeanSquare(off), [0, 1.2], '%', source, 2),
    between(
      `${name}: mean`,
      off.reduce((sum, each) => sum + each, 0) / off.length,
      [-1.2, 1.2],
      '%',
      source,
      2,
    ),
    between(`${name}: farthest`, far, [-3, 3], '%', source, 2),
    ...forceRows(runs.filter(({ draught: { b0, h0 } }) => b0 > 7 * h0)),
  ];
}

/** Area over height: the bulge evened out. */
const widthOff = ({ solution: { sections }, draught }: FlatRun): number =>
  percentOver(
    sections[sections.length - 1].area / draught.h1,
    laws.reduce((sum, law) => sum + law.width(draught), 0) / laws.length,
  );

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / values.length);

/** The widest bars are nearly in plane strain; no band, for neither law is exact there. */
function forceRows(runs: readonly FlatRun[]): Row[] {
  return runs.flatMap(({ solution, draught }) => {
    const stress = meanStress(solution);
    const [top] = solution.rolls;
    const arc = contactLength(draught);
    const pressure = pressureFactor({ ...draught, b1: draught.b0, flowStress: stress });
    const found = top.force / (arc * draught.b0 * (2 / Math.sqrt(3)) * stress);
    const name = `flat, b/h 8, L/h ${(arc / ((draught.h0 + draught.h1) / 2)).toFixed(1)}, reduction ${(1 - draught.h1 / draught.h0).toFixed(1)}`;
    return [
      between(
        `${name}: force`,
        percentOver(found, pressure),
        undefined,
        '%',
        'larger of Sims and slip lines, sticking',
      ),
      between(
        `${name}: lever arm over L`,
        top.torque / top.force / arc,
        undefined,
        '',
        'handbooks: 0.45 to 0.5',
        3,
      ),
    ];
  });
}
