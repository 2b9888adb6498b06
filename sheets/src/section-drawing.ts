import type { Outline } from '@bloomrail/engine/section/outline';
import { sectionProperties } from '@bloomrail/engine/section/properties';
import { moved, scaled } from '@bloomrail/engine/section/transform';
import { cautions } from './cautions.ts';
import { dimension } from './dimension.ts';
import type { Drawing, Item, Spot } from './drawing.ts';
import { graduatedFrame } from './graduated-frame.ts';

/** A line under the drawing: what, and how much with its unit. */
export interface Note {
  readonly name: string;
  readonly value: string;
}

/** A section to scale on A4 upright: outline, axes, overall dimensions, and notes below. */
export function sectionDrawing(name: string, outline: Outline, notes: readonly Note[]): Drawing {
  const { bounds, centroid, area } = sectionProperties(outline);
  const [width, height] = [(bounds.right - bounds.left) * 1e3, (bounds.top - bounds.bottom) * 1e3];
  const scale =
    scales.find((ratio) => width * ratio <= FIELD.width - 28 && height * ratio <= FIELD.height - 32) ?? 0.1;
  const origin = {
    x: PAPER.width / 2 - (scale * 1e3 * (bounds.left + bounds.right)) / 2,
    y: FIELD.bottom + (FIELD.height - scale * height) / 2 + 5 - scale * 1e3 * bounds.bottom,
  };
  const at = (x: number, y: number): Spot => ({
    x: origin.x + scale * 1e3 * x,
    y: origin.y + scale * 1e3 * y,
  });
  const drawn = moved(scaled(outline, scale), origin.x / 1e3, origin.y / 1e3);
  const middle = (bounds.left + bounds.right) / 2;
  return {
    title: `${name}, section ${scaleText(scale)}`,
    description: `Section ${name}, ${height.toFixed(1)} mm high, ${width.toFixed(1)} mm wide, ${(area * 1e4).toFixed(2)} cm².`,
    width: PAPER.width,
    height: PAPER.height,
    items: [
      ...graduatedFrame({
        left: FIELD.left,
        bottom: FIELD.bottom,
        width: FIELD.width,
        height: FIELD.height,
        bar: 10 * scale,
        zero: at(middle, bounds.bottom),
      }),
      { kind: 'outline', outline: drawn, stroke: 'outline', fill: 'steel' },
      {
        kind: 'line',
        from: shift(at(middle, bounds.bottom), 0, -4),
        to: shift(at(middle, bounds.top), 0, 4),
        stroke: 'centre',
      },
      {
        kind: 'line',
        from: shift(at(bounds.left, centroid.y), -4, 0),
        to: shift(at(bounds.right, centroid.y), 4, 0),
        stroke: 'centre',
      },
      ...dimension(at(bounds.left, bounds.bottom), at(bounds.right, bounds.bottom), -12, width.toFixed(1)),
      ...dimension(at(bounds.left, bounds.top), at(bounds.left, bounds.bottom), -8, height.toFixed(1)),
      ...dimension(
        at(bounds.right, bounds.bottom),
        at(bounds.right, centroid.y),
        -8,
        ((centroid.y - bounds.bottom) * 1e3).toFixed(1),
      ),
      {
        kind: 'text',
        at: { x: FIELD.left, y: PAPER.height - 18 },
        text: name,
        size: 7,
        anchor: 'start',
        bold: true,
      },
      {
        kind: 'text',
        at: { x: FIELD.left + FIELD.width, y: PAPER.height - 18 },
        text: `scale ${scaleText(scale)}, dimensions in mm, frame in bars of 10 mm`,
        size: 2.5,
        anchor: 'end',
      },
      ...noteLines(notes),
      ...cautions.map(
        (text, i): Item => ({
          kind: 'text',
          at: { x: FIELD.left, y: 17 - 4.5 * i },
          text,
          size: 2,
          anchor: 'start',
        }),
      ),
    ],
  };
}

const PAPER = { width: 210, height: 297 };
const FIELD = { left: 15, bottom: 68, width: 180, height: 206 };

/** ISO 5455. */
const scales = [1, 0.5, 0.2, 0.1];
const scaleText = (scale: number): string => `1 : ${Math.round(1 / scale)}`;

const shift = ({ x, y }: Spot, dx: number, dy: number): Spot => ({ x: x + dx, y: y + dy });

/** Notes in two columns below the field. */
const noteLines = (notes: readonly Note[]): Item[] =>
  notes.flatMap(({ name, value }, i): Item[] => {
    const half = Math.ceil(notes.length / 2);
    const x = FIELD.left + (i < half ? 0 : 95);
    const y = FIELD.bottom - 10 - 6.5 * (i % half);
    return [
      { kind: 'text', at: { x, y }, text: name, size: 2.5, anchor: 'start' },
      { kind: 'text', at: { x: x + 82, y }, text: value, size: 2.5, anchor: 'end', bold: true },
    ];
  });
