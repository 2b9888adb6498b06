import { criticalPoints } from './critical-points.ts';
import type { Grade } from './grade.ts';
import { austeniteShare } from './heating.ts';
import { referenceTemperature } from './thermal.ts';

/**
 * Length change of a rail steel from 20 °C, pearlite and austenite apart, from memory, unconfirmed.
 *
 * pearlite    mean expansion 10.6e-6 + 0.006e-6·T per K: within 0.15e-6 of a handbook table for 0.8 % C (100 to 700 °C)
 * austenite   23e-6 per K (usual 22 to 24e-6)
 * the change  austenite to pearlite lengthens by 0.30 % at 650 °C; laws of the phases' densities give 0.23 %,
 *             a contradiction that moves every hot dimension by 0.07 %
 */
export const pearliteStrain = (T: number): number => (T - referenceTemperature) * (10.6e-6 + 6e-9 * T);

export const austeniteStrain = (T: number): number =>
  strainAtChange - transformationStrain + austeniteExpansion * (T - changeTemperature);

/** Strain at T, °C, of steel with this share of pearlite (0 to 1). */
export const thermalStrain = (T: number, pearliteShare: number): number =>
  pearliteShare * pearliteStrain(T) + (1 - pearliteShare) * austeniteStrain(T);

/** Lengthening when austenite becomes pearlite, at `changeTemperature`, °C. */
export const transformationStrain = 3.0e-3;
export const changeTemperature = 650;
/** 1/K. */
export const austeniteExpansion = 23e-6;
const strainAtChange = pearliteStrain(changeTemperature);

/**
 * Hot dimension over cold: multiply a cold groove or section by it. Phases as in the heating law: pearlite below Ac1,
 * austenite above Ac3. 1.013 at 950 °C (rolling practice uses 1.011 to 1.014 for 880 to 980 °C).
 * For a rail that has cooled below Ac1 without transforming use `thermalStrain(T, 0)`.
 */
export function hotFactor(grade: Grade, T: number): number {
  const { ac1, ac3 } = criticalPoints(grade.composition);
  return 1 + thermalStrain(T, 1 - austeniteShare(T, ac1, ac3));
}

/** kg/m³ at T, °C: 7850 at 20 °C, thinned by the hot factor cubed. Without a grade the change lies at 725 to 765 °C. */
export function density(T: number, grade?: Grade): number {
  const factor = grade ? hotFactor(grade, T) : 1 + thermalStrain(T, 1 - austeniteShare(T, 725, 765));
  return coldDensity / factor ** 3;
}

/** kg/m³ at 20 °C, the value every rail standard reckons with. */
export const coldDensity = 7850;
