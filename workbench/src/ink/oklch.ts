/** Oklab lightness, chroma and hue (degrees) as an sRGB colour; chroma is lowered in steps of 0.002 until it fits. */
export function oklch(lightness: number, chroma: number, hue: number): string {
  for (let fitting = chroma; fitting > 0; fitting -= 0.002) {
    const rgb = linearSrgb(lightness, fitting, hue);
    if (rgb.every((channel) => channel >= -1e-4 && channel <= 1 + 1e-4)) return hex(rgb);
  }
  return hex(linearSrgb(lightness, 0, hue));
}

/** Björn Ottosson, "A perceptual color space for image processing" (2020). */
function linearSrgb(lightness: number, chroma: number, hue: number): number[] {
  const a = chroma * Math.cos((hue * Math.PI) / 180);
  const b = chroma * Math.sin((hue * Math.PI) / 180);
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
}

function hex(rgb: readonly number[]): string {
  const two = (channel: number) =>
    Math.round(255 * gamma(channel))
      .toString(16)
      .padStart(2, '0');
  return `#${rgb.map(two).join('')}`;
}

function gamma(channel: number): number {
  const c = Math.min(1, Math.max(0, channel));
  return c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
}
