/** Draws from 0 ≤ u < 1. Always passed in by the caller, so that the same seed gives the same mill. */
export type Random = () => number;

/**
 * A generator of 32-bit resolution with period 2¹²⁸ − 1; any whole number is a seed.
 * Source: D. Blackman, S. Vigna, xoshiro128**, 2018, seeded by a Weyl sequence mixed as in murmur3; from memory.
 */
export function seededRandom(seed: number): Random {
  const mix = mixer(seed);
  let [a, b, c, d] = [mix(), mix(), mix(), mix()];
  return () => {
    const draw = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotated(d, 11);
    return draw / 2 ** 32;
  };
}

/** One draw from the normal law with mean 0 and deviation 1 (Box and Muller 1958). */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const rotated = (bits: number, by: number): number => (bits << by) | (bits >>> (32 - by));

function mixer(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let bits = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
    return bits ^ (bits >>> 16);
  };
}
