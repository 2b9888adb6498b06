import { z } from 'zod';
import type { Outline } from './outline.ts';

const row = z.tuple([z.number(), z.number(), z.number()]);

/** An outline in a file: rows of x mm, y mm, bulge (tan of a quarter of the arc's angle to the next row). */
export const OutlineFile = z.codec(z.array(row).min(2), z.custom<Outline>(), {
  decode: (rows) => ({ vertices: rows.map(([x, y, bulge]) => ({ x: x / 1e3, y: y / 1e3, bulge })) }),
  encode: ({ vertices }) =>
    vertices.map(({ x, y, bulge }): [number, number, number] => [x * 1e3, y * 1e3, bulge]),
});
