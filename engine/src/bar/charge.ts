import { ok, type Result } from '../outcome/result.ts';
import { nodeCount } from '../section/mesh.ts';
import { sectionProperties } from '../section/properties.ts';
import { rectangle } from '../section/rectangle.ts';
import { triangulate } from '../section/triangulate.ts';
import { coldDensity, hotFactor } from '../steel/expansion.ts';
import type { Grade } from '../steel/grade.ts';
import type { Bar, Place } from './bar.ts';
import { withFinerSkin } from './finer-skin.ts';

/** A cast bloom as measured cold, lying as it lies in the furnace; m, charging temperature in °C. */
export interface BloomSize {
  readonly height: number;
  readonly width: number;
  readonly cornerRadius: number;
  readonly length: number;
  readonly charging: number;
}

/** kg, by the cold size and 7850 kg/m³. */
export const massOfBloom = ({ height, width, cornerRadius, length }: BloomSize): number =>
  coldDensity * length * sectionProperties(rectangle(width, height, cornerRadius)).area;

/**
 * The bar with which the line begins, evenly at its charging temperature (above about 20 °C it is charged hot) and grown
 * by it. Its clock stands at 0 until it leaves the furnace. About 200 nodes, closer to each other below the skin.
 */
export function charge(bloom: BloomSize, grade: Grade): Result<Bar> {
  const growth = hotFactor(grade, bloom.charging);
  const outline = rectangle(growth * bloom.width, growth * bloom.height, growth * bloom.cornerRadius);
  const even = triangulate(outline, { size: growth * Math.sqrt(bloom.width * bloom.height) * meshShare });
  if (!even.ok) return even;
  const mesh = withFinerSkin(even.value, growth * bloom.width, growth * bloom.height);
  const temperature = new Float64Array(nodeCount(mesh)).fill(bloom.charging);
  const place: Place = { clock: 0, temperature };
  return ok({
    grade,
    outline,
    mesh,
    head: place,
    middle: place,
    tail: place,
    mass: massOfBloom(bloom),
    length: growth * bloom.length,
    pieces: [growth * bloom.length],
    elongation: 1,
    decarburised: 0,
  });
}

/** Triangle edge over the side of the square of equal area. */
const meshShare = 0.08;
