import { bracketedRoot } from '../../../numerics/roots.ts';
import { must } from '../../../outcome/result.ts';
import { contactLength, draughtOf } from '../contact.ts';
import { ekelundM } from '../ekelund-force.ts';
import type { RubbedDraught } from '../pass.ts';
import { remembered, type SpreadLaw } from './spread-law.ts';

/**
 * Ekelund: b1² − b0² = 8 m L Δh − 4 m (h0 + h1) L ln(b1/b0), with the m of his force law; solved between b0 and the
 * width without the logarithm, where it must lie. No spread where friction is too weak (m ≤ 0).
 */
export const ekelundSpread: SpreadLaw = {
  ...remembered('Ekelund spread', 'Ekelund 1933', 0.3, 10),
  width: ekelundWidth,
};

function ekelundWidth(draught: RubbedDraught): number {
  const { h0, h1, b0 } = draught;
  const mL = ekelundM(draught) * contactLength(draught);
  if (mL <= 0) return b0;
  const gain = 8 * mL * draughtOf(draught);
  const off = (b1: number) => b1 * b1 - b0 * b0 - gain + 4 * mL * (h0 + h1) * Math.log(b1 / b0);
  return must(bracketedRoot(off, b0, Math.sqrt(b0 * b0 + gain))).root;
}
