import type { Issue } from '@bloomrail/engine/units/issue';
import { measured } from '../ink/numbers.ts';
import { mendingFields } from '../plan/mending-fields.ts';
import { SettingsTable } from '../sheet/SettingsTable.tsx';
import { useBench } from './bench-context.ts';

/** What keeps the line from being computed, in place and in full: values that do not fit, or a model without answer. */
export function StateNote() {
  const { status, issues, failure, stations } = useBench(({ progress }) => progress);
  const known = stations.some(({ visit }) => visit);
  const undo = useBench((bench) => bench.undo);
  const canUndo = useBench(({ history }) => history.done.length > 0);
  if (status === 'stopped') return <Stopped />;
  if (status !== 'invalid' && status !== 'failed') return null;
  return (
    <section className="state-note" aria-live="polite">
      {status === 'failed' && failure && (
        <>
          <h2 className="finding">
            {failure.code}: {failure.failure.reason}
          </h2>
          <p>
            The {failure.failure.model} model has no answer here{residualInWords(failure.failure)}. Stations
            before it stand; those after it are not computed.
          </p>
        </>
      )}
      {status === 'invalid' && (
        <>
          <h2 className="finding">
            The plan cannot be computed as it stands. {known ? 'The last result is kept for reading.' : ''}
          </h2>
          <ul>
            {issues.map(({ path, message }) => (
              <li key={path + message}>{message}</li>
            ))}
          </ul>
          <Mending issues={issues} />
        </>
      )}
      {canUndo && (
        <button type="button" className="act" onClick={undo}>
          Take back the move
        </button>
      )}
    </section>
  );
}

function Mending({ issues }: { issues: readonly Issue[] }) {
  const plan = useBench(({ history }) => history.plan);
  return <SettingsTable fields={mendingFields(plan, issues)} was={new Map()} />;
}

function residualInWords({ residual, iterations }: { residual?: number; iterations?: number }): string {
  if (residual === undefined) return '';
  const after = iterations === undefined ? '' : ` after ${iterations} steps`;
  return `: ${measured(residual, 'one')} is left unbalanced${after}`;
}

function Stopped() {
  const compute = useBench((bench) => bench.computeNow);
  return (
    <section className="state-note">
      Stopped; every finished station is kept.{' '}
      <button type="button" className="act" onClick={compute}>
        Compute now
      </button>
    </section>
  );
}
