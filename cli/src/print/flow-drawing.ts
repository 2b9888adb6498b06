import type { FlowRecord } from '@bloomrail/engine/line/flow-case/record';
import { edgesOf } from '@bloomrail/engine/section/edges';
import type { Outline, Path } from '@bloomrail/engine/section/outline';
import { boundsOf } from '@bloomrail/engine/section/properties';
import { moved, scaled } from '@bloomrail/engine/section/transform';
import { print } from '@bloomrail/engine/units/unit';
import { cautions } from '@bloomrail/sheets/cautions';
import { dimension } from '@bloomrail/sheets/dimension';
import type { Drawing, Item, Spot } from '@bloomrail/sheets/drawing';
import { graduatedFrame } from '@bloomrail/sheets/graduated-frame';

const PAPER = { width: 210, height: 297 };
const FIELD = { left: 15, bottom: 78, width: 180, height: 190 };
/** ISO 5455. */
const scales = [5, 2, 1, 0.5, 0.2, 0.1];
/** Free paper around the bar, mm, for dimensions and roll names. */
const MARGIN = 24;

/** A pass to scale on A4 upright: entering bar dashed, leaving bar, rolls, and extra wide where rolls touch it. */
export function flowDrawing(record: FlowRecord): Drawing {
  const { title, entry, exit, rolls } = record;
  const sheet = sheetFor([entry.outline, exit.outline]);
  return {
    title: `${title}, ${sheet.scaleText}`,
    description: `${title}: ${print(entry.area, 'mm2')} in, ${print(exit.area, 'mm2')} out, ${print(exit.width, 'mm')} wide, ${print(exit.height, 'mm')} high.`,
    ...PAPER,
    items: [
      ...graduatedFrame({ ...FIELD, bar: 10 * sheet.scale, zero: sheet.at(0, 0) }),
      { kind: 'outline', outline: sheet.place(exit.outline), stroke: 'thin', fill: 'steel' },
      { kind: 'outline', outline: sheet.place(entry.outline), stroke: 'dashed' },
      ...rolls.flatMap((roll) => [
        ...images(roll.profile, record.symmetry).flatMap((profile) => chain(sheet, profile, 'thin')),
        ...roll.touched.flatMap((path) => chain(sheet, path, 'limit')),
      ]),
      ...dimensions(sheet, entry.outline, exit.outline),
      ...words(record, sheet.scaleText),
    ],
  };
}

interface Sheet {
  readonly scale: number;
  readonly scaleText: string;
  readonly at: (x: number, y: number) => Spot;
  readonly place: (outline: Outline) => Outline;
}

/** The largest usual scale at which the bar has its margins; the middle of the bar in the middle of the field. */
function sheetFor(outlines: readonly Outline[]): Sheet {
  const { left, right, bottom, top } = boundsOf(outlines.flatMap((outline) => edgesOf(outline)));
  const [width, height] = [1e3 * (right - left), 1e3 * (top - bottom)];
  const fits = (scale: number) =>
    scale * width <= FIELD.width - 2 * MARGIN && scale * height <= FIELD.height - 2 * MARGIN;
  const scale = scales.find(fits) ?? 0.05;
  const zero = {
    x: FIELD.left + FIELD.width / 2 - scale * 500 * (left + right),
    y: FIELD.bottom + FIELD.height / 2 - scale * 500 * (top + bottom),
  };
  return {
    scale,
    scaleText: scale >= 1 ? `${scale} : 1` : `1 : ${Math.round(1 / scale)}`,
    at: (x, y) => ({ x: zero.x + 1e3 * scale * x, y: zero.y + 1e3 * scale * y }),
    place: (outline) => moved(scaled(outline, scale), zero.x / 1e3, zero.y / 1e3),
  };
}

/** A roll's edge and its mirror images in the lines of symmetry. */
function images(profile: Path, symmetry: FlowRecord['symmetry']): Path[] {
  const flipped = ({ vertices }: Path, line: 'x' | 'y'): Path => ({
    vertices: vertices.map((vertex) => ({ ...vertex, [line]: -vertex[line], bulge: -vertex.bulge })),
  });
  const both = symmetry === 'none' ? [profile] : [profile, flipped(profile, 'y')];
  return symmetry === 'quarter' ? [...both, ...both.map((path) => flipped(path, 'x'))] : both;
}

/** Straight lines through a path's points, as far as they lie in the field. */
const chain = ({ at }: Sheet, { vertices }: Path, stroke: 'thin' | 'limit'): Item[] =>
  vertices.slice(1).flatMap((to, i): Item[] => {
    const inside = clipped(at(vertices[i].x, vertices[i].y), at(to.x, to.y));
    return inside ? [{ kind: 'line', from: inside[0], to: inside[1], stroke }] : [];
  });

/** The part of a line inside the field's border, by its two parameters along the line. */
function clipped(from: Spot, to: Spot): readonly [Spot, Spot] | undefined {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [enter, leave] = [0, 1];
  const sides: [rate: number, room: number][] = [
    [-dx, from.x - FIELD.left - BORDER],
    [dx, FIELD.left + FIELD.width - BORDER - from.x],
    [-dy, from.y - FIELD.bottom - BORDER],
    [dy, FIELD.bottom + FIELD.height - BORDER - from.y],
  ];
  for (const [rate, room] of sides) {
    if (rate === 0 && room < 0) return undefined;
    if (rate < 0) enter = Math.max(enter, room / rate);
    if (rate > 0) leave = Math.min(leave, room / rate);
  }
  if (enter >= leave) return undefined;
  const along = (share: number): Spot => ({ x: from.x + share * dx, y: from.y + share * dy });
  return [along(enter), along(leave)];
}

/** Thickness of the frame's bars, mm. */
const BORDER = 1.3;

/** Outside both outlines, so that no dimension line runs through the entering bar. */
function dimensions({ at, scale }: Sheet, entry: Outline, exit: Outline): Item[] {
  const box = (outline: Outline) => boundsOf(edgesOf(outline));
  const { left, right, bottom, top } = box(exit);
  const clear = (beyond: number) => -12 - 1e3 * scale * Math.max(0, beyond);
  const mm = (metres: number) => (1e3 * metres).toFixed(1);
  return [
    ...dimension(at(left, bottom), at(right, bottom), clear(bottom - box(entry).bottom), mm(right - left)),
    ...dimension(at(left, top), at(left, bottom), clear(left - box(entry).left), mm(top - bottom)),
  ];
}

function words({ title, rolls, elongation, entry, exit }: FlowRecord, scaleText: string): Item[] {
  const text = (
    x: number,
    y: number,
    words: string,
    size: number,
    anchor: 'start' | 'end' = 'start',
    bold = false,
  ): Item => ({
    kind: 'text',
    at: { x, y },
    text: words,
    size,
    anchor,
    bold,
  });
  const right = FIELD.left + FIELD.width;
  const loads = rolls.map(
    ({ name, idle, force, torque }) =>
      `${name}${idle ? ', idle' : ''}: ${print(force, 'kN')}, ${print(torque, 'kNm', 1)}`,
  );
  const lines = [
    `${print(entry.area, 'mm2')} to ${print(exit.area, 'mm2')}, elongation ${elongation.toFixed(3)}`,
    ...loads,
  ];
  return [
    text(FIELD.left, PAPER.height - 18, title, 5, 'start', true),
    text(
      right,
      PAPER.height - 25,
      `scale ${scaleText}, dimensions in mm, frame in bars of 10 mm`,
      2.5,
      'end',
    ),
    text(
      FIELD.left,
      FIELD.bottom - 8,
      'Dashed: entering. Filled: leaving. Extra wide: where rolls touch it.',
      2.5,
    ),
    ...lines.map((line, i) => text(FIELD.left, FIELD.bottom - 16 - 6 * i, line, 2.5)),
    ...cautions.map((line, i) => text(FIELD.left, 17 - 4.5 * i, line, 2)),
  ];
}
