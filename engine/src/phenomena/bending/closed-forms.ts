/**
 * Closed forms of elastic-plastic bending: what the fibre sections are measured against.
 * Elastic-perfectly plastic, no hardening. `bend` is curvature over curvature at first yield, `moment` is moment over
 * moment at first yield. Source: beam theory as in any strength text; deflection: Prager & Hodge 1951, from memory.
 */

/** Moment over first-yield moment of a rectangle bent to `bend` ≥ 0 times first yield. Below 1 it is elastic. */
export const rectangleMoment = (bend: number): number => (bend <= 1 ? bend : 1.5 - 0.5 / bend ** 2);

/** Curvature over first-yield curvature of a rectangle under `moment`, 0 to below 1.5; infinite from 1.5 on. */
export function rectangleBend(moment: number): number {
  if (moment <= 1) return moment;
  return moment < 1.5 ? 1 / Math.sqrt(3 - 2 * moment) : Number.POSITIVE_INFINITY;
}

/** Curvature that stays after unloading, over first-yield curvature. */
export const rectangleSetBend = (bend: number): number => bend - rectangleMoment(bend);

/** Half-depth of the elastic core over the half-depth of the section. */
export const rectangleCore = (moment: number): number => Math.min(1, 1 / rectangleBend(moment));

/** Stress left at the surface and at the core's edge after `moment` is taken off, over the yield stress. */
export function rectangleLeftStress(moment: number): { readonly surface: number; readonly coreEdge: number } {
  return { surface: 1 - moment, coreEdge: 1 - moment * rectangleCore(moment) };
}

/** Bent radius over the radius after springing back of a sheet; x = σy R / (E t), 0 to 0.5 (above: it springs flat). */
export const sheetSpringback = (x: number): number => (x >= 0.5 ? 0 : 4 * x ** 3 - 3 * x + 1);

/** Moment of a rectangle with a linear hardening of `slope` = tangent modulus over Young's modulus. */
export const hardeningRectangleMoment = (bend: number, slope: number): number =>
  (1 - slope) * rectangleMoment(bend) + slope * bend;

/** Plastic moment over first-yield moment. */
export const shapeFactors = {
  rectangle: 1.5,
  solidCircle: 16 / (3 * Math.PI),
  thinTube: 4 / Math.PI,
  diamond: 2,
} as const;

/** Integral of curvature times distance over a span whose moment rises from 0 to `moment`; 1 at first yield. */
export const risingSpan = (moment: number): number =>
  moment <= 1 ? moment : (5 - (3 + moment) * Math.sqrt(3 - 2 * moment)) / moment ** 2;

/**
 * Offset of the middle one of three rollers that bends a passing rectangular bar to `moment` (1 to below 1.5), in units
 * of first-yield curvature times pitch². The bar loads in the first span and springs back along the second, which
 * therefore is not the mirror image of the first.
 */
export function passingThreeRollers(moment: number): { readonly offset: number; readonly exitBend: number } {
  const exitBend = rectangleSetBend(rectangleBend(moment));
  return { offset: (risingSpan(moment) / 3 + exitBend / 2 + moment / 3) / 2, exitBend };
}

/** Curvature of two layers bonded straight and heated by Δ: Timoshenko 1925. Ratios are upper over lower layer. */
export function bimetalCurvature(
  strainDifference: number,
  height: number,
  thicknessRatio: number,
  modulusRatio: number,
): number {
  const [m, n] = [thicknessRatio, modulusRatio];
  return (
    (6 * strainDifference * (1 + m) ** 2) /
    (height * (3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))))
  );
}

/** Rise of a bar of `length` bent to constant `curvature`, and the sag under a straightedge of that length. */
export const rise = (curvature: number, length: number): number => (curvature * length ** 2) / 8;

export const curvatureOfRise = (height: number, length: number): number => (8 * height) / length ** 2;
