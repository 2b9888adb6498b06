import { Link } from 'wouter';
import { DiamondInText } from '../ink/Diamond.tsx';
import { inPrint } from '../ink/numbers.ts';
import { counted } from '../ink/words.ts';
import { countsOf, type Stop } from '../line/line-model.ts';
import { valueAt } from '../plan/plan-file.ts';
import { lineAddress } from './address.ts';
import { useBench } from './bench-context.ts';
import { stateInWords } from './state-words.ts';

/** Head row: the plan, how far its result stands, its findings, the moves. */
export function Head({ stops, onKeys }: { stops: readonly Stop[]; onKeys: () => void }) {
  const plan = useBench(({ history }) => history.plan);
  const progress = useBench((bench) => bench.progress);
  const before = useBench((bench) => bench.before);
  const quick = useBench((bench) => bench.quick);
  const text = (path: string) => String(valueAt(plan, path) ?? '');
  return (
    <header className="head">
      <Link className="mark" href={lineAddress} aria-label="bloomrail, to the line">
        <Mark />
        bloomrail
      </Link>
      <span>
        {text('name')} <span className="quiet">{orderInWords(text)}</span>
      </span>
      <span className="state quiet" role="status">
        {before ? 'Before the move, while b is held' : stateInWords(progress)}
        {quick && !before && progress.status === 'done'
          ? `; ${quick.code} answered in ${inPrint(quick.ms)} ms`
          : ''}
      </span>
      <Counts stops={stops} />
      <Moves />
      <button type="button" className="keys-word" aria-keyshortcuts="?" onClick={onKeys}>
        <kbd>?</kbd> keys
      </button>
    </header>
  );
}

/** What was ordered, as far as the plan's own name does not say it. */
function orderInWords(text: (path: string) => string): string {
  const [name, profile, grade, number] = ['name', 'order.profile', 'order.grade', 'order.number'].map(text);
  const steel = profile && !name.includes(profile) ? `${profile} in ${grade}` : '';
  return [steel, number && `order ${number}`].filter(Boolean).join(', ');
}

function Counts({ stops }: { stops: readonly Stop[] }) {
  const counts = countsOf(stops);
  const words = { outside: 'outside a limit', near: 'near a limit', note: 'notes' } as const;
  return (
    <span className="counts">
      {(['outside', 'near', 'note'] as const).map((level) => (
        <span key={level} title={words[level]}>
          <DiamondInText level={level} />
          {counts[level]}
          <span className="hidden"> {words[level]}</span>
        </span>
      ))}
    </span>
  );
}

function Moves() {
  const { done, undone } = useBench(({ history }) => history);
  const undo = useBench((bench) => bench.undo);
  const redo = useBench((bench) => bench.redo);
  const undoAll = useBench((bench) => bench.undoAll);
  const last = done[done.length - 1];
  const next = undone[undone.length - 1];
  return (
    <span className="moves">
      <button
        type="button"
        className="act"
        disabled={!last}
        onClick={undo}
        title={last && `${last.title} back to ${last.from}`}
      >
        Undo
      </button>
      <button
        type="button"
        className="act"
        disabled={!next}
        onClick={redo}
        title={next && `${next.title} to ${next.to} again`}
      >
        Redo
      </button>
      {last && (
        <button type="button" className="act" onClick={undoAll}>
          Back to the plan as served, {counted(done.length, 'move')}
        </button>
      )}
    </span>
  );
}

function Mark() {
  return (
    <svg width={20} height={20} viewBox="0 0 20 20" aria-hidden="true">
      <path d="M1 1H19V19H1Z" fill="none" strokeWidth={1.4} />
      <path
        d="M6 4h8q1 0 1 1.5q0 2 -2.2 2.3q-1.6 .4 -1.6 1.6v4q0 1 1.6 1.4l3.2 .8v1.4h-12v-1.4l3.2 -.8q1.6 -.4 1.6 -1.4v-4q0 -1.2 -1.6 -1.6q-2.2 -.3 -2.2 -2.3q0 -1.5 1 -1.5z"
        fill="var(--ink)"
        stroke="none"
      />
    </svg>
  );
}
