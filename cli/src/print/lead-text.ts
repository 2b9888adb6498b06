import type { LeadBlockRolled } from '@bloomrail/engine/line/flow-case/lead-of-case';
import type { FlowSolution, RollLoads } from '@bloomrail/engine/phenomena/metal-flow/solution';
import { type Column, table } from './table.ts';

interface Beside {
  readonly block: RollLoads;
  readonly carried: RollLoads;
  readonly hot: RollLoads;
}

/** The block of lead beside the hot bar: what the block shows, what it says of the bar, what the bar itself gives. */
export function leadText(
  { scale, ratio, at, block, carried, notes }: LeadBlockRolled,
  hot: FlowSolution,
): string {
  const rows = block.rolls.map((loads, i) => ({ block: loads, carried: carried[i], hot: hot.rolls[i] }));
  const head =
    `The same in lead at 20 °C, 1 : ${(1 / scale).toFixed(0)}; hot bar over lead ${ratio.toFixed(2)} ` +
    `(strain ${at.strain.toFixed(2)}, ${at.rate.toFixed(1)} 1/s; lead from memory, ±20 %)`;
  const shapes = `Elongation ${block.elongation.toFixed(3)} in lead, ${hot.elongation.toFixed(3)} in the hot bar.`;
  const lines = notes.map(({ text, advice }) => `◇ note  ${text}\n        ${advice}`);
  const caution = 'Lead is poisonous: local codes say how it may be cast, cut and cleaned away.';
  return [head, table(columns, rows), shapes, ...lines, caution].join('\n');
}

const kilo = (value: number, digits: number): string => (value / 1000).toFixed(digits);

const columns: readonly Column<Beside>[] = [
  { head: 'Roll', align: 'left', cell: ({ hot }) => hot.name },
  { head: 'lead', unit: 'kN', align: 'right', cell: ({ block }) => kilo(block.force, 2) },
  { head: 'says', unit: 'kN', align: 'right', cell: ({ carried }) => kilo(carried.force, 0) },
  { head: 'hot', unit: 'kN', align: 'right', cell: ({ hot }) => kilo(hot.force, 0) },
  { head: 'lead', unit: 'N·m', align: 'right', cell: ({ block }) => block.torque.toFixed(1) },
  { head: 'says', unit: 'kN·m', align: 'right', cell: ({ carried }) => kilo(carried.torque, 1) },
  { head: 'hot', unit: 'kN·m', align: 'right', cell: ({ hot }) => kilo(hot.torque, 1) },
];
