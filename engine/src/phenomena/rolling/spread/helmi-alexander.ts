import { contactLength } from '../contact.ts';
import { fromExponent, remembered } from './spread-law.ts';

/**
 * Helmi and Alexander 1968: S = 0.95 (h0/b0)^1.1 exp[−0.707 (b0/L)(h0/b0)^0.971]. Coefficients from memory; grows
 * without bound for upright stock, so held to b0/h0 from 1.
 */
export const helmiAlexander = fromExponent(
  remembered('Helmi and Alexander', 'Helmi and Alexander, JISI 206 (1968) 1110', 1, 10),
  (draught) => {
    const { b0, h0 } = draught;
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a fitted coefficient, not 1/√2
    return 0.95 * (h0 / b0) ** 1.1 * Math.exp(-0.707 * (b0 / contactLength(draught)) * (h0 / b0) ** 0.971);
  },
);
