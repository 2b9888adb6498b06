import { readPlan } from '@bloomrail/engine/line/plan';
import type { LineFailure, LineRun, Memory, runLine, Visit } from '@bloomrail/engine/line/run-line';
import { stopsOf } from '@bloomrail/engine/line/stops';
import type { Result } from '@bloomrail/engine/outcome/result';
import type { Json } from '../plan/plan-file.ts';
import type { Content, Order } from './messages.ts';

export interface Means {
  readonly runLine: typeof runLine;
  /** Sends one answer to the page. */
  readonly answer: (run: number, content: Content) => void;
  /** Lets waiting messages in between two stations, so that a newer order overtakes an older one. */
  readonly breathe: () => Promise<void>;
}

/** Computes lines to order, one at a time: a newer order ends an older one at the next station. */
export function lineComputer({ runLine, answer, breathe }: Means): (order: Order) => Promise<void> {
  let latest = 0;
  let memory: Memory | undefined;
  let sent: readonly Visit[] = [];

  return async (order) => {
    latest++;
    if (order.kind === 'compute') await compute(order.run, order.plan, latest);
  };

  async function compute(run: number, content: Json, ticket: number): Promise<void> {
    const reading = readPlan(content);
    if (!reading.ok) {
      answer(run, { kind: 'issues', issues: reading.issues });
      return;
    }
    const stops = stopsOf(reading.plan).map(({ code, title, group, path }) => ({ code, title, group, path }));
    answer(run, { kind: 'stops', stops });
    const line = runLine(reading.plan, memory);
    for (let index = 0; ; index++) {
      const step = line.next();
      if (step.done) {
        finish(run, step.value);
        return;
      }
      report(run, index, step.value);
      await breathe();
      if (latest !== ticket) {
        answer(run, { kind: 'stopped' });
        return;
      }
    }
  }

  function report(run: number, index: number, visit: Visit): void {
    answer(run, sent[index] === visit ? { kind: 'kept', index } : { kind: 'visit', index, visit });
    sent = [...sent.slice(0, index), visit, ...sent.slice(index + 1)];
  }

  function finish(run: number, result: Result<LineRun, LineFailure>): void {
    if (result.ok) {
      memory = result.value.memory;
      answer(run, { kind: 'done', summary: result.value.summary });
    } else {
      const { code, visits: _, memory: kept, ...failure } = result.failure;
      memory = kept;
      answer(run, { kind: 'failed', code, failure });
    }
  }
}
