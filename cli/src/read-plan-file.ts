import type { Plan } from '@bloomrail/engine/line/plan';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { type Reading, readJson } from './read-json.ts';

/** A plan from its file, or everything that is wrong with it. */
export function readPlanFile(file: string): Reading<Plan> {
  const content = readJson(file);
  if (!content.ok) return content;
  const reading = readPlan(content.value);
  return reading.ok ? { ok: true, value: reading.plan } : reading;
}
