import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plan } from '@bloomrail/engine/line/plan';
import { readPlan } from '@bloomrail/engine/line/read-plan';

const folder = fileURLToPath(new URL('../../examples/', import.meta.url));

export const exampleContent = (name: string): unknown =>
  JSON.parse(readFileSync(`${folder}${name}/plan.json`, 'utf8'));

/** An example as a plan; throws with every issue when it is not one. */
export function examplePlan(name: string): Plan {
  const reading = readPlan(exampleContent(name));
  if (reading.ok) return reading.plan;
  throw new Error(`${name}: ${reading.issues.map(({ message }) => message).join('; ')}`);
}
