import { units } from '@bloomrail/engine/units/unit';
import type { NumberField } from '../plan/fields.ts';

/** A value in its field: the unit's decimals, more only where the value has them. */
export function inField(value: number, { unit }: Pick<NumberField, 'unit'>): string {
  const own = unit === 'one' ? 0 : units[unit].decimals;
  const has = (String(value).split('.')[1] ?? '').length;
  return value.toFixed(Math.max(own, Math.min(has, 4))).replace('-', '−');
}

/** One step up or down; ten with Shift, a tenth with Alt; rounded to the step and kept inside the range. */
export function stepped(
  field: NumberField,
  way: number,
  keys: { shiftKey: boolean; altKey: boolean },
): number {
  const step = field.step * (keys.shiftKey ? 10 : keys.altKey ? 0.1 : 1);
  return settled((field.value ?? 0) + way * step, field, Math.min(step, field.step));
}

/** A value rounded to the step of its field and kept inside its range. */
export function settled(value: number, { min, max, step }: NumberField, to = step): number {
  const rounded = Number((Math.round(value / to) * to).toPrecision(12));
  return Math.min(max, Math.max(min, rounded));
}
