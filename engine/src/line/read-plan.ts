import { type Issue, issuesOf } from '../units/issue.ts';
import { Plan } from './plan.ts';
import { senseOf } from './plan-sense.ts';

export type PlanReading =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads a plan file's content: the plan in SI, or every issue at once. Nothing is thrown, nothing is mended in silence. */
export function readPlan(content: unknown): PlanReading {
  const parsed = Plan.safeParse(content);
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, content) };
  const issues = senseOf(parsed.data);
  return issues.length > 0 ? { ok: false, issues } : { ok: true, plan: parsed.data };
}
