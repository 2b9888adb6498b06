/**
 * A run as lines a person can read and compare: `path = value`, numbers rounded to four figures (three decimals near
 * zero), long rows only by their length, first, middle and last value.
 */
export function readable(value: unknown): string {
  return `${lines('', value).join('\n')}\n`;
}

function lines(path: string, value: unknown): string[] {
  if (Array.isArray(value))
    return value.every(isPlain) && value.length > 8 ? [`${path} = ${sample(value)}`] : entries(path, value);
  if (typeof value === 'object' && value !== null) return entries(path, value);
  return [`${path} = ${plain(value)}`];
}

function entries(path: string, value: object): string[] {
  return Object.entries(value)
    .filter(([key, part]) => part !== undefined && key !== 'outline' && key !== 'profile')
    .flatMap(([key, part]) => lines(path ? `${path}.${key}` : key, part));
}

const isPlain = (value: unknown): boolean => typeof value !== 'object' || value === null;

const sample = (row: readonly unknown[]): string =>
  `${row.length} values: ${[row[0], row[row.length >> 1], row[row.length - 1]].map(plain).join(' … ')}`;

function plain(value: unknown): string {
  if (typeof value !== 'number') return String(value);
  if (Number.isInteger(value)) return String(value);
  const rounded = Math.abs(value) < 1e-3 ? 0 : Number(value.toPrecision(4));
  return String(Object.is(rounded, -0) ? 0 : rounded);
}
