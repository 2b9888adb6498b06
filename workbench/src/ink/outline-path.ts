import type { Outline } from '@bloomrail/engine/section/outline';

/** How a drawing puts metres of the section on the screen; y up in the section, down on the screen. */
export interface Placing {
  readonly x: (metres: number) => number;
  readonly y: (metres: number) => number;
  /** Screen units for one metre. */
  readonly scale: number;
}

/** Placing that puts the point (centreX, centreY) of the section at (atX, atY) of the drawing. */
export function placedAt(
  scale: number,
  [centreX, centreY]: readonly [number, number],
  [atX, atY]: readonly [number, number],
): Placing {
  return { scale, x: (m) => atX + (m - centreX) * scale, y: (m) => atY - (m - centreY) * scale };
}

/** An exact outline as an SVG path; its arcs stay arcs. */
export function outlinePath({ vertices }: Outline, placing: Placing, closed = true): string {
  const at = (i: number) => `${round(placing.x(vertices[i].x))} ${round(placing.y(vertices[i].y))}`;
  let path = `M${at(0)}`;
  const edges = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < edges; i++) {
    const next = (i + 1) % vertices.length;
    path += edgeTo(vertices[i], vertices[next], at(next), placing.scale);
  }
  return closed ? `${path}Z` : path;
}

type Vertex = Outline['vertices'][number];

function edgeTo(from: Vertex, to: Vertex, target: string, scale: number): string {
  const bulge = from.bulge;
  if (Math.abs(bulge) < 1e-9) return `L${target}`;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = round(((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge))) * scale);
  // The screen's y runs down, so an arc that turns left in the section sweeps against the screen's clock.
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${target}`;
}

const round = (value: number): number => Math.round(value * 100) / 100;

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Box around an outline, m, arcs included. */
export function boundsOf({ vertices }: Outline): Bounds {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  const take = (x: number, y: number) => {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.bottom = Math.min(box.bottom, y);
    box.top = Math.max(box.top, y);
  };
  for (const [i, from] of vertices.entries()) {
    take(from.x, from.y);
    const to = vertices[(i + 1) % vertices.length];
    // The arc's middle stands half a chord times the bulge to the right of the chord.
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    take((from.x + to.x + from.bulge * dy) / 2, (from.y + to.y - from.bulge * dx) / 2);
  }
  return box;
}
