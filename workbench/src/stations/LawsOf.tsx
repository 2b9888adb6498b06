import type { StationRecord } from '@bloomrail/engine/bar/station';
import { memo } from 'react';
import { Laws } from '../sheet/Laws.tsx';
import { known } from './FieldOf.tsx';
import { forceRows, spreadRows } from './pass-laws.ts';

/** What the handbooks would have said, beside what was computed; where a station has such laws. */
export const LawsOf = memo(function LawsOf({ record: station }: { record: StationRecord }) {
  const record = known(station);
  if (record.kind === 'pass') {
    return (
      <section className="laws" aria-keyshortcuts="c" tabIndex={-1} aria-label="Laws for comparison">
        <Laws title="Force by law, horizontal rolls" unit="kN" rows={forceRows(record)} />
        <Laws title="Spread by law, wider by" unit="mm" rows={spreadRows(record)} />
      </section>
    );
  }
  if (record.kind !== 'furnace') return null;
  const { residence, rules } = record;
  return (
    <Laws
      letter="c"
      title="Heating time by rule of thumb"
      unit="min"
      rows={[
        { law: 'this furnace', value: residence, within: true, used: true },
        { law: 'Taits', value: rules.taits, within: true },
        { law: 'by thickness, low end', value: rules.low, within: true },
        { law: 'by thickness, high end', value: rules.high, within: true },
      ]}
    />
  );
});
