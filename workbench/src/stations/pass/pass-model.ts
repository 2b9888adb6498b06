import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { barLength } from '../../ink/frame-bars.ts';
import { type Bounds, boundsOf, outlinePath, type Placing, placedAt } from '../../ink/outline-path.ts';

/** Everything a pass drawing needs in screen units: one window on the section plane, to scale. */
export interface PassPicture {
  readonly width: number;
  readonly height: number;
  readonly placing: Placing;
  /** Section metres of one bar of the frame. */
  readonly bar: number;
  readonly rolls: readonly RollPicture[];
  readonly entry: string;
  readonly gap: GapPlace;
}

export interface RollPicture {
  readonly name: PassRecord['rolls'][number]['name'];
  readonly idle: boolean;
  readonly diameter: number;
  readonly path: string;
  /** Where its name plate stands. */
  readonly label: readonly [number, number];
}

/** Where the gap between the horizontal rolls is measured, screen units. */
interface GapPlace {
  readonly x: number;
  readonly upper: number;
  readonly lower: number;
}

const margin = 8;

/** The window shows the bar on both sides of the stand and a stretch of the rolls around it. */
export function passPicture(record: PassRecord, width: number, most = 540): PassPicture {
  const box = union(boundsOf(record.entry.outline), boundsOf(record.exit.outline));
  const [wide, tall] = [1.5 * (box.right - box.left), 1.36 * (box.top - box.bottom)];
  const inner = width - 2 * margin;
  const scale = Math.min(inner / wide, (most - 2 * margin) / tall);
  const height = Math.min(most, tall * scale + 2 * margin);
  const middle: [number, number] = [(box.left + box.right) / 2, (box.bottom + box.top) / 2];
  const placing = placedAt(scale, middle, [width / 2, height / 2]);
  return {
    width,
    height,
    placing,
    bar: barLength(scale),
    rolls: record.rolls.map((roll) => rollPicture(roll, placing, width, height)),
    entry: outlinePath(record.entry.outline, placing),
    gap: gapPlace(record, placing),
  };
}

function rollPicture(
  roll: PassRecord['rolls'][number],
  placing: Placing,
  width: number,
  height: number,
): RollPicture {
  const { name, idle, diameter } = roll;
  const labels = {
    top: [width / 2, 30],
    bottom: [width / 2, height - 38],
    'foot roll': [70, 96],
    'head roll': [width - 70, 96],
  } as const;
  return { name, idle, diameter, path: bodyPath(roll, placing), label: labels[name] };
}

/** The profile that meets the bar, closed over the roll's axis: the half of the roll that is seen in the window. */
function bodyPath({ name, profile, axis }: PassRecord['rolls'][number], placing: Placing): string {
  const [first, last] = [profile.vertices[0], profile.vertices[profile.vertices.length - 1]];
  const upright = name === 'top' || name === 'bottom';
  const corner = ({ x, y }: { x: number; y: number }) =>
    upright ? `${placing.x(x)} ${placing.y(axis)}` : `${placing.x(axis)} ${placing.y(y)}`;
  return `${outlinePath(profile, placing, false)}L${corner(last)}L${corner(first)}Z`;
}

/** The flattest low stretch of the top roll nearest to the middle of the bar: barrel, collar or web face. */
function gapPlace({ rolls, gap, exit }: PassRecord, placing: Placing): GapPlace {
  const top = rolls.find(({ name }) => name === 'top');
  const centre = middleOf(boundsOf(exit.outline));
  const x = top ? lowestStretch(top.profile.vertices, gap / 2, centre) : centre;
  return { x: placing.x(x), upper: placing.y(gap / 2), lower: placing.y(-gap / 2) };
}

function lowestStretch(vertices: readonly { x: number; y: number }[], level: number, near: number): number {
  const stretches = vertices.slice(1).flatMap((to, i) => {
    const from = vertices[i];
    const low = Math.abs(from.y - level) < 2e-3 && Math.abs(to.y - level) < 2e-3;
    return low ? [Math.min(Math.max(near, Math.min(from.x, to.x)), Math.max(from.x, to.x))] : [];
  });
  const distance = (x: number) => Math.abs(x - near);
  return stretches.reduce((best, x) => (distance(x) < distance(best) ? x : best), stretches[0] ?? near);
}

const middleOf = ({ left, right }: Bounds): number => (left + right) / 2;

const union = (a: Bounds, b: Bounds): Bounds => ({
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
  bottom: Math.min(a.bottom, b.bottom),
  top: Math.max(a.top, b.top),
});
