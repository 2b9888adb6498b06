import type { Measure } from '@bloomrail/engine/bar/measure';
import { memo } from 'react';
import { capital } from '../ink/words.ts';
import { type MeasureRow, measureRow, sameIn } from './measure-model.ts';

const looks = { calibrated: 'solid', computed: 'open', assumed: 'assumed' } as const;

interface Props {
  readonly measures: readonly Measure[];
  readonly before: readonly Measure[] | undefined;
}

/** Everything that stands against a limit here: value, limit, doubt, law, in the order a technologist reads it. */
export const Measures = memo(function Measures({ measures, before }: Props) {
  if (measures.length === 0) return null;
  return (
    <section aria-keyshortcuts="l" tabIndex={-1}>
      <h2>
        Against limits{' '}
        <small>thick tick: limit; bracket: range; open bar: computed, not calibrated here</small>
      </h2>
      <table className="measures">
        <thead className="hidden">
          <tr>
            {['Measure', 'Drawn', 'Value', 'Limit', 'Range and state before'].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {measures.map((measure) => {
            const row = measureRow(measure, sameIn(before, measure));
            return <Row key={row.name} row={row} />;
          })}
        </tbody>
      </table>
    </section>
  );
});

function Row({ row }: { row: MeasureRow }) {
  const words = [row.was && `was ${row.was}`, row.sure === 'assumed' && 'assumed'].filter(Boolean).join(', ');
  return (
    <tr className={row.level} title={[row.law, row.range && `range ${row.range}`].filter(Boolean).join('; ')}>
      <th scope="row">{capital(row.name)}</th>
      <td className="bar">
        <Bar row={row} />
      </td>
      <td className={row.was ? 'value moved' : 'value'}>{row.value}</td>
      <td className="unit">{row.limit}</td>
      <td className="note">
        {words}
        <span className="hidden">
          {' '}
          {row.range && `range ${row.range}`} {row.law}
        </span>
      </td>
    </tr>
  );
}

const width = 140;

function Bar({ row }: { row: MeasureRow }) {
  if (row.mark === undefined) return null;
  const x = (share: number) => share * width;
  const within = Math.min(row.bar, row.level === 'outside' && row.bar > row.mark ? row.mark : row.bar);
  return (
    <svg width={width} height={18} aria-hidden="true">
      <path className="hairline" d={`M0 7H${width}`} />
      <rect className={looks[row.sure]} x={0} y={4} height={6} width={x(within)} />
      {row.bar > row.mark && row.level === 'outside' && (
        <rect className="over" x={x(row.mark)} y={2.5} height={9} width={x(row.bar - row.mark)} />
      )}
      {row.from !== undefined && row.to !== undefined && (
        <path className="thin" d={`M${x(row.from)} 12v4M${x(row.from)} 14H${x(row.to)}M${x(row.to)} 12v4`} />
      )}
      <path className="limit" d={`M${x(row.mark)} 0V15`} />
    </svg>
  );
}
