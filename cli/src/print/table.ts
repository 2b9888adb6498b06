/** One column of a table for people: head, unit, and how far to the right its figures stand. */
export interface Column<Row> {
  readonly head: string;
  readonly unit?: string;
  readonly align: 'left' | 'right';
  readonly cell: (row: Row) => string;
}

/** Rows as text in columns; the unit stands once, under the head. */
export function table<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const heads = columns.map(({ head }) => head);
  const unitRow = columns.map(({ unit }) => unit ?? '');
  const body = rows.map((row) => columns.map(({ cell }) => cell(row)));
  const lines = unitRow.some(Boolean) ? [heads, unitRow, ...body] : [heads, ...body];
  const widths = columns.map((_, i) => Math.max(...lines.map((line) => widthOf(line[i]))));
  const print = (line: readonly string[]) =>
    line
      .map((text, i) => pad(text, widths[i], columns[i].align))
      .join('  ')
      .trimEnd();
  const rule = widths.map((width) => '─'.repeat(width)).join('──');
  const headLines = lines.length - body.length;
  return [...lines.slice(0, headLines).map(print), rule, ...body.map(print)].join('\n');
}

const widthOf = (text: string): number => [...text].length;

function pad(text: string, width: number, align: 'left' | 'right'): string {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'left' ? text + space : space + text;
}
