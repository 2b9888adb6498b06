import { edgesOfPath, nearestOn } from '../../../section/edges.ts';
import type { Path, Vertex } from '../../../section/outline.ts';
import type { Cavity } from '../groove/cavity.ts';
import { areaBetween, leftOf, rightOf } from '../half-section/measure.ts';
import { heightAt, type Piece, piecesOf } from '../half-section/pieces.ts';

/** One place where the leaving bar and the rolls do not fit each other. */
export interface Misfit {
  /** Metal past the groove, or a hollow that the bar left in it. */
  readonly kind: 'over' | 'under';
  /** Where it is greatest: along the rolls and across the gap, m. */
  readonly x: number;
  readonly y: number;
  /** How far the metal stands past the groove, or the roll past the metal, m. */
  readonly depth: number;
  /** Both halves, m². */
  readonly area: number;
}

/** Hollows shallower than this, or smaller, are not worth a word: m, m². */
const [shallow, small] = [3e-4, 4e-6];

/** Places where the groove is judged between two ends, m. */
const strips = 400;

/**
 * Where the leaving half section goes past the groove, and where it leaves a hollow, largest first.
 *
 * from     where the groove must be full: a universal pass leaves its foot tips free.
 * isRail   whether the groove is a finisher's, closed all around by the rail itself.
 */
export function misfits(exit: Path, cavity: Cavity, from: number, isRail: boolean): Misfit[] {
  const over = isRail
    ? pastRail(exit, cavity)
    : cavity.mouth
      ? pastMouth(exit, cavity.mouth)
      : pastWalls(exit, cavity);
  return [...over, ...hollows(exit, cavity, from)].sort((a, b) => b.area - a.area);
}

/** Metal in the gap between head flank and head roll of a finisher; chords of the skin cross the rest by less. */
function pastRail(exit: Path, { half, to, webHeadEnd = leftOf(exit) }: Cavity): Misfit[] {
  const [groove, edges] = [piecesOf(half), edgesOfPath(half)];
  const height = (y: number, x: number) => y - heightAt(groove, x);
  const distance = (x: number, y: number) => nearestOn(edges, x, y).distance;
  return stretches(piecesOf(exit), webHeadEnd, Math.min(to, rightOf(exit)), height, distance)
    .filter(({ depth }) => depth > shallow)
    .map((each) => ({ kind: 'over', ...each }));
}

/** Metal between the collars, beyond either wall as it would run to the collar without its rounding. */
function pastWalls(exit: Path, cavity: Cavity): Misfit[] {
  const [from, to] = wallsOf(cavity);
  const pieces = piecesOf(exit);
  const beyond = (wall: number, end: number): Misfit => ({
    ...{ kind: 'over', x: wall, y: heightAt(pieces, wall), depth: Math.abs(end - wall) },
    area: 2 * areaBetween(exit, Math.min(wall, end), Math.max(wall, end)),
  });
  return [
    ...(leftOf(exit) < from ? [beyond(from, leftOf(exit))] : []),
    ...(rightOf(exit) > to ? [beyond(to, rightOf(exit))] : []),
  ].filter(({ area }) => area > 0);
}

export function wallsOf({ half: { vertices }, from, to }: Cavity): [left: number, right: number] {
  const corner = (flat: Vertex | undefined, deep: Vertex | undefined): number | undefined => {
    if (!flat || !deep || flat.x === deep.x) return deep?.x;
    const [dx, dy] = [deep.x - flat.x, deep.y - flat.y];
    // Both tangents of the rounding are equally long, and the collar's is level.
    return flat.x + (dx * dx + dy * dy) / (2 * dx);
  };
  const [i, j] = [vertices.findIndex(({ x }) => x === from), vertices.findLastIndex(({ x }) => x === to)];
  return [corner(vertices[i - 1], vertices[i]) ?? from, corner(vertices[j + 1], vertices[j]) ?? to];
}

/** Metal higher than the mouth of the head roll is wide. */
function pastMouth(exit: Path, { half, from, to }: NonNullable<Cavity['mouth']>): Misfit[] {
  return stretches(piecesOf(exit), from, to, (y) => y - half).map((each) => ({ kind: 'over', ...each }));
}

/** Hollows are as deep as the nearest metal is far away; their area counts across the gap. */
function hollows(exit: Path, { half, to, mouth }: Cavity, from: number): Misfit[] {
  const [groove, bar, skin] = [piecesOf(half), piecesOf(exit), edgesOfPath(exit)];
  const [left, right] = [Math.max(from, leftOf(exit)), Math.min(to, rightOf(exit))];
  const inMouth = (x: number) => mouth !== undefined && x > mouth.from && x < mouth.to;
  const height = (y: number, x: number) => (inMouth(x) ? 0 : y - heightAt(bar, x));
  return stretches(groove, left, right, height, (x, y) => nearestOn(skin, x, y).distance)
    .filter(({ depth, area }) => depth > shallow && area > small)
    .map((each) => ({ kind: 'under', ...each }));
}

/** Stretches over which a height stands out by a positive amount, and how deep they are; the midpoint rule. */
function stretches(
  pieces: readonly Piece[],
  from: number,
  to: number,
  amount: (y: number, x: number) => number,
  depthAt: (x: number, y: number, amount: number) => number = (_x, _y, height) => height,
): Omit<Misfit, 'kind'>[] {
  const found: { x: number; y: number; depth: number; area: number }[] = [];
  const step = (to - from) / strips;
  let isOpen = false;
  for (let k = 0; k < strips && step > 0; k++) {
    const x = from + (k + 0.5) * step;
    const y = heightAt(pieces, x);
    const height = amount(y, x);
    if (height > 0) {
      if (!isOpen) found.push({ x, y, depth: 0, area: 0 });
      const last = found[found.length - 1];
      const depth = depthAt(x, y, height);
      last.area += 2 * step * height;
      if (depth > last.depth) Object.assign(last, { x, y, depth });
    }
    isOpen = height > 0;
  }
  return found;
}
