import type { ColdSection, Plane } from './cold-section.ts';
import { type Fibres, fibreSums } from './fibres.ts';

/**
 * A section condensed to layers across the plane of bending, with the mean memory of the fibres in each: cheap enough
 * for the many trial runs of a Jacobian. Each layer is two fibres at ± its reach in the other direction, so that the
 * condensed section still resists bending both ways. Inertia is kept within 0.3 % by 36 layers of a rail.
 */
export function layered(section: ColdSection, plane: Plane, layers = 36): ColdSection {
  const { fibres, law, slip, strain } = section;
  const [along, across] = plane === 'height' ? [fibres.y, fibres.x] : [fibres.x, fibres.y];
  const sums = fibreSums(fibres);
  const low = plane === 'height' ? -sums.down : -sums.left;
  const depth = plane === 'height' ? sums.up + sums.down : sums.left + sums.right;
  const layerOf = Int32Array.from(fibres.area, (_, i) =>
    Math.min(layers - 1, Math.max(0, Math.floor(((along[i] - low) / depth) * layers))),
  );
  const sliders = law.bound.length;
  const area = new Float64Array(layers);
  const moment = new Float64Array(layers);
  const reach2 = new Float64Array(layers);
  const memory = new Float64Array(layers * sliders);
  for (let i = 0; i < layerOf.length; i++) {
    const layer = layerOf[i];
    area[layer] += fibres.area[i];
    moment[layer] += fibres.area[i] * along[i];
    reach2[layer] += fibres.area[i] * across[i] ** 2;
    for (let j = 0; j < sliders; j++) memory[layer * sliders + j] += fibres.area[i] * slip[i * sliders + j];
  }
  const filled = Array.from({ length: layers }, (_, k) => k).filter((k) => area[k] > 0);
  const pairs = filled.flatMap((k) => [k, k]);
  const level = pairs.map((k) => moment[k] / area[k]);
  const reach = pairs.map((k, i) => (i % 2 ? 1 : -1) * Math.sqrt(reach2[k] / area[k]));
  const condensed: Fibres = {
    x: Float64Array.from(plane === 'height' ? reach : level),
    y: Float64Array.from(plane === 'height' ? level : reach),
    area: Float64Array.from(pairs, (k) => area[k] / 2),
  };
  const condensedSlip = new Float64Array(pairs.length * sliders);
  pairs.forEach((k, i) => {
    for (let j = 0; j < sliders; j++) condensedSlip[i * sliders + j] = memory[k * sliders + j] / area[k];
  });
  return { fibres: condensed, law, slip: condensedSlip, strain };
}
