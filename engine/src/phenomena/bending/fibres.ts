import type { Field } from '../../outcome/field.ts';
import { nodeAreas, type TriMesh } from '../../section/mesh.ts';

/**
 * A section as a bundle of fibres that stay in one plane: strain = e0 + height·y + side·x.
 * x, y     m from the centroid of the fibres, x across, y up; so area-weighted means of x and y are zero.
 * area     m²
 */
export interface Fibres {
  readonly x: Field;
  readonly y: Field;
  readonly area: Field;
}

/** What the bundle adds up to: m², m⁴, and farthest fibres from the centroid, m. */
export interface FibreSums {
  readonly area: number;
  /** Σ area·y², Σ area·x², Σ area·x·y */
  readonly height: number;
  readonly side: number;
  readonly mixed: number;
  readonly up: number;
  readonly down: number;
  readonly right: number;
  readonly left: number;
}

/** One fibre per mesh node with a third of the area of its triangles. */
export function fibresOfMesh(mesh: TriMesh): Fibres {
  const area = nodeAreas(mesh);
  return fibres(
    area.map((_, i) => mesh.xy[2 * i]),
    area.map((_, i) => mesh.xy[2 * i + 1]),
    area,
  );
}

/** Fibres from any coordinates; they are moved to their centroid. */
export function fibres(x: Field, y: Field, area: Field): Fibres {
  const [cx, cy] = [weightedMean(x, area), weightedMean(y, area)];
  return {
    x: Float64Array.from(x, (each) => each - cx),
    y: Float64Array.from(y, (each) => each - cy),
    area: Float64Array.from(area),
  };
}

/** A rectangle of equal layers, `width` across and `height` up; each layer is two fibres, at ± its radius of gyration. */
export function layeredRectangle(width: number, height: number, layers: number): Fibres {
  const reach = width / Math.sqrt(12);
  const at = (i: number) => ((i >> 1) + 0.5) * (height / layers);
  const rows = Array.from({ length: 2 * layers }, (_, i) => i);
  return fibres(
    rows.map((i) => (i % 2 ? reach : -reach)),
    rows.map(at),
    rows.map(() => (width * height) / (2 * layers)),
  );
}

export function fibreSums({ x, y, area }: Fibres): FibreSums {
  const sums = { area: 0, height: 0, side: 0, mixed: 0, up: 0, down: 0, right: 0, left: 0 };
  for (let i = 0; i < area.length; i++) {
    sums.area += area[i];
    sums.height += area[i] * y[i] * y[i];
    sums.side += area[i] * x[i] * x[i];
    sums.mixed += area[i] * x[i] * y[i];
    sums.up = Math.max(sums.up, y[i]);
    sums.down = Math.max(sums.down, -y[i]);
    sums.right = Math.max(sums.right, x[i]);
    sums.left = Math.max(sums.left, -x[i]);
  }
  return sums;
}

function weightedMean(values: Field, weights: Field): number {
  let [sum, total] = [0, 0];
  for (let i = 0; i < weights.length; i++) {
    sum += values[i] * weights[i];
    total += weights[i];
  }
  return sum / total;
}
