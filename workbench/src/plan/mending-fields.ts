import { Plan } from '@bloomrail/engine/line/plan';
import type { Issue } from '@bloomrail/engine/units/issue';
import { type Field, fieldsOf, type Schema } from './fields.ts';
import type { Json } from './plan-file.ts';

/** A field for each value of the plan that an issue names, so that it can be mended where it is explained. */
export function mendingFields(plan: Json, issues: readonly Issue[]): Field[] {
  const wrong = new Set(issues.map(({ path }) => path));
  return fieldsOf(Plan as Schema, plan, 'plan')
    .map((field) => ({ ...field, path: field.path.slice('plan.'.length) }))
    .filter(({ path }) => wrong.has(path))
    .map((field) => ({ ...field, title: `${field.title} (${field.path})` }));
}
