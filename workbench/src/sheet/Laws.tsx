import { figure } from '../ink/numbers.ts';
import type { LawRow } from './laws-model.ts';

interface Props {
  readonly title: string;
  readonly unit: 'kN' | 'mm' | 'min';
  readonly rows: readonly LawRow[];
  /** The key that leads here, where these laws stand alone. */
  readonly letter?: string;
}

const width = 100;

/** Handbook laws side by side on one scale; a handbook is never a limit. Pale: used outside its range. */
export function Laws({ title, unit, rows, letter }: Props) {
  if (rows.length === 0) return null;
  const largest = Math.max(...rows.map(({ value }) => Math.abs(value)), 1e-12);
  return (
    <section {...(letter ? { 'aria-keyshortcuts': letter, tabIndex: -1 } : {})}>
      <h2>
        {title} <small>pointer: this law's answer; no limit</small>
      </h2>
      <table className="measures">
        <tbody>
          {rows.map(({ law, value, within, used, factor }) => (
            <tr key={law}>
              <th scope="row">{used ? <b>{law}</b> : law}</th>
              <td className="bar">
                <svg width={width} height={14} aria-hidden="true">
                  <path className="hairline" d={`M0 9H${width}`} />
                  <path
                    d={`M${(0.9 * width * Math.abs(value)) / largest} 9l-4 -8h8z`}
                    fill={within ? 'var(--ink)' : 'none'}
                    stroke={within ? 'var(--ink)' : 'var(--ghost)'}
                  />
                </svg>
              </td>
              <td className="value">{figure(value, unit)}</td>
              <td className="unit">{unit}</td>
              <td className="note">
                {[used && usedWords(factor), !within && 'outside its range'].filter(Boolean).join(', ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const usedWords = (factor = 1): string =>
  factor === 1 ? 'used here' : `used here, times ${factor.toFixed(2)}`;
