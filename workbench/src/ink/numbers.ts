import { fromSi, print, type Unit, units } from '@bloomrail/engine/units/unit';

/** Digits without the unit, for rows that name the unit once: '5 180', '−0.3'. */
export function figure(value: number, unit: Unit, decimals: number = units[unit].decimals): string {
  const text = print(value, unit, decimals);
  const label = units[unit].label;
  return label ? text.slice(0, -label.length - 1) : text;
}

/** A value with as many decimals as its size needs to show a step; for measures of any unit. */
export function measured(value: number, unit: Unit): string {
  return figure(value, unit, decimalsFor(value, unit));
}

/** The unit's own decimals, and more where they would leave fewer than two digits that say something. */
export function decimalsFor(value: number, unit: Unit): number {
  const { decimals } = units[unit];
  const size = Math.abs(fromSi(value, unit));
  if (size === 0 || size >= 10) return size >= 1000 ? 0 : Math.min(decimals, 2);
  return Math.min(4, Math.max(Math.min(decimals, 2), 1 - Math.floor(Math.log10(size))));
}

/** Time on the bar's clock: '2:08', from an hour on '3 h 09', before the door '−1:30'. */
export function clock(seconds: number): string {
  const whole = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && whole > 0 ? '−' : '';
  const minutes = Math.floor(whole / 60);
  const two = (n: number) => String(n).padStart(2, '0');
  if (minutes < 60) return `${sign}${minutes}:${two(whole % 60)}`;
  return `${sign}${Math.floor(minutes / 60)} h ${two(minutes % 60)}`;
}

/** Milliseconds and other plain counts: whole, grouped. */
export const inPrint = (value: number): string => figure(Math.max(1, Math.round(value)), 'one', 0);
