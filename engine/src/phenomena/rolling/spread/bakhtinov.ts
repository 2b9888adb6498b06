import { contactLength, draughtOf } from '../contact.ts';
import { remembered, type SpreadLaw } from './spread-law.ts';

/** Bakhtinov: Δb = 1.15 (Δh/2h0)(L − Δh/2μ); no spread where the bracket is negative, friction too weak. */
export const bakhtinov: SpreadLaw = {
  ...remembered('Bakhtinov', 'Bakhtinov 1950', 0.5, 10),
  width(draught) {
    const cut = draughtOf(draught);
    const arc = Math.max(0, contactLength(draught) - cut / (2 * draught.friction));
    return draught.b0 + 1.15 * (cut / (2 * draught.h0)) * arc;
  },
};
