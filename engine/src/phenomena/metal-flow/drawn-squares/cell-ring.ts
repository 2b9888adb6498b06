import { type Edge, edgeLength, edgesOf, type Point, pointAt, tangentAt } from '../../../section/edges.ts';
import type { Outline } from '../../../section/outline.ts';

/** Points to each side of a square: a line that was straight is drawn as a chain of so many. */
const pointsPerSide = 4;

/** rad: joints that turn less are part of a curve drawn in short edges. */
const cornerTurn = (25 * Math.PI) / 180;

export interface RingPoint extends Point {
  readonly isCorner: boolean;
}

/**
 * Points once around a cell, counter-clockwise, without repeats. Along lines of the grid they stand at fixed places,
 * counted from `x` and `y`, so that cells on both sides of a line have the same ones however the outline cuts them.
 */
export function ringOf(cell: Outline, lines: { x: number; y: number; side: number }): RingPoint[] {
  const spacing = lines.side / pointsPerSide;
  const edges = edgesOf(cell).filter(({ half }) => half > 1e-9 * lines.side);
  return edges.flatMap((edge, i): RingPoint[] => {
    const before = edges[(i + edges.length - 1) % edges.length];
    const shares = sharesAlong(edge, lines, spacing);
    return [
      { ...pointAt(edge, 0), isCorner: turns(before, edge) },
      ...shares.map((share) => ({ ...pointAt(edge, share), isCorner: false })),
    ];
  });
}

/** Whether the skin has a corner between two edges; smooth joints of lines and arcs have none. */
function turns(before: Edge, edge: Edge): boolean {
  const [a, b] = [tangentAt(before, 1), tangentAt(edge, 0)];
  return a.x * b.x + a.y * b.y < Math.cos(cornerTurn);
}

function sharesAlong(edge: Edge, { x, y }: Point, spacing: number): number[] {
  if (edge.bulge === 0 && Math.abs(edge.ux) < 1e-9) return atMarks(edge.my, edge.uy, edge.half, y, spacing);
  if (edge.bulge === 0 && Math.abs(edge.uy) < 1e-9) return atMarks(edge.mx, edge.ux, edge.half, x, spacing);
  // A skin of many short edges, or an arc, turns by no more than a sixteenth of a half turn from point to point.
  const chords = Math.ceil(
    Math.max(edgeLength(edge) / spacing, Math.abs(4 * Math.atan(edge.bulge)) / (Math.PI / 16)) - 1e-9,
  );
  return Array.from({ length: chords - 1 }, (_, k) => (k + 1) / chords);
}

/** Shares of an upright or level edge at whole multiples of the spacing from the origin, ends left out. */
function atMarks(middle: number, sign: number, half: number, origin: number, spacing: number): number[] {
  const low = Math.ceil((middle - half - origin) / spacing + 1e-6);
  const high = Math.floor((middle + half - origin) / spacing - 1e-6);
  const shares: number[] = [];
  for (let n = low; n <= high; n++) shares.push(0.5 + (sign * (origin + n * spacing - middle)) / (2 * half));
  return sign > 0 ? shares : shares.reverse();
}
