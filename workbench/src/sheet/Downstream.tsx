import { memo } from 'react';
import type { Station } from '../compute/progress.ts';
import { useBench } from '../page/bench-context.ts';
import { movedFrom, type Outcome, outcomesAfter } from './downstream-model.ts';

const width = 116;

/** Across the full width, only after a move: what the move did to the stations after this one. */
export const Downstream = memo(function Downstream({
  stations,
  index,
}: {
  stations: readonly Station[];
  index: number;
}) {
  const status = useBench(({ progress }) => progress.status);
  const undo = useBench((bench) => bench.undo);
  const stop = useBench((bench) => bench.stop);
  const canUndo = useBench(({ history }) => history.done.length > 0);
  const outcomes = outcomesAfter(stations, index);
  if (!movedFrom(stations, index) || outcomes.length === 0) return null;
  return (
    <section
      className="downstream"
      aria-keyshortcuts="d"
      tabIndex={-1}
      aria-live="polite"
      aria-label="Downstream of the move"
    >
      <div className="top">
        <h2>
          Downstream of the move <small>ring: before; dot: now; tick: limit</small>
        </h2>
        <span className="acts">
          {status === 'computing' && (
            <button type="button" className="act" onClick={stop}>
              Stop, keep what is finished
            </button>
          )}
          <button type="button" className="act" disabled={!canUndo} onClick={undo}>
            Take back the move
          </button>
        </span>
      </div>
      <div className="row">
        {outcomes.map((outcome) => (
          <OutcomeCell key={outcome.code} outcome={outcome} />
        ))}
      </div>
    </section>
  );
});

function OutcomeCell({ outcome }: { outcome: Outcome }) {
  const { code, name, waiting, before, now, changed, limit } = outcome;
  return (
    <div style={{ opacity: waiting ? 0.5 : 1 }}>
      <div>
        <b>{code}</b> <span className="quiet">{name}</span>
      </div>
      <Range outcome={outcome} />
      {changed ? (
        <div>
          {before} <span className="quiet">to</span> <span className="changed">{now}</span>
        </div>
      ) : (
        <div>
          {now} <span className="quiet">{waiting ? 'old, waiting' : 'unchanged'}</span>
        </div>
      )}
      <div className="quiet">{limit}</div>
    </div>
  );
}

function Range({ outcome: { ring, dot, mark, changed } }: { outcome: Outcome }) {
  return (
    <svg width={width} height={16} aria-hidden="true">
      <path d={`M0 8H${width}`} stroke="var(--rule)" strokeWidth={2} />
      <path className="limit" d={`M${mark * width} 2V14`} />
      {changed && <circle cx={dot * width} cy={8} r={4} fill="var(--set)" />}
      <circle
        cx={ring * width}
        cy={8}
        r={4}
        fill={changed ? 'none' : 'var(--field)'}
        stroke="var(--ink)"
        strokeWidth={1.2}
      />
    </svg>
  );
}
