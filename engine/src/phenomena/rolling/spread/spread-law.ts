import type { Law } from '../../../steel/law.ts';
import { contactLength } from '../contact.ts';
import type { Draught, RubbedDraught } from '../pass.ts';

/** A handbook law for the width after a flat pass. */
export interface SpreadLaw extends Law {
  /** b1, m. */
  readonly width: (draught: RubbedDraught) => number;
}

/** A law written as the spread exponent S = ln(b1/b0)/ln(h0/h1). */
export const fromExponent = (about: Law, exponent: (draught: RubbedDraught) => number): SpreadLaw => ({
  ...about,
  width: (draught) => draught.b0 * (draught.h0 / draught.h1) ** exponent(draught),
});

/** S: 0 no spread, 0.5 as much spread as elongation, 1 all spread. */
export const spreadExponent = (b0: number, b1: number, h0: number, h1: number): number =>
  Math.log(b1 / b0) / Math.log(h0 / h1);

/** Δb/Δh, the practitioner's spread coefficient. */
export const spreadCoefficient = (b0: number, b1: number, h0: number, h1: number): number =>
  (b1 - b0) / (h0 - h1);

/** Names of the bounds that spread laws set, and their values in a pass. */
export const widthOverHeight = 'ratio of width to height';
export const widthOverArc = 'ratio of width to contact length';

export const spreadInputs = (draught: Draught): Readonly<Record<string, number>> => ({
  [widthOverHeight]: draught.b0 / draught.h0,
  [widthOverArc]: draught.b0 / contactLength(draught),
});

/** The usual standing of this room's laws: remembered, each with the shapes of stock it was made for. */
export const remembered = (name: string, source: string, low: number, high: number): Law => ({
  name,
  source,
  status: 'from memory, unconfirmed',
  validity: { [widthOverHeight]: { low, high, unit: 'one' } },
});
