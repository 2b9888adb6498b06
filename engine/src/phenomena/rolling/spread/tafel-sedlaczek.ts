import { draughtOf } from '../contact.ts';
import { remembered, type SpreadLaw } from './spread-law.ts';

/** Tafel and Sedlaczek: Δb = Δh b0 √(b0 R)/[3 (b0² + h0 h1)]. Others write √(R h0): a contradiction not settled. */
export const tafelSedlaczek: SpreadLaw = {
  ...remembered('Tafel-Sedlaczek', 'Tafel and Sedlaczek, as in a published note', 0.5, 10),
  status: 'read in a published text',
  width(draught) {
    const { h0, h1, b0, R } = draught;
    return b0 + (draughtOf(draught) * b0 * Math.sqrt(b0 * R)) / (3 * (b0 * b0 + h0 * h1));
  },
};
