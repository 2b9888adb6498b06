import { readPlan } from '@bloomrail/engine/line/read-plan';
import {
  type LineFailure,
  type LineRun,
  type Memory,
  type runLine,
  type Stage,
  withLatest,
} from '@bloomrail/engine/line/run-line';
import { stopsOf } from '@bloomrail/engine/line/stops';
import type { Visit } from '@bloomrail/engine/line/visit';
import type { Result } from '@bloomrail/engine/outcome/result';
import type { Json } from '../plan/plan-file.ts';
import type { Answer, Content, Legacy, Order, Visited } from './messages.ts';

export interface Means {
  readonly runLine: typeof runLine;
  /** Starts every stamp of this computer, so that two never give the same. */
  readonly name: string;
  readonly answer: (answer: Answer) => void;
  /** Lets waiting messages in between two stations, so that a newer order overtakes an older one. */
  readonly breathe: () => Promise<void>;
  /** Hands a finished station to the other computer. */
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
    const line = runLine(reading.plan, memory, keep);
    let before: string | undefined;
    for (let index = 0; ; index++) {
      const step = next(line, stops[index]?.code);
      if (step.done) return send(ending(step.value));
      const content = contentOf(index, step.value);
      if (content.kind === 'kept') held.push(content);
      else {
        send(content);
        share(step.value, content.stamp, before);
        await breathe();
        if (latest !== ticket) return send({ kind: 'stopped' });
      }
      before = content.stamp;
    }
  }

  function contentOf(index: number, visit: Visit): Visited {
    const known = stampOf.get(visit);
    if (known) return { kind: 'kept', index, stamp: known };
    const stamp = `${name}${++stamps}`;
    stampOf.set(visit, stamp);
    return { kind: 'visit', index, stamp, visit };
  }

  /** What the other computer left meanwhile stays; the run adds its latest stage to it. */
  function keep({ charged, stages: [latest] }: Memory): void {
    memory = withLatest({ charged, stages: memory?.stages ?? [] }, latest);
  }

  const stageOf = (stamp: string): Stage | undefined =>
    memory?.stages.find(({ visit }) => stampOf.get(visit) === stamp);

  function share(visit: Visit, stamp: string, after: string | undefined): void {
    const stage = memory?.stages.find((each) => each.visit === visit);
    if (memory && stage) bequeath({ charged: memory.charged, stage, stamp, ...(after ? { after } : {}) });
  }

  /** The stage of the other computer is a copy: here it must begin with this computer's own bar. */
  function inherit({ charged: theirs, stage, stamp, after }: Legacy): void {
    const charged = memory?.charged?.key === theirs?.key ? memory?.charged : theirs;
    const entering = after === undefined ? charged?.bar : stageOf(after)?.leaving;
    if (!entering || stageOf(stamp)) return;
    stampOf.set(stage.visit, stamp);
    memory = withLatest({ charged, stages: memory?.stages ?? [] }, { ...stage, entering });
  }

  return {
    take: async (order) => {
      latest++;
      if (order.kind === 'compute') await compute(order.run, order.plan, latest);
    },
    inherit,
  };
}

type Step = ReturnType<ReturnType<typeof runLine>['next']>;

/** The next station; a model that breaks down is told like one without an answer, never left as silence. */
function next(line: ReturnType<typeof runLine>, code: string | undefined): Step {
  try {
    return line.next();
  } catch (broken) {
    const reason = `The program itself broke down (${String(broken)}); the plan need not be at fault.`;
    const failure = { model: 'line', reason, code: code ?? '', visits: [], memory: nothing };
    return { done: true, value: { ok: false, failure } };
  }
}

const nothing: Memory = { charged: undefined, stages: [] };

function ending(result: Result<LineRun, LineFailure>): Content {
  if (result.ok) return { kind: 'done', summary: result.value.summary };
  const { code, visits: _, memory: __, ...failure } = result.failure;
  return { kind: 'failed', code, failure };
}
