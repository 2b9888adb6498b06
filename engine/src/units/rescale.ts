import { type Unit, units } from './unit.ts';

/** Names of all units, for schemas in which a value names its own. */
export const unitNames = Object.keys(units) as [Unit, ...Unit[]];

/** A copy of a group in which the numbers under `keys` are converted by the unit that the group names; others stay. */
export function rescaled<T extends object, K extends keyof T>(
  group: T,
  keys: readonly K[],
  unit: Unit,
  convert: (value: number, unit: Unit) => number,
): T {
  const numbers = keys.filter((key) => typeof group[key] === 'number');
  return {
    ...group,
    ...Object.fromEntries(numbers.map((key) => [key, convert(group[key] as number, unit)])),
  };
}
