import type { Stand } from '../equipment.ts';
import type { PassSettings } from '../settings.ts';

/** Enough by the convergence study: nodes of the computed part, slices of the bite. */
export const usualNodes = 300;
export const usualSlices = 12;

/** rad/s of the driven rolls: the speed is set at their full diameter. */
export const rollTurning = ({ speed }: PassSettings, { rollDiameter }: Stand): number =>
  speed / (rollDiameter / 2);
