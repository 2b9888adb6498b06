/**
 * Heat transfer to water that runs over hot steel outside the jet, W/m²K: Wendelstorf, Spitzer and Wendelstorf 2008, clean
 * surface (from memory, unconfirmed). h = 190 + tanh(V/8) {140 V [1 − V ΔT/72000] + 3.26 ΔT² [1 − tanh(ΔT/128)]}.
 *
 * flux   V, kg/m²s, 3 to 30;   over   ΔT = Ts − Tw, K, 180 to 1100. Clamped to these ranges outside, except that no
 * water (0) takes no heat. Not for the high-pressure footprint.
 */
export function residualWater(flux: number, over: number): number {
  if (flux <= 0) return 0;
  const V = Math.min(30, Math.max(3, flux));
  const dT = Math.min(1100, Math.max(180, over));
  const boiling = 140 * V * (1 - (V * dT) / 72000) + 3.26 * dT * dT * (1 - Math.tanh(dT / 128));
  return 190 + Math.tanh(V / 8) * boiling;
}
