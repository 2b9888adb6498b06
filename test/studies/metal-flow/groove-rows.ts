import { must } from '@bloomrail/engine/outcome/result';
import {
  bothSides,
  corner,
  passOf,
  plainSteel,
  pointsThrough,
  topRoll,
} from '@bloomrail/engine/phenomena/metal-flow/passes.fixture';
import { rollPass } from '@bloomrail/engine/phenomena/metal-flow/roll-pass';
import { shinokuraTakaiWidth } from '@bloomrail/engine/phenomena/rolling/spread/shinokura-takai';
import { heightAt } from '@bloomrail/engine/section/crossings';
import { filleted } from '@bloomrail/engine/section/filleted';
import type { Outline } from '@bloomrail/engine/section/outline';
import { rectangle } from '@bloomrail/engine/section/rectangle';
import { turned } from '@bloomrail/engine/section/transform';
import { widest } from './rolled.ts';
import { between, percentOver, type Row } from './rows.ts';

/** A bar, and the upper edge of its groove as points x, y, m. */
interface Grooved {
  readonly name: string;
  readonly bar: Outline;
  readonly groove: Float64Array;
  /** Roll radius at the collar, and y there, m. */
  readonly R: number;
  readonly gap: number;
}

/** Widths in ovals and diamonds against the law made for them. */
export const grooveRows = (): Row[] => grooves().map(grooveRow);

const grooves = (): Grooved[] => [
  { name: 'square 50 to oval 34 × 84', bar: square(0.05), ...oval(0.017, 0.042, 0.002), R: 0.25 },
  { name: 'square 30 to oval 20 × 48', bar: square(0.03), ...oval(0.01, 0.024, 0.0015), R: 0.15 },
  {
    name: 'square 60 on edge to diamond 66 high, 105°',
    bar: turned(square(0.06), Math.PI / 4),
    ...diamond(0.033, 105, 0.06),
    R: 0.25,
  },
  {
    name: 'diamond 105° upright to diamond 88 high, 95°',
    bar: diamondBar(0.055, 105),
    ...diamond(0.044, 95, 0.06),
    R: 0.25,
  },
];

const square = (side: number): Outline => rectangle(side, side, 0.1 * side);

/** A diamond on its sharp edge: half its height, angle of the side corners in degrees. */
function diamondBar(half: number, angle: number): Outline {
  const wide = half / Math.tan((angle * Math.PI) / 360);
  const radius = 0.006;
  const corners = [
    corner(wide, 0, radius),
    corner(0, half, radius),
    corner(-wide, 0, radius),
    corner(0, -half, radius),
  ];
  return { vertices: filleted(corners, true) };
}

function oval(high: number, wide: number, gap: number) {
  const rise = high - gap;
  const radius = (wide * wide + rise * rise) / (2 * rise);
  const arc = Array.from({ length: 81 }, (_, i) => {
    const x = wide * (i / 40 - 1);
    return [x, high - radius + Math.sqrt(radius * radius - x * x)];
  });
  return { groove: Float64Array.from([[-2 * wide, gap], ...arc, [2 * wide, gap]].flat()), gap };
}

/** Half the height at the rounded bottom, angle there in degrees, and a size for its roundings. */
function diamond(high: number, angle: number, size: number) {
  const half = (angle * Math.PI) / 360;
  const radius = 0.15 * size;
  const apex = high + radius * (1 / Math.sin(half) - 1);
  const gap = 0.002;
  const right = [corner((apex - gap) * Math.tan(half), gap, 0.05 * size), corner(3 * size, gap)];
  const left = bothSides(right).slice(0, 2);
  return { groove: pointsThrough([...left, corner(0, apex, radius), ...right]), gap };
}

function grooveRow({ name, bar, groove, R, gap }: Grooved): Row {
  const axis = gap + R;
  const roll = { ...topRoll([corner(0, 0), corner(1, 0)], axis, R, 3, 0.35), profile: groove };
  const given = { part: 'quarter', nodes: 250, steel: plainSteel, wishes: { slices: 20 } } as const;
  const solution = must(rollPass(passOf(bar, [roll], given)));
  const source = 'Shinokura & Takai 1982; mean contact length from the mean draught where the bar stands out';
  return between(
    `${name}: width`,
    percentOver(widest(solution), expectedWidth(bar, groove, axis)),
    [-6, 6],
    '%',
    source,
  );
}

/** The law with the area that stands above the groove line, and the mean draught over the width where it does. */
function expectedWidth(bar: Outline, groove: Float64Array, axis: number): number {
  const half = Math.max(...bar.vertices.map(({ x }) => x));
  const [count, columns] = [400, { all: 0, out: 0, wide: 0, bottom: 0, high: 0 }];
  for (let i = 0; i < count; i++) {
    const x = (half * (i + 0.5)) / count;
    const [own, limit] = [heightAt(bar, x) / 2, yAt(groove, x)];
    columns.all += own;
    columns.high = Math.max(columns.high, 2 * own);
    if (own <= limit) continue;
    columns.out += own - limit;
    columns.bottom += limit;
    columns.wide++;
  }
  const [draught, bottom] = [(2 * columns.out) / columns.wide, columns.bottom / columns.wide];
  // The law takes draught and radius as those of an even bar of the same mean draught.
  const even = { h0: columns.high, h1: columns.high - draught, b0: 2 * half, R: axis - bottom };
  return shinokuraTakaiWidth(even, columns.out / columns.all);
}

function yAt(points: Float64Array, x: number): number {
  let i = 0;
  while (i + 4 < points.length && points[i + 2] < x) i += 2;
  return points[i + 1] + ((x - points[i]) / (points[i + 2] - points[i])) * (points[i + 3] - points[i + 1]);
}
