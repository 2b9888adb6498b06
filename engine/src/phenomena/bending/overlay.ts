import type { Field } from '../../outcome/field.ts';
import { coldModulus } from '../../steel/elastic-modulus.ts';
import type { YieldCurve } from '../../steel/yield-curve.ts';

/**
 * Cold steel as parallel sliders of one modulus (Besseling 1958, Iwan 1967): each carries its own elastic strain up to
 * its bound. A step in one direction is exact whatever its size; turning round gives the curve doubled (Masing).
 *
 *   stress / modulus = Σ share·slip(strain), slip clamped to ±bound          Σ share = 1
 *
 * bound    elastic strain at which each slider begins to slip, ascending; the last may be infinite (linear hardening)
 */
export interface Overlay {
  readonly name: string;
  readonly source: string;
  /** Pa */
  readonly modulus: number;
  readonly bound: Field;
  readonly share: Field;
}

/** Plastic strains at which the curve is met exactly: the first is the elastic limit. */
const knots = [0, 4e-4, 1.1e-3, 2.2e-3, 4.1e-3, 8e-3, 3e-2];

/** Six sliders and a spring that follow the curve, exact at the knots and straight between them and beyond. */
export function overlayOf(curve: YieldCurve, modulus = coldModulus): Overlay {
  const stress = knots.map((p) => curve.stress(p));
  const strain = knots.map((p, i) => p + stress[i] / modulus);
  const slope = knots.slice(1).map((_, i) => (stress[i + 1] - stress[i]) / (strain[i + 1] - strain[i]));
  const stiffness = [modulus, ...slope];
  const share = slope.map((next, i) => (stiffness[i] - next) / modulus);
  return {
    name: curve.name,
    source: curve.source,
    modulus,
    bound: Float64Array.of(...strain.slice(0, -1), Number.POSITIVE_INFINITY),
    share: Float64Array.of(...share, slope[slope.length - 1] / modulus),
  };
}

/** Elastic up to `yieldStress`, then no hardening: for closed forms. */
export const perfectlyPlastic = (modulus: number, yieldStress: number): Overlay => ({
  name: 'elastic, perfectly plastic',
  source: 'ideal',
  modulus,
  bound: Float64Array.of(yieldStress / modulus),
  share: Float64Array.of(1),
});

/** Stress on the first loading to `strain`, Pa. */
export function firstLoading({ modulus, bound, share }: Overlay, strain: number): number {
  let sum = 0;
  for (let j = 0; j < bound.length; j++) sum += share[j] * clamp(strain, bound[j]);
  return modulus * sum;
}

/** Strain on the first loading at which `stress` is reached; the inverse of `firstLoading`. */
export function strainAtFirstLoading(law: Overlay, stress: number): number {
  const target = Math.abs(stress);
  let [low, reached, stiffness] = [0, 0, law.modulus];
  for (let j = 0; j < law.bound.length; j++) {
    const atBound = reached + stiffness * (law.bound[j] - low);
    if (target <= atBound) break;
    [reached, low, stiffness] = [atBound, law.bound[j], stiffness - law.modulus * law.share[j]];
  }
  return Math.sign(stress) * (low + (target - reached) / stiffness);
}

const clamp = (value: number, bound: number): number => Math.max(-bound, Math.min(bound, value));
