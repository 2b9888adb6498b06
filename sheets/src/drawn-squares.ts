import type { DrawnSquares } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/squares';
import { type CellStretch, stretches } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/stretch';
import { cautions } from './cautions.ts';
import { dimension } from './dimension.ts';
import type { Drawing, Item, Spot } from './drawing.ts';
import { hatched } from './drawn-squares-hatching.ts';
import { shadeOf, type Tint, type TintScale, tintScale, tints } from './drawn-squares-tint.ts';
import { graduatedFrame } from './graduated-frame.ts';

export interface SquaresShown {
  readonly name: string;
  readonly before: DrawnSquares;
  readonly after: DrawnSquares;
  /** Right angles when absent. */
  readonly tint?: Tint;
  /** The squares as drawn beside the rolled ones, or dashed under them; beside when absent. */
  readonly layout?: 'beside' | 'over';
}

/**
 * Drawn squares before and after rolling on A3 across, both to one scale. Rolled squares are hatched the denser, the more
 * they changed; the scale below says by how much. Part-cells that are too small to be measured stay white.
 */
export function drawnSquaresDrawing({
  name,
  before,
  after,
  tint = 'shear',
  layout = 'beside',
}: SquaresShown): Drawing {
  const made = stretches(before, after);
  const scale = tintScale(made.map(tints[tint].of), tints[tint].least);
  const sizes = [extentOf(before), extentOf(after)];
  const fields = layout === 'beside' ? halves : [whole];
  const ratio = ratioFor(sizes, fields[0]);
  const shown: Item[] =
    layout === 'beside'
      ? [
          ...fieldItems(fields[0], ratio, before, 'before'),
          ...fieldItems(fields[1], ratio, after, 'after', { made, tint, scale }),
        ]
      : fieldItems(whole, ratio, after, 'after; before dashed', { made, tint, scale }, before);
  return {
    title: `${name}, drawn squares ${ratioText(ratio)}`,
    description: description(name, before, sizes, made, tint),
    width: 420,
    height: 297,
    items: [...headItems(name, before, ratio), ...shown, ...scaleItems(tint, scale), ...footItems],
  };
}

interface Field {
  readonly left: number;
  readonly width: number;
}

const [FIELD_BOTTOM, FIELD_HEIGHT, LEFT] = [62, 206, 15];
const halves: readonly Field[] = [
  { left: LEFT, width: 192 },
  { left: 213, width: 192 },
];
const whole: Field = { left: LEFT, width: 390 };

/** ISO 5455. */
const ratios = [20, 10, 5, 2, 1, 0.5, 0.2, 0.1];
const ratioText = (ratio: number): string => (ratio < 1 ? `1 : ${Math.round(1 / ratio)}` : `${ratio} : 1`);

/** Room that dimensions and frame need around a section, mm. */
const around = 36;

const ratioFor = (sizes: readonly Extent[], { width }: Field): number =>
  ratios.find((ratio) =>
    sizes.every(
      (size) => size.width * ratio <= width - around && size.height * ratio <= FIELD_HEIGHT - around,
    ),
  ) ?? ratios[ratios.length - 1];

/** mm. */
interface Extent {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

function extentOf({ points }: DrawnSquares): Extent {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 2) {
    [left, right] = [Math.min(left, points[i]), Math.max(right, points[i])];
    [bottom, top] = [Math.min(bottom, points[i + 1]), Math.max(top, points[i + 1])];
  }
  return {
    left: left * 1e3,
    bottom: bottom * 1e3,
    width: (right - left) * 1e3,
    height: (top - bottom) * 1e3,
  };
}

interface Hatching {
  readonly made: readonly CellStretch[];
  readonly tint: Tint;
  readonly scale: TintScale;
}

function fieldItems(
  field: Field,
  ratio: number,
  squares: DrawnSquares,
  caption: string,
  hatching?: Hatching,
  under?: DrawnSquares,
): Item[] {
  const extent = extentOf(squares);
  const origin = {
    x: field.left + (field.width - ratio * extent.width) / 2 - ratio * extent.left + 4,
    y: FIELD_BOTTOM + (FIELD_HEIGHT - ratio * extent.height) / 2 - ratio * extent.bottom + 4,
  };
  const at = (x: number, y: number): Spot => ({ x: origin.x + ratio * x, y: origin.y + ratio * y });
  const { left, bottom, width, height } = extent;
  return [
    ...graduatedFrame({
      ...field,
      bottom: FIELD_BOTTOM,
      height: FIELD_HEIGHT,
      bar: barLength(ratio) * ratio,
      zero: origin,
    }),
    ...(under ? lineItems(under, at, 'dashed') : []),
    ...(hatching ? hatchItems(squares, at, hatching) : []),
    ...lineItems(squares, at, under ? 'outline' : hatching ? 'outline' : 'thin'),
    ...dimension(at(left, bottom), at(left + width, bottom), -9, width.toFixed(1)),
    ...dimension(at(left, bottom + height), at(left, bottom), -9, height.toFixed(1)),
    text({ x: field.left + 4, y: FIELD_BOTTOM + FIELD_HEIGHT - 8 }, caption, 3.5, 'start', true),
  ];
}

type Place = (x: number, y: number) => Spot;

/** Bars of the frame: a round length that is 5 to 12 mm on the paper. */
const barLength = (ratio: number): number => [0.5, 1, 2, 5, 10, 20, 50].find((mm) => mm * ratio >= 5) ?? 100;

const ringSpots = (ring: readonly number[], points: readonly number[], at: Place): Spot[] =>
  ring.map((point) => at(points[2 * point] * 1e3, points[2 * point + 1] * 1e3));

function hatchItems({ cells, points }: DrawnSquares, at: Place, { made, tint, scale }: Hatching): Item[] {
  return made.flatMap((stretch) =>
    hatched(ringSpots(cells[stretch.cell].ring, points, at), shadeOf(tints[tint].of(stretch), scale)),
  );
}

/** The sides of all cells; a side that two cells share is drawn once. */
function lineItems(
  { cells, points }: DrawnSquares,
  at: Place,
  stroke: 'outline' | 'thin' | 'dashed',
): Item[] {
  const drawn = new Set<string>();
  const spotOf = (point: number): Spot => at(points[2 * point] * 1e3, points[2 * point + 1] * 1e3);
  return cells.flatMap(({ ring }) =>
    ring.flatMap((from, i): Item[] => {
      const to = ring[(i + 1) % ring.length];
      if (drawn.has(`${to} ${from}`)) return [];
      drawn.add(`${from} ${to}`);
      return [{ kind: 'line', from: spotOf(from), to: spotOf(to), stroke }];
    }),
  );
}

const text = (
  at: Spot,
  words: string,
  size: number,
  anchor: 'start' | 'middle' | 'end',
  bold = false,
): Item => ({
  kind: 'text',
  at,
  text: words,
  size,
  anchor,
  bold,
});

const headItems = (name: string, { side }: DrawnSquares, ratio: number): Item[] => [
  text({ x: LEFT, y: 278 }, name, 7, 'start', true),
  text(
    { x: LEFT + whole.width, y: 278 },
    `scale ${ratioText(ratio)}, dimensions in mm, squares drawn with ${mm(side * 1e3)} mm, frame in bars of ${barLength(ratio)} mm`,
    2.5,
    'end',
  ),
];

const mm = (value: number): string => String(Number(value.toFixed(3)));

/** Boxes of the shades in order, with the values between them. */
function scaleItems(tint: Tint, { bounds, decimals }: TintScale): Item[] {
  const { name, unit } = tints[tint];
  const [y, width, height, left] = [36, 22, 10, LEFT];
  const boxes = bounds.slice(1).flatMap((_, n): Item[] => {
    const ring = boxAt(left + n * width, y, width, height);
    const sides = ring.map(
      (from, i): Item => ({ kind: 'line', from, to: ring[(i + 1) % 4], stroke: 'thin' }),
    );
    return [...hatched(ring, n), ...sides];
  });
  const figures = bounds.map((bound, n) =>
    text(
      { x: left + n * width, y: y - 5 },
      bound.toFixed(decimals) + unit,
      2.5,
      n === 0 ? 'start' : 'middle',
    ),
  );
  return [text({ x: left, y: y + height + 3 }, name, 2.5, 'start', true), ...boxes, ...figures];
}

const boxAt = (x: number, y: number, width: number, height: number): Spot[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];

const footItems: readonly Item[] = cautions.map((words, i) =>
  text({ x: LEFT, y: 21 - 4.5 * i }, words, 2, 'start'),
);

function description(
  name: string,
  { side }: DrawnSquares,
  [was, is]: readonly Extent[],
  made: readonly CellStretch[],
  tint: Tint,
): string {
  const values = made.map(tints[tint].of);
  const size = ({ width, height }: Extent): string => `${width.toFixed(1)} × ${height.toFixed(1)} mm`;
  const drawn = `${name}: squares of ${mm(side * 1e3)} mm on a section of ${size(was)}, ${size(is)} when rolled`;
  if (values.length === 0) return `${drawn}.`;
  const most = Math.max(...values);
  return `${drawn}; ${tints[tint].name} ${Math.min(...values).toFixed(2)} to ${most.toFixed(2)}${tints[tint].unit}.`;
}
