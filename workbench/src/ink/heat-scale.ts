import { oklch } from './oklch.ts';

/** The scale is absolute: the same colour is the same temperature in every view, on every theme, on paper. */
export const heatScale = { low: 20, high: 1300 } as const;

/** Colour of steel at a temperature, °C; outside 20 to 1300 the end colours. Lightness rises all the way. */
export function heatColour(celsius: number): string {
  const t = Math.min(heatScale.high, Math.max(heatScale.low, celsius));
  return oklch(lightness(t), chroma(t), hue(t));
}

/** Lines drawn on heat are dark on glowing steel and white on colder steel, in both themes. */
export const lineOnHeat = (celsius: number): string => (celsius >= 780 ? '#13201f' : '#ffffff');

const lightness = (t: number) => (t <= 500 ? 0.3 + (0.12 * (t - 20)) / 480 : 0.42 + (0.53 * (t - 500)) / 800);

function chroma(t: number): number {
  if (t < 430) return 0.012;
  return t < 800 ? 0.012 + 0.178 * smoothstep(430, 730, t) : 0.19 - 0.085 * smoothstep(800, 1300, t);
}

const hue = (t: number) => (t < 450 ? 235 : 22 + 76 * ((t - 450) / 850) ** 1.1);

function smoothstep(from: number, to: number, t: number): number {
  const share = Math.min(1, Math.max(0, (t - from) / (to - from)));
  return share * share * (3 - 2 * share);
}
