import { erfc } from '../numerics/error-function.ts';
import type { Law } from './law.ts';
import { gasConstant } from './transformation.ts';

/**
 * Loss of carbon through a surface that recedes by scaling, Birks and Jackson 1970 in form, from memory, unconfirmed:
 *
 *     (C0 − C)/(C0 − Cs) = erfc[(X + depth) / 2√(Dt)] / erfc[X / 2√(Dt)]        depth below the present surface
 *
 * Exact for a held temperature. For a history Dt is ∫D dt and X the metal lost so far, exact while scaling and diffusion
 * keep their ratio. In ferrite (700 to 910 °C rim) carbon moves faster: not covered. D is carried on outside its range.
 */
export const decarburisation: Law = {
  name: 'Carbon loss through a receding surface',
  source: 'Birks and Jackson 1970 in form; diffusivity of carbon in austenite 0.2e-4 exp(−142 000/RT) m²/s',
  status: 'from memory, unconfirmed',
  validity: { temperature: { low: 900, high: 1300, unit: 'C' } },
};

/** Diffusivity of carbon in austenite, m²/s, at T in °C. */
export const carbonDiffusivity = (T: number): number =>
  0.2e-4 * Math.exp(-142_000 / (gasConstant * (T + 273.15)));

/** What a surface remembers: ∫D dt in m² and the metal lost to scale in m. */
export interface CarbonLoss {
  readonly diffused: number;
  readonly recession: number;
}

export const untouched: CarbonLoss = { diffused: 0, recession: 0 };

/** After dt more seconds at T with `recession` m of metal lost in all (see `metalRecession`). */
export const furtherLoss = (loss: CarbonLoss, T: number, dt: number, recession: number): CarbonLoss => ({
  diffused: loss.diffused + carbonDiffusivity(T) * dt,
  recession,
});

/** Carbon at a depth below the present surface as a share of the core's; surfaceShare is Cs/C0, 0 in oxidising gas. */
export function carbonShare({ diffused, recession }: CarbonLoss, depth: number, surfaceShare = 0): number {
  if (diffused <= 0) return 1;
  const reach = 2 * Math.sqrt(diffused);
  return 1 - ((1 - surfaceShare) * erfc((recession + depth) / reach)) / erfc(recession / reach);
}

/**
 * Depth below the present surface, m, where carbon has come back to `share` of the core's. 0 where no carbon was lost
 * or scaling took all of the poor layer. By halving, to a millionth of the diffusion length.
 */
export function depthTo(loss: CarbonLoss, share = networkShare, surfaceShare = 0): number {
  if (carbonShare(loss, 0, surfaceShare) >= share) return 0;
  let [low, high] = [0, 12 * Math.sqrt(loss.diffused)];
  const fine = 1e-6 * Math.sqrt(loss.diffused);
  while (high - low > fine) {
    const middle = (low + high) / 2;
    if (carbonShare(loss, middle, surfaceShare) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of the core's carbon below which ferrite closes into a network around the grains: assumed, no source. */
export const networkShare = 0.8;

/** The layer after rolling: it thins as the surface is drawn out, by local draught; elongation stands for it. */
export const thinned = (depth: number, elongation: number): number => depth / Math.sqrt(elongation);
