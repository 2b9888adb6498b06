import { useId } from 'react';

/** Figures behind a picture: the first cell of a row is its name, the rest stand under their heads. */
export interface TableModel {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The table of a picture. It is always in the page; `shown` brings it before everybody's eyes. */
export function Table({ model, shown }: { model: TableModel; shown: boolean }) {
  const { caption, heads, rows } = model;
  const id = useId();
  if (rows.length === 0) return null;
  return (
    <section className={shown ? 'table' : 'hidden'} aria-labelledby={id} tabIndex={shown ? 0 : undefined}>
      {shown && <Download model={model} />}
      <table>
        <caption id={id}>{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells]) => (
            <tr key={`${name} ${cells.join(' ')}`}>
              <th scope="row">{name}</th>
              {cells.map((cell, i) => (
                <td key={heads[i + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The figures as a file, for a spreadsheet. */
function Download({ model }: { model: TableModel }) {
  return (
    <a
      className="act"
      href={`data:text/csv;charset=utf-8,${encodeURIComponent(asCsv(model))}`}
      download={`${model.caption}.csv`}
    >
      Take these figures as CSV
    </a>
  );
}

/** The same figures as a file of comma-separated values. */
function asCsv({ heads, rows }: TableModel): string {
  const cell = (text: string) => `"${text.replaceAll('"', '""')}"`;
  return [heads, ...rows].map((row) => row.map(cell).join(',')).join('\r\n');
}
