import type { DrawnSquares } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/squares';
import { stretches } from '@bloomrail/engine/phenomena/metal-flow/drawn-squares/stretch';
import { cautions } from './cautions.ts';
import type { Drawing, Item, Spot } from './drawing.ts';
import {
  barLength,
  type Extent,
  extentOf,
  type Field,
  fieldHeight,
  fieldItems,
} from './drawn-squares-field.ts';
import { hatched } from './drawn-squares-hatching.ts';
import { type Tint, type TintScale, tintScale, tints } from './drawn-squares-tint.ts';

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
export function drawnSquaresDrawing(shown: SquaresShown): Drawing {
  const { name, before, after, tint = 'shear', layout = 'beside' } = shown;
  const made = stretches(before, after);
  const values = made.map(tints[tint].of);
  const scale = tintScale(values, tints[tint].least);
  const rolled = { caption: 'after', squares: after, hatching: { made, tint, scale } };
  const extents = [extentOf(before), extentOf(after)];
  const ratio = ratioFor(extents, layout === 'over' ? whole : left);
  const fields =
    layout === 'over'
      ? fieldItems(whole, ratio, { ...rolled, caption: 'after; before dashed', under: before })
      : [
          ...fieldItems(left, ratio, { caption: 'before', squares: before }),
          ...fieldItems(right, ratio, rolled),
        ];
  return {
    title: `${name}, drawn squares ${ratioText(ratio)}`,
    description: description(name, before.side, extents, values, tint),
    width: 420,
    height: 297,
    items: [...headItems(name, before, ratio), ...fields, ...scaleItems(tint, scale), ...footItems],
  };
}

const left: Field = { left: 15, width: 192 };
const right: Field = { left: 213, width: 192 };
const whole: Field = { left: 15, width: 390 };

/** ISO 5455. */
const ratios = [20, 10, 5, 2, 1, 0.5, 0.2, 0.1];
const ratioText = (ratio: number): string => (ratio < 1 ? `1 : ${Math.round(1 / ratio)}` : `${ratio} : 1`);

/** Room that dimensions and frame need around a section, mm. */
const around = 36;

const ratioFor = (extents: readonly Extent[], field: Field): number =>
  ratios.find((ratio) =>
    extents.every(
      ({ width, height }) => ratio * width <= field.width - around && ratio * height <= fieldHeight - around,
    ),
  ) ?? ratios[ratios.length - 1];

type Anchor = 'start' | 'middle' | 'end';

const text = (at: Spot, words: string, size: number, anchor: Anchor = 'start', bold = false): Item => ({
  kind: 'text',
  at,
  text: words,
  size,
  anchor,
  bold,
});

function headItems(name: string, { side }: DrawnSquares, ratio: number): Item[] {
  const facts = [
    `scale ${ratioText(ratio)}`,
    'dimensions in mm',
    `squares of ${millimetres(side)} mm before rolling`,
    `frame in bars of ${barLength(ratio)} mm`,
  ];
  return [
    text({ x: whole.left, y: 278 }, name, 7, 'start', true),
    text({ x: whole.left + whole.width, y: 278 }, facts.join(', '), 2.5, 'end'),
  ];
}

const millimetres = (metres: number): string => String(Number((metres * 1e3).toFixed(3)));

/** Boxes of the shades in order, with the values between them. */
function scaleItems(tint: Tint, { bounds, decimals }: TintScale): Item[] {
  const { name, unit } = tints[tint];
  const placeOf = (n: number, y: number): Spot => ({ x: whole.left + 22 * n, y });
  const [low, high] = [36, 46];
  const boxes = bounds.slice(1).flatMap((_, n): Item[] => {
    const ring = [placeOf(n, low), placeOf(n + 1, low), placeOf(n + 1, high), placeOf(n, high)];
    const sides = ring.map(
      (from, i): Item => ({ kind: 'line', from, to: ring[(i + 1) % 4], stroke: 'thin' }),
    );
    return [...hatched(ring, n), ...sides];
  });
  const figures = bounds.map((bound, n) =>
    text(placeOf(n, low - 5), bound.toFixed(decimals) + unit, 2.5, n === 0 ? 'start' : 'middle'),
  );
  return [text(placeOf(0, high + 3), name, 2.5, 'start', true), ...boxes, ...figures];
}

const footItems = cautions.map((words, i) => text({ x: whole.left, y: 21 - 4.5 * i }, words, 2));

function description(
  name: string,
  side: number,
  [was, is]: readonly Extent[],
  values: readonly number[],
  tint: Tint,
): string {
  const size = ({ width, height }: Extent): string => `${width.toFixed(1)} × ${height.toFixed(1)} mm`;
  const drawn = `${name}: squares of ${millimetres(side)} mm on a section of ${size(was)}, ${size(is)} when rolled`;
  if (values.length === 0) return `${drawn}.`;
  const range = [Math.min(...values), Math.max(...values)].map((value) => value.toFixed(2)).join(' to ');
  return `${drawn}; ${tints[tint].name} ${range}${tints[tint].unit}.`;
}
