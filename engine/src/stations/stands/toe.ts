import type { Path, Vertex } from '../../section/outline.ts';
import type { HotRail } from './groove/finisher.ts';
import { rounded } from './groove/two-high.ts';
import { type Run, sewn } from './half-section/lower.ts';
import { heightOf, piecesOf } from './half-section/pieces.ts';

/** Free toes round themselves to this share of their thickness; own trial of three universal passes 0.3 to 0.36. */
const toeRounding = 0.3;

/** The free edge of the foot, from its back on the axis to where it meets the flank of the horizontal roll. */
export interface Toe {
  readonly vertices: readonly Vertex[];
  readonly x: number;
}

export function toeOf(
  cavity: Path,
  runs: readonly Run[],
  { footFace, rail }: { readonly footFace: number; readonly rail?: HotRail },
  half: number,
): Toe | undefined {
  const flank = piecesOf(cavity).find((piece) => piece.y0 > half && heightOf(piece, piece.x1) < half);
  if (flank?.r !== 0) return undefined;
  const x = flank.x0 + (half - flank.y0) / flank.slope;
  const thickness = x - footFace;
  const radius = toeRounding * thickness;
  const end = heightOf(flank, flank.x1);
  if (!(thickness > 0.002)) return undefined;
  const vertices = rounded([
    [footFace, 0, 0],
    [footFace, half, rail?.baseRadius ?? radius],
    [x, half, Math.min(rail?.toeRadius ?? radius, 0.9 * (half - end))],
    [flank.x1, end, 0],
  ]).vertices.slice(0, -1);
  const joint = vertices[vertices.length - 1].x;
  const isPressed = runs.some((run) => run.touching && run.x0 < flank.x1 && run.x1 > joint + 1e-4);
  return isPressed ? { vertices, x: joint } : undefined;
}

/** The toe, then the flank as far as it is pressed, then whatever the runs say. */
export function withToe({ vertices, x }: Toe, free: Path, cavity: Path, runs: readonly Run[]): Path {
  const first = runs.findIndex((run) => run.touching && run.x1 > x);
  const beyond = [{ touching: true, x0: x, x1: runs[first].x1 }, ...runs.slice(first + 1)];
  const rest = sewn(free, cavity, beyond).vertices.filter((vertex, i) => i > 0 || vertex.y > 0);
  return { vertices: [...vertices.slice(0, -1), ...rest] };
}
