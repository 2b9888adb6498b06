import { reduction } from '../contact.ts';
import { fromExponent, remembered, type SpreadLaw } from './spread-law.ts';

export type RollsAndScale = 'smooth, light' | 'smooth, heavy' | 'rough, light' | 'rough, heavy';

/** a, b, c, d, e of S = a exp[−b (b0/h0)^c (h0/R)^d r^e]. */
const coefficients: Readonly<Record<RollsAndScale, readonly [number, number, number, number, number]>> = {
  'smooth, light': [0.851, 1.776, 0.643, 0.386, -0.104],
  'smooth, heavy': [0.955, 1.844, 0.643, 0.386, -0.104],
  'rough, light': [0.993, 2.186, 0.569, 0.402, -0.123],
  'rough, heavy': [0.98, 2.105, 0.569, 0.402, -0.123],
};

/** El-Kalay and Sparling 1968: by the roll's roughness and the scale on the bar. */
export function elKalaySparling(surface: RollsAndScale): SpreadLaw {
  const [a, b, c, d, e] = coefficients[surface];
  return fromExponent(
    remembered(`El-Kalay and Sparling, ${surface} scale`, 'El-Kalay and Sparling 1968', 0.5, 10),
    (draught) => {
      const { b0, h0, R } = draught;
      return a * Math.exp(-b * (b0 / h0) ** c * (h0 / R) ** d * reduction(draught) ** e);
    },
  );
}
