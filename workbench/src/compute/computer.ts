import { readPlan } from '@bloomrail/engine/line/read-plan';
import type { LineFailure, LineRun, Memory, runLine } from '@bloomrail/engine/line/run-line';
import { stopsOf } from '@bloomrail/engine/line/stops';
import type { Visit } from '@bloomrail/engine/line/visit';
import type { Result } from '@bloomrail/engine/outcome/result';
import type { Json } from '../plan/plan-file.ts';
import type { Answer, Content, Legacy, Order } from './messages.ts';

export interface Means {
  readonly runLine: typeof runLine;
  /** Starts every stamp of this computer, so that two never give the same. */
  readonly name: string;
  readonly answer: (answer: Answer) => void;
  /** Lets waiting messages in between two stations, so that a newer order overtakes an older one. */
  readonly breathe: () => Promise<void>;
  /** Hands what a finished run leaves to the other computer. */
  readonly bequeath: (legacy: Legacy) => void;
}

export interface LineComputer {
  readonly take: (order: Order) => Promise<void>;
  readonly inherit: (legacy: Legacy) => void;
}

/** Computes lines to order, one at a time: a newer order ends an older one at the next station. */
export function lineComputer({ runLine, name, answer, breathe, bequeath }: Means): LineComputer {
  const stampOf = new WeakMap<Visit, string>();
  let latest = 0;
  let stamps = 0;
  let memory: Memory | undefined;

  async function compute(run: number, plan: Json, ticket: number): Promise<void> {
    const reading = readPlan(plan);
    if (!reading.ok) return answer({ run, contents: [{ kind: 'issues', issues: reading.issues }] });
    const stops = stopsOf(reading.plan).map(({ code, title, group, path }) => ({ code, title, group, path }));
    let held: Content[] = [{ kind: 'stops', stops }];
    const send = (content: Content) => {
      answer({ run, contents: [...held, content] });
      held = [];
    };
    const line = runLine(reading.plan, memory);
    for (let index = 0; ; index++) {
      const step = line.next();
      if (step.done) return send(ending(step.value));
      const content = contentOf(index, step.value);
      if (content.kind === 'kept') held.push(content);
      else {
        send(content);
        await breathe();
        if (latest !== ticket) return send({ kind: 'stopped' });
      }
    }
  }

  function contentOf(index: number, visit: Visit): Content {
    const known = stampOf.get(visit);
    if (known) return { kind: 'kept', index, stamp: known };
    const stamp = `${name}${++stamps}`;
    stampOf.set(visit, stamp);
    return { kind: 'visit', index, stamp, visit };
  }

  function ending(result: Result<LineRun, LineFailure>): Content {
    if (result.ok) {
      keep(result.value.memory);
      return { kind: 'done', summary: result.value.summary };
    }
    const { code, visits: _, memory: kept, ...failure } = result.failure;
    keep(kept);
    return { kind: 'failed', code, failure };
  }

  function keep(left: Memory): void {
    memory = left;
    bequeath({ memory, stamps: left.stages.map(({ visit }) => stampOf.get(visit) ?? '') });
  }

  return {
    take: async (order) => {
      latest++;
      if (order.kind === 'compute') await compute(order.run, order.plan, latest);
    },
    inherit: (legacy) => {
      memory = legacy.memory;
      for (const [i, { visit }] of memory.stages.entries()) stampOf.set(visit, legacy.stamps[i]);
    },
  };
}
