import { DiamondInText } from '../ink/Diamond.tsx';
import { HeatLegend } from '../ink/HeatLegend.tsx';
import { figure } from '../ink/numbers.ts';
import { Table } from '../ink/Table.tsx';
import { useBench } from '../page/bench-context.ts';
import { Guard } from '../page/Guard.tsx';
import { StateNote } from '../page/StateNote.tsx';
import { useWide } from '../page/use-wide.ts';
import { LineAcross } from './LineAcross.tsx';
import { LineDown } from './LineDown.tsx';
import type { Stop } from './line-model.ts';
import { lineTable } from './line-table.ts';
import { lineInWords } from './line-words.ts';

/** The bar's journey: the overview, the navigation and the progress of the computation in one picture. */
export function LinePage({
  stops,
  from,
  table,
  onTable,
}: {
  stops: readonly Stop[];
  from: string | undefined;
  table: boolean;
  onTable: () => void;
}) {
  const Picture = useWide() ? LineAcross : LineDown;
  const sentence = lineInWords(stops);
  return (
    <main id="content">
      <div className="title">
        <h1>The line</h1>
        <SummaryFacts />
        <div className="views">
          <button type="button" aria-pressed={table} aria-keyshortcuts="t" onClick={onTable}>
            Table
          </button>
        </div>
      </div>
      <StateNote />
      <Table model={lineTable(stops)} shown={table} />
      {stops.length > 0 && (
        <Guard>
          <Picture stops={stops} sentence={sentence} from={from} />
        </Guard>
      )}
      <div className="foot">
        <HeatLegend />
        <LoadKey />
        <FindingKey />
        <span className="quiet keys-word">
          Open a station: click, or <kbd>←</kbd> <kbd>→</kbd> then <kbd>Enter</kbd>
        </span>
      </div>
    </main>
  );
}

function SummaryFacts() {
  const { summary, status } = useBench(({ progress }) => progress);
  if (!summary || status === 'failed' || status === 'invalid') return null;
  const facts = [
    ['Yield', `${figure(summary.yield, 'percent', 1)} %`],
    ['Rhythm', `${figure(summary.rhythm, 's', 0)} s`],
    ['Stands allow', `${figure(summary.pace, 's', 0)} s`],
    ['Fuel', `${figure(summary.fuel, 'GJPerT', 2)} GJ/t`],
    ['Elongation', figure(summary.elongation, 'one', 2)],
    ['Bars for the order', figure(summary.bars, 'one', 0)],
  ];
  return facts.map(([name, value]) => (
    <span key={name}>
      {name} <b>{value}</b>
    </span>
  ));
}

function LoadKey() {
  return (
    <svg
      width={236}
      height={16}
      role="img"
      aria-label="Key of the load bars: force full, torque grey, power open"
    >
      {(['solid', 'half', 'open'] as const).map((look, i) => (
        <g key={look}>
          <rect className={look} x={72 * i} y={3} width={6} height={10} />
          <text x={72 * i + 12} y={12}>
            {['force', 'torque', 'power'][i]}
          </text>
        </g>
      ))}
    </svg>
  );
}

function FindingKey() {
  return (
    <span className="quiet" style={{ display: 'flex', gap: 16, alignItems: 'center' }}>
      {(
        [
          ['outside', 'outside a limit'],
          ['near', 'near a limit, or range reaches it'],
          ['note', 'note'],
        ] as const
      ).map(([level, words]) => (
        <span key={level} style={{ display: 'flex', gap: 6, alignItems: 'center' }}>
          <DiamondInText level={level} />
          {words}
        </span>
      ))}
    </span>
  );
}
