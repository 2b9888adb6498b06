import { z } from 'zod';
import { outlineThrough } from '../../section/flatten.ts';
import type { Outline } from '../../section/outline.ts';
import { OutlineFile } from '../../section/outline-file.ts';
import { sectionProperties } from '../../section/properties.ts';
import { rectangle } from '../../section/rectangle.ts';
import { choice, group, quantity } from '../../units/group.ts';

/** Farthest that a point of a section or a roll may lie from the middle of the pass, mm. */
export const reachMm = 2000;

const place = (title: string) => z.number().min(-reachMm).max(reachMm).meta({ title, unit: 'mm' });

/** Points of a curve in a file: rows of x mm, y mm; straight lines between them. */
export const pointRows = (least: number) =>
  z.codec(
    z
      .array(z.tuple([place('Along the rolls'), place('Across the gap')]))
      .min(least)
      .max(2000),
    z.custom<Outline>(),
    {
      decode: (rows) => outlineThrough(rows.flat().map((mm) => mm / 1e3)),
      encode: ({ vertices }) => vertices.map(({ x, y }): [number, number] => [tidy(x), tidy(y)]),
    },
  );

/** 14 digits: what was written comes back as it was written. */
const tidy = (metres: number): number => Number((metres * 1e3).toPrecision(14));

const cornerRadius = quantity('mm', 'Corner radius', 0, 300);

/** The whole section as it enters, hot; x along the roll axes, y across the gap, the pass's middle at 0, 0. */
export const EnteringSection = choice('shape', [
  group({ shape: z.literal('square'), side: quantity('mm', 'Side', 5, 1000), cornerRadius }),
  group({
    shape: z.literal('rectangle'),
    width: quantity('mm', 'Width, along the rolls', 5, 2000),
    height: quantity('mm', 'Height, across the gap', 5, 1000),
    cornerRadius,
  }),
  group({ shape: z.literal('outline'), rows: OutlineFile }, 'Lines and arcs: x mm, y mm, bulge.'),
  group({ shape: z.literal('points'), pointsMm: pointRows(3) }, 'Straight lines through points.'),
]);
export type EnteringSection = z.output<typeof EnteringSection>;

/** Its outline, counter-clockwise whichever way it was written. */
export function outlineOfSection(section: EnteringSection): Outline {
  switch (section.shape) {
    case 'square':
      return rectangle(section.side, section.side, section.cornerRadius);
    case 'rectangle':
      return rectangle(section.width, section.height, section.cornerRadius);
    case 'outline':
      return counterClockwise(section.rows);
    case 'points':
      return counterClockwise(section.pointsMm);
  }
}

const counterClockwise = (outline: Outline): Outline =>
  sectionProperties(outline).area < 0 ? reversed(outline) : outline;

/** The same curve run through backwards: an arc belongs to the vertex that is now its first, and turns the other way. */
function reversed({ vertices }: Outline): Outline {
  const n = vertices.length;
  return {
    vertices: vertices.map((_, i) => {
      const { x, y } = vertices[(n - i) % n];
      return { x, y, bulge: -vertices[n - 1 - i].bulge };
    }),
  };
}
