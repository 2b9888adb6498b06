import type { Outline } from '@bloomrail/engine/section/outline';
import type { YardRecord } from '@bloomrail/engine/stations/yard/record';
import { figure } from '../../ink/numbers.ts';
import { boundsOf, outlinePath, placedAt } from '../../ink/outline-path.ts';
import { counted } from '../../ink/words.ts';

type Bundle = YardRecord['bundles'][number];

const [width, height, perLayer] = [300, 130, 6];

/** A full bundle from its end, rails side by side in layers, and how it is lifted. */
export function BundlePicture({ bundle, outline }: { bundle: Bundle; outline: Outline }) {
  const { length, rails, perBundle, bundles, bundleMass, slingingPoints, bundlesPerWagon, wagons } = bundle;
  const sentence = `Bundle of ${counted(perBundle, 'rail')} of ${figure(length, 'm')} m, ${figure(bundleMass, 't')} t`;
  return (
    <figure>
      <svg width={width} height={height} role="img" aria-label={sentence}>
        {placesOf(bundle, outline).map(({ path, key }) => (
          <path key={key} className="edge" style={{ fill: 'var(--steel)' }} d={path} />
        ))}
      </svg>
      <figcaption>
        <b>{figure(length, 'm')} m</b>, {counted(rails, 'rail')} in {counted(bundles, 'bundle')}
        {perBundle > 1 && ` of up to ${perBundle}`}, {figure(bundleMass, 't')} t each
        <br />
        <span className="quiet">
          lift at {counted(slingingPoints, 'point')} or more; {counted(bundlesPerWagon, 'bundle')} on a wagon,{' '}
          {counted(wagons, 'wagon')}
        </span>
      </figcaption>
    </figure>
  );
}

/** Rails of a full bundle in layers, all upright; the arrangement is a sketch, the sections are true. */
function placesOf({ perBundle }: Bundle, outline: Outline): { path: string; key: number }[] {
  const box = boundsOf(outline);
  const [wide, tall] = [box.right - box.left, box.top - box.bottom];
  const columns = Math.min(perLayer, perBundle);
  const layers = Math.ceil(perBundle / columns);
  const scale = Math.min((width - 4) / (columns * wide), (height - 4) / (layers * tall));
  return Array.from({ length: perBundle }, (_, i) => {
    const at: [number, number] = [
      2 + ((i % columns) + 0.5) * wide * scale,
      height - 2 - (Math.floor(i / columns) + 0.5) * tall * scale,
    ];
    const placing = placedAt(0.97 * scale, [(box.left + box.right) / 2, (box.bottom + box.top) / 2], at);
    return { key: i, path: outlinePath(outline, placing) };
  });
}
