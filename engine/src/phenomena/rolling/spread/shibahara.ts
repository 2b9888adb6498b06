import { contactLength } from '../contact.ts';
import { fromExponent, remembered } from './spread-law.ts';

/** Shibahara 1981, flat passes after edging of slabs: S = exp[−1.64 m^0.376 (b0/L)^(0.016 m)(h0/R)^(0.015 m)], m = b0/h0. */
export const shibahara = fromExponent(remembered('Shibahara', 'Shibahara 1981, slabs', 3, 16), (draught) => {
  const { b0, h0, R } = draught;
  const m = b0 / h0;
  const arc = (b0 / contactLength(draught)) ** (0.016 * m) * (h0 / R) ** (0.015 * m);
  return Math.exp(-1.64 * m ** 0.376 * arc);
});
