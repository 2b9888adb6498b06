import type { writeRun } from '@bloomrail/engine/line/records';

/**
 * A run as lines a person can read and compare, numbers rounded to four figures: the summary, the balance, and of each
 * stop its plain values, what stands against limits, the middle of the bar as it leaves, and findings by name.
 */
export function readable({ summary, balance, records }: ReturnType<typeof writeRun>): string {
  const blocks = [
    block('summary', plainValues(summary)),
    block('balance', plainValues(balance)),
    ...records.map(({ code, title, record }) => block(`${code} ${title}`, stop(record as Written))),
  ];
  return `${blocks.join('\n\n')}\n`;
}

interface Written {
  readonly leaving: { readonly places: { readonly middle: object } };
  readonly measures: readonly { name: string; part: string; value: number; unit: string }[];
  readonly findings: readonly { level: string; check: string }[];
}

const block = (title: string, lines: readonly string[]): string =>
  [title, ...lines.map((line) => `  ${line}`)].join('\n');

const stop = (record: Written): string[] => [
  ...plainValues(record),
  ...plainValues(record.leaving).map((line) => `leaving ${line}`),
  ...plainValues(record.leaving.places.middle).map((line) => `leaving middle ${line}`),
  ...record.measures.map(
    ({ name, part, value, unit }) => `${[name, part].filter(Boolean).join(', ')} = ${figure(value)} ${unit}`,
  ),
  ...record.findings.map(({ level, check }) => `${level}: ${check}`),
];

/** Values that stand by themselves; rows and groups are left to the tests of their stations. */
const plainValues = (of: object): string[] =>
  Object.entries(of)
    .filter(([, value]) => typeof value !== 'object' && value !== undefined)
    .map(([key, value]) => `${key} = ${typeof value === 'number' ? figure(value) : value}`);

/** Four figures; what is smaller than a millionth is round-off and stands as 0. */
const figure = (value: number): string => String(Math.abs(value) < 1e-6 ? 0 : Number(value.toPrecision(4)));
