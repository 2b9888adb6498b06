import type { TriMesh } from '../../section/mesh.ts';

/** Nodes of an upright rail's mesh at which a person asks for temperature or stress. */
export interface RailNodes {
  readonly head: number;
  readonly web: number;
  readonly footTips: readonly [number, number];
  readonly crown: number;
  readonly footUnderside: number;
}

export function railNodes(mesh: TriMesh): RailNodes {
  const { xy } = mesh;
  const along = (axis: number, pick: (...all: number[]) => number) =>
    Array.from(xy).reduce((best, value, i) => (i % 2 === axis ? pick(best, value) : best), xy[axis]);
  const [height, left, right] = [along(1, Math.max), along(0, Math.min), along(0, Math.max)];
  const near = (x: number, y: number) => nearestNode(mesh, x, y);
  const toe = 0.03 * height;
  return {
    head: near(0, 0.88 * height),
    web: near(0, 0.45 * height),
    footTips: [near(left + toe, toe), near(right - toe, toe)],
    crown: near(0, height),
    footUnderside: near(0, 0),
  };
}

function nearestNode({ xy }: TriMesh, x: number, y: number): number {
  let [nearest, distance] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i < xy.length / 2; i++) {
    const away = Math.hypot(xy[2 * i] - x, xy[2 * i + 1] - y);
    if (away < distance) [nearest, distance] = [i, away];
  }
  return nearest;
}
