import { scaledErfc } from '../../numerics/error-function.ts';

/** A thick body whose skin is suddenly cooled: k W/mK, ρ kg/m³, c J/kgK. */
export interface ThickBody {
  readonly conductivity: number;
  readonly density: number;
  readonly heatCapacity: number;
}

/** √(kρc), W√s/m²K: how readily a body gives heat through its skin. */
export const effusivity = ({ conductivity, density, heatCapacity }: ThickBody): number =>
  Math.sqrt(conductivity * density * heatCapacity);

/**
 * Share of the temperature difference by which the skin has fallen after `time` s under a film h, W/m²K; exact for a
 * semi-infinite body (classical): 1 − exp(a²t) erfc(a√t), a = h/√(kρc).
 */
export function skinDrop(h: number, time: number, body: ThickBody): number {
  return 1 - scaledErfc((h / effusivity(body)) * Math.sqrt(time));
}

/** Heat taken, J/m² per K of that difference, exact: (h/a²) [exp(a²t) erfc(a√t) − 1 + 2a√(t/π)]. */
export function heatTaken(h: number, time: number, body: ThickBody): number {
  const a = h / effusivity(body);
  const reach = a * Math.sqrt(time);
  return reach === 0 ? 0 : (h / (a * a)) * (scaledErfc(reach) - 1 + (2 * reach) / Math.sqrt(Math.PI));
}
