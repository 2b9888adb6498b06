import { Table } from '../ink/Table.tsx';
import type { Stop } from '../line/line-model.ts';
import { useBench } from '../page/bench-context.ts';
import { StateNote } from '../page/StateNote.tsx';
import type { Json } from '../plan/plan-file.ts';
import { stationFields } from '../plan/station-fields.ts';
import { FieldOf } from '../stations/FieldOf.tsx';
import { factsOf } from '../stations/facts.ts';
import { LawsOf } from '../stations/LawsOf.tsx';
import { tableOf } from '../stations/tables.ts';
import { Downstream } from './Downstream.tsx';
import { FindingsList } from './FindingsList.tsx';
import { Measures } from './Measures.tsx';
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
  const plan = useBench(({ history }) => history.plan);
  const done = useBench(({ history }) => history.done);
  const { stations } = useBench(({ progress }) => progress);
  const index = stations.findIndex((station) => station.code === code);
  if (index < 0) return <NoSuchStation code={code} />;
  const station = stations[index];
  const fields = stationFields(plan, station.path);
  const was = movedValues(done.slice(-8));
  const { visit } = station;
  return (
    <main id="content" className="sheet">
      <Strip stops={stops} here={code} />
      <div className="title">
        <h1>
          {code}, {station.title.charAt(0).toLowerCase() + station.title.slice(1)}
        </h1>
        <span className="quiet">{visit ? factsOf(visit.record) : 'not computed yet'}</span>
        <div className="views">
          <button type="button" aria-pressed={table} onClick={onTable}>
            Table
          </button>
        </div>
      </div>
      <StateNote />
      <div className="body">
        <div style={{ opacity: station.state === 'old' ? 0.55 : 1 }}>
          {visit ? (
            <FieldOf record={visit.record} fields={fields} />
          ) : (
            <p className="quiet">The bar has not come here yet.</p>
          )}
          {visit && <LawsOf record={visit.record} />}
          {visit && <Table model={tableOf(visit.record)} shown={table} />}
        </div>
        <div className="margin">
          <SettingsTable fields={fields} was={was} />
          {visit && <Measures measures={visit.record.measures} before={station.was?.record.measures} />}
          {visit && (
            <FindingsList findings={visit.record.findings} paths={new Set(fields.map(({ path }) => path))} />
          )}
        </div>
      </div>
      <Downstream stations={stations} index={index} />
    </main>
  );
}

/** Where each recently moved value came from: the first of the moves on the same path. */
function movedValues(moves: readonly { path: string; from: Json; to: Json }[]): Map<string, Json> {
  const from = new Map<string, Json>();
  for (const move of moves) if (!from.has(move.path)) from.set(move.path, move.from);
  return from;
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
