import type { Item, Spot } from './drawing.ts';

export interface Frame {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  /** Length of one bar on the paper, mm. */
  readonly bar: number;
  /** Where the drawing's own zero lies on the paper: bars are counted from there. */
  readonly zero: Spot;
}

/** The border that shows the scale: alternating black and open bars of a stated length, counted from the zero. */
export function graduatedFrame(frame: Frame): Item[] {
  const { left, bottom, width, height, bar, zero } = frame;
  const [right, top] = [left + width, bottom + height];
  const across = bars(left, right, zero.x, bar).flatMap(([from, to]): Item[] => [
    { kind: 'bar', at: { x: from, y: bottom }, width: to - from, height: THICK },
    { kind: 'bar', at: { x: from, y: top - THICK }, width: to - from, height: THICK },
  ]);
  const upright = bars(bottom, top, zero.y, bar).flatMap(([from, to]): Item[] => [
    { kind: 'bar', at: { x: left, y: from }, width: THICK, height: to - from },
    { kind: 'bar', at: { x: right - THICK, y: from }, width: THICK, height: to - from },
  ]);
  return [
    ...box(left, bottom, right, top),
    ...box(left + THICK, bottom + THICK, right - THICK, top - THICK),
    ...across,
    ...upright,
  ];
}

const THICK = 1.3;

/** Black bars between two edges: every other one, counted from the zero, cut off at the edges. */
function bars(from: number, to: number, zero: number, length: number): [number, number][] {
  const found: [number, number][] = [];
  for (let n = 2 * Math.floor((from - zero) / (2 * length)); zero + n * length < to; n += 2) {
    const [a, b] = [Math.max(from, zero + n * length), Math.min(to, zero + (n + 1) * length)];
    if (b > a) found.push([a, b]);
  }
  return found;
}

function box(left: number, bottom: number, right: number, top: number): Item[] {
  const corners: Spot[] = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return corners.map((from, i) => ({ kind: 'line', from, to: corners[(i + 1) % 4], stroke: 'thin' }));
}
