import { type Unit, units } from '@bloomrail/engine/units/unit';

/** What was understood of a typed text, in the field's unit; or the reason why nothing was. */
export type Understood =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly why: string };

/** Lengths that a person may type into a length field, whatever unit the field shows. */
const lengths: Record<string, number> = { m: 1, mm: 1e-3, µm: 1e-6, um: 1e-6, in: 0.0254 };

/**
 * Reads '24.4', '24,4', '1 248', '24,4 mm', '0.96 in' and sums such as '23.8+0.6', all in the unit of the field.
 * Anything else is not guessed at.
 */
export function understand(text: string, unit: Unit): Understood {
  const plain = text
    .replace(/[\s\u00a0\u202f]/g, '')
    .replaceAll('−', '-')
    .replaceAll(',', '.');
  const parts = /^([-+]?[\d.]+(?:[-+][\d.]+)*)(\D*)$/.exec(plain);
  if (!parts) return { ok: false, why: 'Not a number.' };
  const terms = parts[1].match(/[-+]?[\d.]+/g) ?? [];
  const sum = terms.reduce((total, term) => total + Number(term), 0);
  const factor = factorOf(parts[2], unit);
  if (!Number.isFinite(sum)) return { ok: false, why: 'Not a number.' };
  if (factor === undefined) return { ok: false, why: `Unit ${parts[2]} does not fit ${units[unit].label}.` };
  return { ok: true, value: Number((sum * factor).toPrecision(12)) };
}

function factorOf(written: string, unit: Unit): number | undefined {
  if (written === '' || written === units[unit].label.replaceAll(' ', '')) return 1;
  if (!(unit in lengths) || !(written in lengths)) return undefined;
  return lengths[written] / lengths[unit];
}

/** Why a number cannot stand in a field, or undefined. */
export function outOfRange(value: number, { min, max, unit }: { min: number; max: number; unit: Unit }) {
  const label = units[unit].label && ` ${units[unit].label}`;
  if (value < min) return `At least ${min}${label}.`;
  return value > max ? `At most ${max}${label}.` : undefined;
}
