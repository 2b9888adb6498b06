import type { Stop } from './line-model.ts';

/** What the line across and the line downward are drawn from. */
export interface LinePicture {
  readonly stops: readonly Stop[];
  readonly sentence: string;
  /** The station that was open last, where the keys begin. */
  readonly from: string | undefined;
}

/** Where the sections stand on the screen, all to one scale. */
export interface LineLayout {
  /** Screen units for one metre of section. */
  readonly scale: number;
  readonly columns: readonly { readonly left: number; readonly width: number; readonly middle: number }[];
}

interface Room {
  readonly left: number;
  readonly right: number;
  /** Largest height of a section on the screen. */
  readonly height: number;
  /** Least width of a column, and space beside a section. */
  readonly least: number;
  readonly beside: number;
}

/** The largest common scale at which every section fits its column and the columns fill the room. */
export function layOut(stops: readonly Stop[], room: Room): LineLayout {
  const widths = stops.map(({ bar }) => (bar ? bar.bounds.right - bar.bounds.left : 0));
  const tallest = Math.max(0.01, ...stops.map(({ bar }) => (bar ? bar.bounds.top - bar.bounds.bottom : 0)));
  const wanted = (scale: number) => widths.map((width) => Math.max(room.least, width * scale + room.beside));
  const available = room.right - room.left;
  const scale = largest((at) => sum(wanted(at)) <= available, room.height / tallest);
  const columns = wanted(scale);
  const spare = Math.max(0, available - sum(columns)) / Math.max(1, stops.length);
  let left = room.left;
  return {
    scale,
    columns: columns.map((width) => {
      const column = { left, width: width + spare, middle: left + (width + spare) / 2 };
      left += width + spare;
      return column;
    }),
  };
}

function largest(fits: (scale: number) => boolean, most: number): number {
  if (fits(most)) return most;
  let [low, high] = [0, most];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
