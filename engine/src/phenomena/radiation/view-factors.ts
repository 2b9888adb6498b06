import type { TriMesh } from '../../section/mesh.ts';

/** How bars lie beside each other: an endless row of equal sections on a pitch along x, perhaps above a floor. */
export interface Row {
  /** m, centre to centre. */
  readonly pitch: number;
  /** y of the floor, m; left out, there is none. */
  readonly floor?: number;
}

/**
 * Who sees whom, per boundary edge. between[i·edges + j] is the share of what edge i sends out that edge j of the own
 * section or, by the equality of the row, of a neighbour receives. Every row with floor and surroundings sums to 1, and
 * length_i · between_ij = length_j · between_ji to round-off.
 */
export interface ViewFactors {
  readonly edges: number;
  readonly between: Float64Array;
  readonly floor: Float64Array;
  readonly surroundings: Float64Array;
}

export interface RayCount {
  /** Starting points along each edge, and rays from each over the half circle. */
  readonly points: number;
  readonly rays: number;
}

/**
 * By rays in the section plane (long bars): equal steps of sin θ carry equal heat. Neighbours count to two pitches on
 * each side. The small lack of reciprocity that rays leave is halved between the two edges; what that adds or takes is
 * settled with the surroundings, without which the heat of the row would not balance.
 */
export function viewFactors(
  mesh: TriMesh,
  row?: Row,
  count: RayCount = { points: 4, rays: 64 },
): ViewFactors {
  const walls = wallsOf(mesh, row);
  const raw = castRays(walls, count);
  return repaired(walls, raw);
}

interface Walls {
  readonly edges: number;
  /** Ends (ax, ay) to (bx, by), m; material on the left, so that the outside is on the right. */
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly length: Float64Array;
  readonly shifts: readonly number[];
  readonly floor: number | undefined;
}

function wallsOf({ xy, boundary }: TriMesh, row?: Row): Walls {
  const edges = boundary.length / 2;
  const coordinate = (end: number, axis: number) =>
    Float64Array.from({ length: edges }, (_, e) => xy[2 * boundary[2 * e + end] + axis]);
  const [ax, ay, bx, by] = [coordinate(0, 0), coordinate(0, 1), coordinate(1, 0), coordinate(1, 1)];
  const length = ax.map((x, e) => Math.hypot(bx[e] - x, by[e] - ay[e]));
  const pitch = row?.pitch ?? 0;
  const shifts = row ? [0, pitch, -pitch, 2 * pitch, -2 * pitch] : [0];
  return { edges, ax, ay, bx, by, length, shifts, floor: row?.floor };
}

function castRays(walls: Walls, { points, rays }: RayCount): ViewFactors {
  const { edges, ax, ay, bx, by, length } = walls;
  const between = new Float64Array(edges * edges);
  const [floor, surroundings] = [new Float64Array(edges), new Float64Array(edges)];
  const share = 1 / (points * rays);
  for (let i = 0; i < edges; i++) {
    const inFront = facing(walls, i);
    const [tx, ty] = [(bx[i] - ax[i]) / length[i], (by[i] - ay[i]) / length[i]];
    for (let p = 0; p < points; p++) {
      const along = (p + 0.5) / points;
      const [x, y] = [ax[i] + along * (bx[i] - ax[i]), ay[i] + along * (by[i] - ay[i])];
      // The golden ratio turns the fan from point to point, so that their steps do not fall on one another.
      const offset = (p * 0.618033988749895 + 0.5) % 1;
      for (let r = 0; r < rays; r++) {
        const sine = (2 * (r + offset)) / rays - 1;
        const cosine = Math.sqrt(1 - sine * sine);
        const hit = firstHit(walls, inFront, x, y, sine * tx + cosine * ty, sine * ty - cosine * tx);
        if (hit >= 0) between[i * edges + hit] += share;
        else if (hit === onFloor) floor[i] += share;
        else surroundings[i] += share;
      }
    }
  }
  return { edges, between, floor, surroundings };
}

const onFloor = -1;
const nothing = -2;

/** Edges that could meet a ray from edge i, as shift · edges + edge: partly before it and looking its way. */
function facing({ edges, ax, ay, bx, by, length, shifts }: Walls, i: number): number[] {
  const before = (from: number, x: number, y: number): boolean =>
    (bx[from] - ax[from]) * (y - ay[from]) - (by[from] - ay[from]) * (x - ax[from]) < -1e-9 * length[from];
  return shifts.flatMap((shift, s) =>
    Array.from({ length: edges }, (_, j) => j)
      .filter((j) => before(i, ax[j] + shift, ay[j]) || before(i, bx[j] + shift, by[j]))
      .filter((j) => before(j, ax[i] - shift, ay[i]) || before(j, bx[i] - shift, by[i]))
      .map((j) => s * edges + j),
  );
}

function firstHit(
  walls: Walls,
  inFront: readonly number[],
  x: number,
  y: number,
  dx: number,
  dy: number,
): number {
  const { edges, ax, ay, bx, by, shifts, floor } = walls;
  let nearest = Number.POSITIVE_INFINITY;
  let hit = nothing;
  if (floor !== undefined && dy < 0 && y > floor) {
    nearest = (floor - y) / dy;
    hit = onFloor;
  }
  for (const each of inFront) {
    const j = each % edges;
    const px = ax[j] + shifts[(each - j) / edges] - x;
    const py = ay[j] - y;
    const [ex, ey] = [bx[j] - ax[j], by[j] - ay[j]];
    const cross = dx * ey - dy * ex;
    const distance = (px * ey - py * ex) / cross;
    const way = (px * dy - py * dx) / cross;
    if (distance > 1e-9 && distance < nearest && way >= 0 && way <= 1) {
      nearest = distance;
      hit = j;
    }
  }
  return hit;
}

function repaired({ edges, length }: Walls, { between, floor, surroundings }: ViewFactors): ViewFactors {
  for (let i = 0; i < edges; i++) {
    for (let j = 0; j < i; j++) {
      const exchanged = (length[i] * between[i * edges + j] + length[j] * between[j * edges + i]) / 2;
      between[i * edges + j] = exchanged / length[i];
      between[j * edges + i] = exchanged / length[j];
    }
  }
  const excess = mostOverfull(edges, between, floor);
  for (let i = 0; i < edges; i++) {
    let seen = 0;
    for (let j = 0; j < edges; j++) seen += between[i * edges + j] /= excess;
    floor[i] /= excess;
    surroundings[i] = 1 - seen - floor[i];
  }
  return { edges, between, floor, surroundings };
}

/** 1, or by how much the fullest row is above it: all rows are then thinned alike, which keeps reciprocity. */
function mostOverfull(edges: number, between: Float64Array, floor: Float64Array): number {
  let most = 1;
  for (let i = 0; i < edges; i++) {
    let seen = floor[i];
    for (let j = 0; j < edges; j++) seen += between[i * edges + j];
    most = Math.max(most, seen);
  }
  return most;
}
