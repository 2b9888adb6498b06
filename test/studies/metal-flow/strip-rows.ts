import { must } from '@bloomrail/engine/outcome/result';
import { meanStress } from '@bloomrail/engine/phenomena/metal-flow/mean-stress.fixture';
import {
  flatPass,
  plainSteel,
  powerSteel,
  stripPass,
  stripWidth,
} from '@bloomrail/engine/phenomena/metal-flow/passes.fixture';
import type { FlowProblem } from '@bloomrail/engine/phenomena/metal-flow/problem';
import { momentOnRoll } from '@bloomrail/engine/phenomena/metal-flow/roll-moment.fixture';
import { rollPass } from '@bloomrail/engine/phenomena/metal-flow/roll-pass';
import {
  neutralAngle,
  neutralHeight,
  simsFactor,
  simsLeverArm,
} from '@bloomrail/engine/phenomena/rolling/sims';
import { between, percentOver, type Row } from './rows.ts';

/** L/h and reduction. */
const arcs = [
  [0.53, 0.1],
  [0.94, 0.15],
  [1.28, 0.2],
  [1.7, 0.2],
  [2.2, 0.3],
  [3.81, 0.3],
  [5.39, 0.3],
] as const;

const h0 = 0.1;
const elements = 8;

/** Very wide bars that stick to the rolls, their steel hardly hardened by rate as Sims has it. */
const strip = (ratio: number, r: number, shear: number) => {
  const flat = { h0, h1: h0 * (1 - r), R: ((ratio * (1 - r / 2)) ** 2 * h0) / r };
  const steel = powerSteel(100e6, 0.01, 1);
  const problem = stripPass(
    { ...flat, speed: 1, friction: 10, rows: elements },
    { steel, wishes: { slices: 20, shear, ...(shear === 0 ? { warping: 0 } : {}) } },
  );
  return { problem, draught: { ...flat, b0: 1, b1: 1, friction: 0.4, flowStress: 1 } };
};

export const stripRows = (): Row[] => [...arcs.flatMap(([ratio, r]) => simsRows(ratio, r)), ...momentRows()];

function simsRows(ratio: number, r: number): Row[] {
  const { problem, draught } = strip(ratio, r, 0);
  const solution = must(rollPass(problem));
  const [top] = solution.rolls;
  const arc = Math.sqrt(draught.R * h0 * r);
  const factor = top.force / (stripWidth(h0, elements) * arc * (2 / Math.sqrt(3)) * meanStress(solution));
  const slip = (neutralHeight(draught) / draught.h1) * Math.cos(neutralAngle(draught)) - 1;
  const { speed } = solution.sections[solution.sections.length - 1];
  const row = (what: string, value: number, most: number, thin = true) =>
    between(
      `strip, L/h ${ratio}, reduction ${r}: ${what}`,
      value,
      thin ? [-most, most] : undefined,
      '%',
      'Sims 1954 (formula from memory): sticking, plane sections',
    );
  // Below L/h 0.9 Sims is known to be too low: shown, not held.
  return [
    row('pressure factor', percentOver(factor, simsFactor(draught)), 4, ratio > 0.9),
    row('forward slip', percentOver(speed - 1, slip), 5, ratio > 0.9),
    row('lever arm', percentOver(top.torque / top.force / arc, simsLeverArm(draught)), 4, ratio > 0.9),
  ];
}

/** Torque once by the power of friction, once by the moment of all that presses and rubs on the roll. */
function momentRows(): Row[] {
  const flat = (b: number, h: number, to: number) =>
    flatPass(
      { b0: b, h0: h, h1: to, R: 0.3, speed: 2, friction: 0.35 },
      { part: 'quarter', nodes: 300, steel: plainSteel, wishes: { slices: 20 } },
    );
  return [
    momentRow('flat 60 × 60 → 48', flat(0.06, 0.06, 0.048)),
    momentRow('flat 60 × 120 → 48', flat(0.12, 0.06, 0.048)),
    momentRow('flat 133 × 133 → 119.7', flat(0.133, 0.133, 0.1197)),
    momentRow('strip, L/h 1.28, reduction 0.2', strip(1.28, 0.2, 1).problem),
    momentRow('strip, L/h 3.81, reduction 0.3', strip(3.81, 0.3, 1).problem),
  ];
}

function momentRow(name: string, problem: FlowProblem): Row {
  const solution = must(rollPass(problem));
  const most = 100 / solution.steps.length;
  const apart = percentOver(momentOnRoll(solution, problem.rolls[0]), solution.rolls[0].torque);
  const source = 'equilibrium; half a slice of the lever arm may be missed';
  return between(`${name}: moment of pressures against torque`, apart, [-most, most], '%', source);
}
