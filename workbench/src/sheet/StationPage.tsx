import type { StationRecord } from '@bloomrail/engine/bar/station';
import { memo, useDeferredValue, useMemo, useState } from 'react';
import { Table } from '../ink/Table.tsx';
import type { Stop } from '../line/line-model.ts';
import { useBench } from '../page/bench-context.ts';
import { Guard } from '../page/Guard.tsx';
import { StateNote } from '../page/StateNote.tsx';
import { usePlan, useStations } from '../page/shown.ts';
import type { Field } from '../plan/fields.ts';
import { type Json, valueAt } from '../plan/plan-file.ts';
import { stationFields } from '../plan/station-fields.ts';
import { FieldOf, viewsOf } from '../stations/FieldOf.tsx';
import { factsOf } from '../stations/facts.ts';
import { LawsOf } from '../stations/LawsOf.tsx';
import { tableOf } from '../stations/tables.ts';
import { Downstream } from './Downstream.tsx';
import { FindingsList } from './FindingsList.tsx';
import { Measures } from './Measures.tsx';
import { useNamedSetting } from './named-setting.ts';
import { SettingsTable } from './SettingsTable.tsx';
import { Strip } from './Strip.tsx';

interface Props {
  readonly stops: readonly Stop[];
  readonly code: string;
  readonly table: boolean;
  readonly onTable: () => void;
}

/** One station as one sheet: title, field with the drawing, margin in a fixed order, downstream row after a move. */
export function StationPage({ stops, code, table, onTable }: Props) {
  const plan = usePlan();
  const settledPlan = useBench((bench) => bench.settledPlan);
  const stations = useStations();
  const [view, setView] = useState(0);
  useNamedSetting();
  const index = stations.findIndex((station) => station.code === code);
  const station = stations[index];
  const path = station?.path ?? '';
  const fields = useMemo(() => stationFields(plan, path), [plan, path]);
  const was = useMemo(() => movedValues(fields, settledPlan), [fields, settledPlan]);
  if (!station) return <NoSuchStation code={code} />;
  const { visit } = station;
  const views = visit ? viewsOf(visit.record) : [];
  const onView = (i: number) => {
    setView(i);
    if (table) onTable();
  };
  return (
    <main id="content" className="sheet">
      <Strip stops={stops} here={code} />
      <div className="title">
        <h1>
          {code}, {station.title.charAt(0).toLowerCase() + station.title.slice(1)}
        </h1>
        <span className="quiet">{visit ? factsOf(visit.record) : 'not computed yet'}</span>
        <div className="views">
          {views.map((name, i) => (
            <button
              key={name}
              type="button"
              aria-pressed={!table && i === view}
              aria-keyshortcuts={String(i + 1)}
              onClick={() => onView(i)}
            >
              {name}
            </button>
          ))}
          <button
            type="button"
            aria-pressed={table}
            aria-keyshortcuts={`t ${views.length + 1}`}
            onClick={onTable}
          >
            Table
          </button>
        </div>
      </div>
      <StateNote />
      <div className="body">
        <div style={{ opacity: station.state === 'old' ? 0.55 : 1 }}>
          {visit ? (
            <Picture record={visit.record} fields={fields} view={view} table={table} />
          ) : (
            <p className="quiet">{station.state === 'absent' ? 'The bar has not come here yet.' : ''}</p>
          )}
        </div>
        <div className="margin">
          <SettingsTable fields={fields} was={was} />
          {visit && <Measures measures={visit.record.measures} before={station.was?.record.measures} />}
          {visit && <FindingsList findings={visit.record.findings} stations={stations} here={code} />}
        </div>
      </div>
      <Downstream stations={stations} index={index} />
    </main>
  );
}

interface PictureProps {
  readonly record: StationRecord;
  readonly fields: readonly Field[];
  readonly view: number;
  readonly table: boolean;
}

/** The drawing with what handbooks say beside it, or its table. Laws and table may follow a picture later. */
const Picture = memo(function Picture({ record, fields, view, table }: PictureProps) {
  const later = useDeferredValue(record);
  return (
    <>
      <RecordTable record={later} shown={table} />
      {!table && (
        <Guard>
          <FieldOf record={record} fields={fields} view={view} />
        </Guard>
      )}
      {!table && <LawsOf record={later} />}
    </>
  );
});

const RecordTable = memo(function RecordTable({ record, shown }: { record: StationRecord; shown: boolean }) {
  return <Table model={tableOf(record)} shown={shown} />;
});

/** What the values were behind the last full result, where they are something else now. */
function movedValues(fields: readonly Field[], settledPlan: Json): Map<string, Json> {
  return new Map(
    fields.flatMap(({ path, value }) => {
      const was = valueAt(settledPlan, path) ?? null;
      return was === (value ?? null) ? [] : [[path, was] as const];
    }),
  );
}

function NoSuchStation({ code }: { code: string }) {
  return (
    <main id="content">
      <div className="title">
        <h1>No station {code} on this line</h1>
      </div>
      <StateNote />
    </main>
  );
}
