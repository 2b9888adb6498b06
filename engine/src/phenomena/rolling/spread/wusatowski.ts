import type { Draught } from '../pass.ts';
import { fromExponent, remembered } from './spread-law.ts';

/**
 * Wusatowski: S = 10^[−1.269 (b0/h0)(h0/D)^0.556]; for draughts below h1/h0 = 0.5 S = 10^[−3.457 (b0/h0)(h0/D)^0.968].
 * Factors for temperature, speed, steel and roll surface, each within 3 % of b1, are left at 1.
 */
export const wusatowski = fromExponent(
  remembered('Wusatowski', 'Wusatowski 1969', 0.3, 10),
  wusatowskiExponent,
);

function wusatowskiExponent({ h0, h1, b0, R }: Draught): number {
  const [factor, power] = h1 / h0 < 0.5 ? [3.457, 0.968] : [1.269, 0.556];
  return 10 ** (-factor * (b0 / h0) * (h0 / (2 * R)) ** power);
}
