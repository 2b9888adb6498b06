import type { Draught, FlatPass } from './pass.ts';

/** h0 − h1, m. */
export const draughtOf = ({ h0, h1 }: Draught): number => h0 - h1;

/** Share of the height taken off, r. */
export const reduction = ({ h0, h1 }: Draught): number => (h0 - h1) / h0;

export const meanHeight = ({ h0, h1 }: Draught): number => (h0 + h1) / 2;

export const meanWidth = ({ b0, b1 }: FlatPass): number => (b0 + b1) / 2;

/** L = √(R Δh), m: the arc by its chord along the pass line; classical, 0.5 % short of the arc at a bite of 20°. */
export const contactLength = (draught: Draught): number => Math.sqrt(draught.R * draughtOf(draught));

/** L over mean height: below 1 the stock is thick and the force comes from its core, not from friction. */
export const contactRatio = (draught: Draught): number => contactLength(draught) / meanHeight(draught);

/** α, rad: cos α = 1 − Δh/D. Exact for round rolls; NaN never: a draught over the diameter bites at 180°. */
export const biteAngle = (draught: Draught): number =>
  Math.acos(Math.max(-1, 1 - draughtOf(draught) / (2 * draught.R)));

/** ln(h0/h1), the true compressive strain of the pass. */
export const strainOf = ({ h0, h1 }: Draught): number => Math.log(h0 / h1);

/** Mean strain rate, 1/s, at a roll surface speed in m/s: Ekelund's 2 v √(Δh/R)/(h0 + h1), from memory, unconfirmed. */
export const meanRate = (draught: Draught, speed: number): number =>
  (2 * speed * Math.sqrt(draughtOf(draught) / draught.R)) / (draught.h0 + draught.h1);

/**
 * 2k over σ: 1.155 where the bar cannot spread, falling toward 1 as its width comes below two contact lengths. The
 * ends are exact for Mises steel, the straight way between them is assumed, no source.
 */
export const constraint = (pass: FlatPass): number =>
  1 + (planeStrain - 1) * Math.min(1, meanWidth(pass) / (2 * contactLength(pass)));

/** 2/√3. */
export const planeStrain = 2 / Math.sqrt(3);
