import type { Field } from '../../outcome/field.ts';
import { type Fibres, fibreSums } from './fibres.ts';
import { type Overlay, strainAtFirstLoading } from './overlay.ts';

export type Plane = 'height' | 'side';

/**
 * A cold section with the memory of all that was done to it. Read-only; `bent` sections are made from it.
 * slip       elastic strain of every slider, fibre by fibre: slip[fibre·sliders + slider]
 * strain     mean strain, curvature in the height plane and in the side plane (1/m), from the straight, unloaded bar
 */
export interface ColdSection {
  readonly fibres: Fibres;
  readonly law: Overlay;
  readonly slip: Field;
  readonly strain: readonly [number, number, number];
}

/** A section from the bed: residual stress (Pa per fibre) as if each fibre had been loaded to it once. */
export function coldSection(
  fibres: Fibres,
  law: Overlay,
  stress?: Field,
  camber: readonly [number, number] = [0, 0],
): ColdSection {
  const sliders = law.bound.length;
  const slip = new Float64Array(fibres.area.length * sliders);
  for (let i = 0; stress && i < fibres.area.length; i++) {
    const strain = strainAtFirstLoading(law, stress[i]);
    for (let j = 0; j < sliders; j++) {
      slip[i * sliders + j] = Math.max(-law.bound[j], Math.min(law.bound[j], strain));
    }
  }
  return { fibres, law, slip, strain: [0, camber[0], camber[1]] };
}

/** Stress of every fibre, Pa. */
export function stressOf({ fibres, law, slip }: ColdSection): Float64Array {
  const sliders = law.bound.length;
  return Float64Array.from(fibres.area, (_, i) => {
    let sum = 0;
    for (let j = 0; j < sliders; j++) sum += law.share[j] * slip[i * sliders + j];
    return law.modulus * sum;
  });
}

/** Moment (N·m) and curvature (1/m) at which the outermost fibre of a stress-free section first yields. */
export function firstYield(fibres: Fibres, law: Overlay, plane: Plane) {
  const sums = fibreSums(fibres);
  const reach = plane === 'height' ? Math.max(sums.up, sums.down) : Math.max(sums.left, sums.right);
  const curvature = law.bound[0] / reach;
  return { curvature, moment: law.modulus * sums[plane] * curvature };
}
