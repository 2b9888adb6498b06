import type { Skin } from './surface.ts';

export const faceNames = ['top', 'bottom', 'left', 'right'] as const;
export type FaceName = (typeof faceNames)[number];

/** The face to which a boundary edge belongs, by its normal; a rounded corner is shared at 45°. */
export function faceOf({ nx, ny }: Pick<Skin, 'nx' | 'ny'>, edge: number): FaceName {
  if (Math.abs(ny[edge]) >= Math.abs(nx[edge])) return ny[edge] > 0 ? 'top' : 'bottom';
  return nx[edge] > 0 ? 'right' : 'left';
}
