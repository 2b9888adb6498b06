import { oklch } from './oklch.ts';

/** Colour of a stress along the rail, Pa: green compression, violet tension, pale at zero, full at ±300 MPa. */
export function stressColour(stress: number, dark = false): string {
  const u = Math.min(1, Math.abs(stress) / 300e6);
  const lightness = dark ? 0.27 + 0.42 * u : 0.97 - 0.45 * u;
  return oklch(lightness, 0.15 * u ** 0.8, stress < 0 ? 160 : 300);
}
