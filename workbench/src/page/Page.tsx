import { useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { LinePage } from '../line/LinePage.tsx';
import { stopsOfLine } from '../line/line-model.ts';
import { StationPage } from '../sheet/StationPage.tsx';
import { stationIn } from './address.ts';
import { useBench } from './bench-context.ts';
import { Cautions } from './Cautions.tsx';
import { Head } from './Head.tsx';
import { KeysList } from './KeysList.tsx';
import { useStations } from './shown.ts';
import { useKeys } from './use-keys.ts';
import { useTop } from './use-top.ts';

/** The page: head row, then the line or one station of it. */
export function Page() {
  const [address] = useLocation();
  const here = stationIn(address);
  const stations = useStations();
  const status = useBench(({ progress }) => progress.status);
  const failure = useBench(({ progress }) => progress.failure);
  const undo = useBench((bench) => bench.undo);
  const redo = useBench((bench) => bench.redo);
  const stop = useBench((bench) => bench.stop);
  const computeNow = useBench((bench) => bench.computeNow);
  const showBefore = useBench((bench) => bench.showBefore);
  const last = useRef<string>(undefined);
  if (here !== undefined) last.current = here;
  const [table, setTable] = useState(false);
  const [keys, setKeys] = useState(false);
  const stops = useMemo(() => stopsOfLine(stations, failure?.code), [stations, failure]);
  useTop(address);
  const onTable = () => setTable(!table);
  const compute = status === 'computing' ? stop : computeNow;
  useKeys({ stops, here, undo, redo, compute, showBefore });
  return (
    <div className="page">
      <a className="skip" href="#content">
        To the content
      </a>
      <Head stops={stops} onKeys={() => setKeys(true)} />
      {here === undefined ? (
        <LinePage stops={stops} from={last.current} table={table} onTable={onTable} />
      ) : (
        <StationPage key={here} stops={stops} code={here} table={table} onTable={onTable} />
      )}
      <Cautions />
      <KeysList open={keys} onClose={() => setKeys(false)} />
    </div>
  );
}
