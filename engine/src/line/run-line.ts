import type { Bar } from '../bar/bar.ts';
import { charge } from '../bar/charge.ts';
import type { Failure, Result } from '../outcome/result.ts';
import { ok } from '../outcome/result.ts';
import { type LineBalance, lineBalance } from './balance.ts';
import { campaignOf } from './campaign.ts';
import { gradeOf } from './grade-of.ts';
import type { Plan } from './plan.ts';
import { inPlan, type Stop, stopsOf } from './stops.ts';
import { type Summary, summarise } from './summary.ts';
import type { Visit } from './visit.ts';

/** A finished run: what every stop wrote down, and what the next run may take over. */
export interface LineRun {
  readonly visits: readonly Visit[];
  readonly balance: LineBalance;
  readonly summary: Summary;
  /** How many leading stops were taken over from the run before, unchanged. */
  readonly reused: number;
  readonly memory: Memory;
}

/** Where the line stopped, and everything that was computed before. */
export interface LineFailure extends Failure {
  readonly code: string;
  readonly visits: readonly Visit[];
  readonly memory: Memory;
}

/** What a run leaves to the next one: the stages of the last few runs, latest first. Opaque to most callers. */
export interface Memory {
  readonly charged: { readonly key: string; readonly bar: Bar } | undefined;
  readonly stages: readonly Stage[];
}

/** One stop as it was made: a bar that enters as the very same object, with the same key, leaves as it left. */
export interface Stage {
  readonly key: string;
  readonly entering: Bar;
  readonly leaving: Bar;
  readonly visit: Visit;
}

/**
 * Runs a plan from the furnace to the wagon. Yields each visit as soon as it is made, so that a caller can show it,
 * report progress, or stop asking; ends with the finished run or with the stop at which a model had no answer.
 * Stops whose bar and inputs are the same as once in `before` are not computed again. After each stop `remember` is
 * told the memory so far, so that a run which is broken off loses nothing.
 *
 *     const line = runLine(plan);
 *     for (let step = line.next(); !step.done; step = line.next()) show(step.value);
 */
export function* runLine(
  plan: Plan,
  before?: Memory,
  remember: (memory: Memory) => void = () => {},
): Generator<Visit, Result<LineRun, LineFailure>, void> {
  const charged = chargedBar(plan, before);
  if (!charged.ok) return failed('RF', charged.failure, [], { charged: undefined, stages: [] });
  let memory: Memory = { charged: charged.value, stages: before?.stages ?? [] };
  const visits: Visit[] = [];
  let bar = charged.value.bar;
  let reused = 0;
  for (const stop of stopsOf(plan)) {
    const key = keyOf(stop);
    const old = memory.stages.find((stage) => stage.entering === bar && stage.key === key);
    const stage = old ? ok(old) : make(plan, visits, stop, key, bar);
    if (!stage.ok) return failed(stop.code, stage.failure, visits, memory);
    if (old) reused++;
    memory = withLatest(memory, stage.value);
    visits.push(stage.value.visit);
    bar = stage.value.leaving;
    remember(memory);
    yield stage.value.visit;
  }
  return ok({ visits, balance: lineBalance(visits), summary: summarise(plan, visits), reused, memory });
}

/** Runs a plan to its end in one go. */
export function runWholeLine(plan: Plan, before?: Memory): Result<LineRun, LineFailure> {
  const line = runLine(plan, before);
  for (;;) {
    const step = line.next();
    if (step.done) return step.value;
  }
}

/** As many stages as four lines have: a move taken back, or made again, is answered at once. */
const kept = 100;

export const withLatest = ({ charged, stages }: Memory, latest: Stage): Memory => ({
  charged,
  stages: [latest, ...stages.filter((stage) => stage !== latest)].slice(0, kept),
});

function make(plan: Plan, earlier: readonly Visit[], stop: Stop, key: string, entering: Bar): Result<Stage> {
  const done = stop.work(entering);
  if (!done.ok) return done;
  const { bar: leaving, record: made } = done.value;
  const { code, title, group } = stop;
  const visit = { code, title, group, record: { ...made, findings: inPlan(made.findings, stop.path) } };
  const campaign = campaignOf(plan, earlier, visit);
  const measures = [...visit.record.measures, ...campaign.measures];
  const findings = [...visit.record.findings, ...campaign.findings];
  return ok({ key, entering, leaving, visit: { ...visit, record: { ...visit.record, measures, findings } } });
}

const keyOf = ({ code, path, inputs }: Stop): string => JSON.stringify([code, path, inputs]);

function chargedBar(plan: Plan, before?: Memory): Result<{ key: string; bar: Bar }> {
  const grade = gradeOf(plan);
  const key = JSON.stringify([plan.bloom, grade.name]);
  if (before?.charged?.key === key) return ok(before.charged);
  const charged = charge(plan.bloom, grade);
  return charged.ok ? ok({ key, bar: charged.value }) : charged;
}

function failed(
  code: string,
  failure: Failure,
  visits: readonly Visit[],
  memory: Memory,
): Result<never, LineFailure> {
  return { ok: false, failure: { ...failure, code, visits, memory } };
}
