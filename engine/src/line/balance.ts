import type { Balance } from '../bar/station.ts';
import { sum } from '../numerics/sum.ts';
import type { Visit } from './visit.ts';

/** How well the whole line closes: what came in, against what left by name and what is still there. */
export interface LineBalance {
  /** kg charged, kg delivered from this bar, and kg lost on the way by name. */
  readonly massIn: number;
  readonly massOut: number;
  readonly massLost: Readonly<Record<string, number>>;
  /** |in − out − lost| over in. */
  readonly massRelative: number;
  /** J the bar was given and lost, by name, over the whole line. */
  readonly energyGained: Readonly<Record<string, number>>;
  /** Sum of every visit's gap, and of gaps between visits, over the heat that the furnace gave. */
  readonly energyRelative: number;
}

export function lineBalance(visits: readonly Visit[]): LineBalance {
  const balances = visits.map(({ record }) => record.balance);
  const [first, last] = [balances[0], balances[balances.length - 1]];
  const massLost = addUp(balances.map(({ massLostKg }) => massLostKg));
  const energyGained = addUp(balances.map(({ energyGainedJ }) => energyGainedJ));
  const given = Math.max(...balances.map(({ energyOutJ }) => Math.abs(energyOutJ)));
  return {
    massIn: first.massInKg,
    massOut: last.massOutKg,
    massLost,
    massRelative: Math.abs(first.massInKg - last.massOutKg - total(massLost)) / first.massInKg,
    energyGained,
    energyRelative: energyGap(balances) / given,
  };
}

/** Every visit must account for its change, and each must begin with the heat that the one before left. */
function energyGap(balances: readonly Balance[]): number {
  return balances.reduce((gap, { energyInJ, energyOutJ, energyGainedJ }, i) => {
    const arriving = i > 0 ? balances[i - 1].energyOutJ : energyInJ;
    return gap + Math.abs(energyOutJ - energyInJ - total(energyGainedJ)) + Math.abs(energyInJ - arriving);
  }, 0);
}

function addUp(rows: readonly Readonly<Record<string, number>>[]): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const row of rows)
    for (const [name, value] of Object.entries(row)) sums[name] = (sums[name] ?? 0) + value;
  return sums;
}

const total = (row: Readonly<Record<string, number>>): number => sum(Object.values(row));
