import { area, line } from 'd3-shape';

type Row = ArrayLike<number>;
type Scale = (value: number) => number;

const numbers = (row: Row): number[] => Array.from({ length: row.length }, (_, i) => i);

/** Path of a curve given by two rows of numbers. */
export const curve = (xs: Row, ys: Row, x: Scale, y: Scale): string =>
  line<number>(
    (i) => x(xs[i]),
    (i) => y(ys[i]),
  )(numbers(xs)) ?? '';

/** Path of the band between two curves over one row. */
export const between = (xs: Row, low: Row, high: Row, x: Scale, y: Scale): string =>
  area<number>(
    (i) => x(xs[i]),
    (i) => y(low[i]),
    (i) => y(high[i]),
  )(numbers(xs)) ?? '';
