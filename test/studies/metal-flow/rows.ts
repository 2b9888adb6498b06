/** One row of a study: what was found against what is wanted of it. */
export interface Row {
  readonly what: string;
  readonly found: string;
  readonly wanted: string;
  readonly holds: boolean;
  readonly source: string;
}

/** Signed percent of a over b. */
export const percentOver = (a: number, b: number): number => 100 * (a / b - 1);

export const signed = (value: number, digits = 1): string =>
  (value < 0 ? '−' : '+') + Math.abs(value).toFixed(digits);

/** A row that holds when the value lies between two limits. */
export function between(
  what: string,
  value: number,
  [low, high]: readonly [number, number],
  unit: string,
  source: string,
  digits = 1,
): Row {
  return {
    what,
    found: `${signed(value, digits)} ${unit}`.trim(),
    wanted: `${signed(low, digits)} … ${signed(high, digits)}`,
    holds: value >= low && value <= high,
    source,
  };
}

export const tableOf = (rows: readonly Row[]): string =>
  [
    '| what | found | wanted | | against |',
    '|---|---|---|---|---|',
    ...rows.map(
      ({ what, found, wanted, holds, source }) =>
        `| ${what} | ${holds ? found : `**${found}**`} | ${wanted} | ${holds ? 'holds' : '**misses**'} | ${source} |`,
    ),
  ].join('\n');
