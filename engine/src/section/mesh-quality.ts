import { type TriMesh, triangleArea, triangleCount } from './mesh.ts';

export interface MeshQuality {
  /** Smallest angle of all triangles, rad. */
  readonly smallestAngle: number;
  /** Mean of the smallest angle of each triangle, rad; π/3 when all are equilateral. */
  readonly meanSmallestAngle: number;
  /** m. */
  readonly shortestEdge: number;
  readonly longestEdge: number;
  /** m². */
  readonly area: number;
}

/** Angles, edge lengths and area of a mesh. */
export function meshQuality(mesh: TriMesh): MeshQuality {
  const count = triangleCount(mesh);
  let [smallest, sum, shortest, longest, area] = [Math.PI, 0, Number.POSITIVE_INFINITY, 0, 0];
  for (let t = 0; t < count; t++) {
    const [a, b, c] = edgeLengths(mesh, t);
    const [least, most] = [Math.min(a, b, c), Math.max(a, b, c)];
    const own = triangleArea(mesh, t);
    const angle = Math.asin(Math.min(1, (2 * own * least) / (a * b * c)));
    smallest = Math.min(smallest, angle);
    sum += angle;
    shortest = Math.min(shortest, least);
    longest = Math.max(longest, most);
    area += own;
  }
  return {
    smallestAngle: smallest,
    meanSmallestAngle: sum / count,
    shortestEdge: shortest,
    longestEdge: longest,
    area,
  };
}

function edgeLengths({ xy, triangles }: TriMesh, t: number): readonly [number, number, number] {
  const [a, b, c] = [2 * triangles[3 * t], 2 * triangles[3 * t + 1], 2 * triangles[3 * t + 2]];
  return [
    Math.hypot(xy[b] - xy[a], xy[b + 1] - xy[a + 1]),
    Math.hypot(xy[c] - xy[b], xy[c + 1] - xy[b + 1]),
    Math.hypot(xy[a] - xy[c], xy[a + 1] - xy[c + 1]),
  ];
}
