import { segmentMoments } from './circular-segment.ts';
import { type Edge, edgeLength, edgesOf, type Point, pointAt, turning } from './edges.ts';
import type { Outline } from './outline.ts';

/** What a section is, from its outline alone. Moments are about axes through the centroid, x and y as drawn. */
export interface SectionProperties {
  /** m². */
  readonly area: number;
  readonly centroid: Point;
  /** ∫ y² dA, m⁴: bending in the x = const plane. */
  readonly ix: number;
  /** ∫ x² dA, m⁴. */
  readonly iy: number;
  /** ∫ x·y dA, m⁴. */
  readonly ixy: number;
  /** m. */
  readonly perimeter: number;
  readonly bounds: Bounds;
}

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/**
 * Area, centroid, second moments and perimeter of an outline of lines and arcs: Green's theorem over the chords
 * plus a circular segment for each arc, in closed form; no polygon error. A clockwise outline gives negative area.
 */
export function sectionProperties(outline: Outline): SectionProperties {
  const edges = edgesOf(outline);
  const bounds = boundsOf(edges);
  const origin = { x: (bounds.left + bounds.right) / 2, y: (bounds.bottom + bounds.top) / 2 };
  const m: Moments = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  let perimeter = 0;
  for (const edge of edges) {
    addChord(m, edge, origin);
    if (edge.bulge !== 0) addSegment(m, edge, origin);
    perimeter += edgeLength(edge);
  }
  const [cx, cy] = [m.x / m.area, m.y / m.area];
  return {
    area: m.area,
    centroid: { x: origin.x + cx, y: origin.y + cy },
    ix: m.yy - m.area * cy * cy,
    iy: m.xx - m.area * cx * cx,
    ixy: m.xy - m.area * cx * cy,
    perimeter,
    bounds,
  };
}

/** ∫ of 1, x, y, x², y², xy over what has been added, about the origin given. */
interface Moments {
  area: number;
  x: number;
  y: number;
  xx: number;
  yy: number;
  xy: number;
}

/** The triangle from the origin to a chord. */
function addChord(m: Moments, { mx, my, ux, uy, half }: Edge, origin: Point): void {
  const [x, y] = [mx - origin.x, my - origin.y];
  const [hx, hy] = [ux * half, uy * half];
  const area = x * hy - y * hx;
  m.area += area;
  m.x += (area * 2 * x) / 3;
  m.y += (area * 2 * y) / 3;
  m.xx += area * ((x * x) / 2 + (hx * hx) / 6);
  m.yy += area * ((y * y) / 2 + (hy * hy) / 6);
  m.xy += area * ((x * y) / 2 + (hx * hy) / 6);
}

/** What lies between a chord and its arc, turned from (u, w) into (x, y). */
function addSegment(m: Moments, { mx, my, ux, uy, half, bulge }: Edge, origin: Point): void {
  const { area, w, ww, uu } = segmentMoments(half, bulge);
  const [x, y] = [mx - origin.x, my - origin.y];
  const [wx, wy] = [uy * w, -ux * w];
  m.area += area;
  m.x += area * x + wx;
  m.y += area * y + wy;
  m.xx += area * x * x + 2 * x * wx + uu * ux * ux + ww * uy * uy;
  m.yy += area * y * y + 2 * y * wy + uu * uy * uy + ww * ux * ux;
  m.xy += area * x * y + x * wy + y * wx + (uu - ww) * ux * uy;
}

/** The smallest upright box around lines and arcs, exact. */
export function boundsOf(edges: readonly Edge[]): Bounds {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const edge of edges) {
    for (const share of [0, ...turningPoints(edge)]) {
      const { x, y } = pointAt(edge, share);
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [bottom, top] = [Math.min(bottom, y), Math.max(top, y)];
    }
  }
  return { left, right, bottom, top };
}

/** Shares of an arc's length at which it runs level or upright. */
function turningPoints(edge: Edge): number[] {
  if (edge.bulge === 0) return [];
  const turn = turning(edge);
  const start = Math.atan2(edge.uy, edge.ux) - turn / 2;
  const quarter = Math.PI / 2;
  const [low, high] = [Math.min(start, start + turn), Math.max(start, start + turn)];
  const shares: number[] = [];
  for (let k = Math.ceil(low / quarter); k * quarter <= high; k++) shares.push((k * quarter - start) / turn);
  return shares;
}

/** Principal second moments, m⁴, largest first, and the angle of the strong axis from x, rad. */
export function principalMoments({ ix, iy, ixy }: Pick<SectionProperties, 'ix' | 'iy' | 'ixy'>) {
  const [middle, half] = [(ix + iy) / 2, Math.hypot((ix - iy) / 2, ixy)];
  return { strong: middle + half, weak: middle - half, angle: Math.atan2(-2 * ixy, ix - iy) / 2 };
}

/** Section moduli, m³: second moment over the distance from the centroid to the farthest fibre on that side. */
export function sectionModuli({ ix, iy, centroid, bounds }: SectionProperties) {
  return {
    top: ix / (bounds.top - centroid.y),
    bottom: ix / (centroid.y - bounds.bottom),
    lateral: iy / Math.max(bounds.right - centroid.x, centroid.x - bounds.left),
  };
}
