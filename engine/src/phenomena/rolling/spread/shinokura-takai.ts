import { contactLength, reduction } from '../contact.ts';
import type { Draught } from '../pass.ts';
import { remembered, type SpreadLaw } from './spread-law.ts';

/**
 * Shinokura and Takai 1982, bars in grooves (square-oval, round-oval, square-diamond, diamond-diamond), one constant
 * for all: ΔB/B0 = 0.83 · L/(B0 + 0.5 H0) · F_H/F0. Read in the paper's conclusions. On a flat pass F_H/F0 is the
 * reduction; for a groove give `areaShare`: the entry area above the groove line over the whole.
 */
export const shinokuraTakaiWidth = (draught: Draught, areaShare = reduction(draught)): number =>
  draught.b0 * (1 + ((0.83 * contactLength(draught)) / (draught.b0 + 0.5 * draught.h0)) * areaShare);

export const shinokuraTakai: SpreadLaw = {
  ...remembered('Shinokura-Takai', 'Shinokura and Takai, J. Appl. Metalworking 2 (1982) 94', 0.5, 2),
  status: 'read in a published text',
  width: (draught) => shinokuraTakaiWidth(draught),
};
