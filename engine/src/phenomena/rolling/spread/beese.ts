import { contactLength } from '../contact.ts';
import { fromExponent, remembered } from './spread-law.ts';

/** Beese 1972, slabs: S = 0.61 (h0/b0)^1.3 exp(−0.32 h0/L). On blooms it gives twice what the others give. */
export const beese = fromExponent(remembered('Beese', 'Beese 1972, slabs', 3, 16), (draught) => {
  const { b0, h0 } = draught;
  return 0.61 * (h0 / b0) ** 1.3 * Math.exp((-0.32 * h0) / contactLength(draught));
});
