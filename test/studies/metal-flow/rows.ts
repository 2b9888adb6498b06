/** One row of a study: what was found against what is wanted of it. */
export interface Row {
  readonly what: string;
  readonly found: string;
  readonly wanted: string;
  /** Whether it lies where it is wanted; absent where nothing is wanted. */
  readonly holds?: boolean;
  readonly source: string;
}

/** Signed percent of a over b. */
export const percentOver = (a: number, b: number): number => 100 * (a / b - 1);

export const signed = (value: number, digits = 1): string =>
  (value < 0 ? '−' : '+') + Math.abs(value).toFixed(digits);

/** A row that holds when the value lies between two limits; without limits it is only shown. */
export function between(
  what: string,
  value: number,
  limits: readonly [number, number] | undefined,
  unit: string,
  source: string,
  digits = 1,
): Row {
  const found = `${signed(value, digits)} ${unit}`.trim();
  if (!limits) return { what, found, wanted: '–', source };
  const [low, high] = limits;
  const wanted = `${signed(low, digits)} … ${signed(high, digits)}`;
  return { what, found, wanted, holds: value >= low && value <= high, source };
}

export const tableOf = (rows: readonly Row[]): string =>
  [
    '| what | found | wanted | | against |',
    '|---|---|---|---|---|',
    ...rows.map(
      ({ what, found, wanted, holds, source }) =>
        `| ${what} | ${holds === false ? `**${found}**` : found} | ${wanted} | ${verdict(holds)} | ${source} |`,
    ),
  ].join('\n');

const verdict = (holds: boolean | undefined): string =>
  holds === undefined ? '' : holds ? 'holds' : '**misses**';
