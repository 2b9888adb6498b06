import { draughtOf } from '../contact.ts';
import { fromExponent, remembered } from './spread-law.ts';

/**
 * Sparling 1961: S = 0.981 exp[−1.615 b0^0.9/(R^0.55 h0^0.1 Δh^0.25)]. That these ratios enter was read in the paper's
 * abstract; the coefficients are from memory.
 */
export const sparling = fromExponent(remembered('Sparling', 'Sparling 1961', 0.5, 10), (draught) => {
  const { b0, R, h0 } = draught;
  return 0.981 * Math.exp((-1.615 * b0 ** 0.9) / (R ** 0.55 * h0 ** 0.1 * draughtOf(draught) ** 0.25));
});
