import { contactLength, draughtOf } from '../contact.ts';
import { remembered, type SpreadLaw } from './spread-law.ts';

/** Siebel: Δb = c (Δh/h0) L, c 0.31 to 0.45, taken 0.35. The same form stands in a published note with 0.66 Δh/(h0 + h1). */
export const siebelSpread: SpreadLaw = {
  ...remembered('Siebel spread', 'Siebel 1932', 0.5, 10),
  width: (draught) => draught.b0 + 0.35 * (draughtOf(draught) / draught.h0) * contactLength(draught),
};
