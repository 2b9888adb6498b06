import { z } from 'zod';
import { isQuantity, type Shape } from '../../units/group.ts';
import { fromSi, type Unit, units } from '../../units/unit.ts';
import { CraneDimensions, CrownArc, RailDimensions } from './dimensions.ts';
import { type Profile, statuses } from './profile.ts';

/** One dimension of a drawing as a table shows it. */
export const ListedDimension = z.strictObject({
  /** 'headDepth', 'crown.0.radius'. */
  name: z.string(),
  title: z.string(),
  /** In the unit; two values where a joint has two fillets. */
  values: z.array(z.number()),
  /** 'mm', or empty for a slope 1 : value. */
  unit: z.string(),
  status: z.enum([...statuses, 'own']),
  source: z.string(),
});
export type ListedDimension = z.output<typeof ListedDimension>;

/** Every dimension of a profile in the order of the construction, with its status and source. */
export function dimensionsOf(profile: Profile): ListedDimension[] {
  return valuesOf(profile).map((row) => {
    const origin = profile.origins[row.name] ?? { status: 'own' as const, source: 'given with the profile' };
    return { ...row, ...origin };
  });
}

type Row = Omit<ListedDimension, 'status' | 'source'>;

function valuesOf(profile: Profile): Row[] {
  if (profile.family === 'crane') return rowsOf(CraneDimensions.shape, profile.dimensions, '');
  const rows = rowsOf(RailDimensions.shape, profile.dimensions, '');
  const crown = profile.dimensions.crown.flatMap((arc, i) => rowsOf(CrownArc.shape, arc, `crown.${i}.`));
  return [...rows.slice(0, 3), ...crown, ...rows.slice(3)];
}

function rowsOf(shape: Shape, values: object, prefix: string): Row[] {
  return Object.entries(shape).flatMap(([key, entry]) => {
    const value = (values as Record<string, number | readonly number[] | undefined>)[key];
    if (!isQuantity(entry) || value === undefined) return [];
    const each = typeof value === 'number' ? [value] : value;
    const inUnit = each.map((one) => printed(one, entry.unit));
    return [{ name: prefix + key, title: entry.title, values: inUnit, unit: units[entry.unit].label }];
  });
}

const printed = (value: number, unit: Unit): number => Number(fromSi(value, unit).toPrecision(12));
