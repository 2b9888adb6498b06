/** A field over a triangulated section, as arrays of a record keep it. Lengths in m. */
export interface SectionField {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly triangles: ArrayLike<number>;
  readonly values: ArrayLike<number>;
}

export interface Place {
  readonly x: (metres: number) => number;
  readonly y: (metres: number) => number;
}

/**
 * Filled bands of a field: one path per band of width `step`, keyed by the band's lower value. Triangles are cut
 * exactly at the band's edges, the field being linear inside each.
 */
export function bands(field: SectionField, step: number, place: Place): Map<number, string> {
  const paths = new Map<number, string>();
  eachTriangle(field, (corners) => {
    const values = corners.map(({ v }) => v);
    const low = Math.floor(Math.min(...values) / step);
    const high = Math.floor(Math.max(...values) / step);
    for (let k = low; k <= high; k++) {
      const piece = cut(cut(corners, k * step, 1), (k + 1) * step, -1);
      if (piece.length > 2) paths.set(k * step, (paths.get(k * step) ?? '') + polygon(piece, place));
    }
  });
  return paths;
}

/** Lines of equal value, one path per multiple of `step`. */
export function isolines(field: SectionField, step: number, place: Place): Map<number, string> {
  const paths = new Map<number, string>();
  eachTriangle(field, (corners) => {
    const values = corners.map(({ v }) => v);
    for (let k = Math.ceil(Math.min(...values) / step); k * step < Math.max(...values); k++) {
      const crossing = crossings(corners, k * step);
      if (crossing.length === 2) paths.set(k * step, (paths.get(k * step) ?? '') + segment(crossing, place));
    }
  });
  return paths;
}

/** A step of 5, 10, 20, 50 or 100 that gives 4 to 9 lines between two values, or the nearest to that. */
export function isolineStep(low: number, high: number): number {
  return [5, 10, 20, 50].find((step) => (high - low) / step <= 9) ?? 100;
}

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly v: number;
}

function eachTriangle({ x, y, triangles, values }: SectionField, take: (corners: Corner[]) => void): void {
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t], triangles[t + 1], triangles[t + 2]];
    take(corners.map((i) => ({ x: x[i], y: y[i], v: values[i] })));
  }
}

/** The part of a polygon where the field is above (way 1) or below (way −1) a level. */
function cut(corners: readonly Corner[], level: number, way: 1 | -1): Corner[] {
  return corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length];
    const [da, db] = [way * (a.v - level), way * (b.v - level)];
    const kept = da >= 0 ? [a] : [];
    return da * db < 0 ? [...kept, between(a, b, level)] : kept;
  });
}

function crossings(corners: readonly Corner[], level: number): Corner[] {
  return corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length];
    return a.v < level !== b.v < level ? [between(a, b, level)] : [];
  });
}

function between(a: Corner, b: Corner, level: number): Corner {
  const share = (level - a.v) / (b.v - a.v);
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), v: level };
}

const at = ({ x, y }: Corner, place: Place): string => `${place.x(x).toFixed(1)} ${place.y(y).toFixed(1)}`;

const polygon = (corners: readonly Corner[], place: Place): string =>
  `M${corners.map((corner) => at(corner, place)).join('L')}Z`;

const segment = ([a, b]: readonly Corner[], place: Place): string => `M${at(a, place)}L${at(b, place)}`;
