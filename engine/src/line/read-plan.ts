import { type Issue, issuesOf } from '../units/issue.ts';
import { Plan } from './plan.ts';
import { senseOf } from './plan-sense.ts';

export type PlanReading =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads a plan file's content: the plan in SI, or every issue at once. Nothing is thrown, nothing is mended in silence. */
export function readPlan(content: unknown): PlanReading {
  const parsed = Plan.safeParse(content);
  const issues = [...(parsed.error ? issuesOf(parsed.error, content) : []), ...senseOf(content)];
  return parsed.success && issues.length === 0 ? { ok: true, plan: parsed.data } : { ok: false, issues };
}
