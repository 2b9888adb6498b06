import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plan } from '@bloomrail/engine/line/plan';
import { readPlan } from '@bloomrail/engine/line/read-plan';

const folder = fileURLToPath(new URL('../../examples/', import.meta.url));

/** Names of the example folders that hold a plan. */
export const exampleNames = (): string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && readdirSync(folder + entry.name).includes('plan.json'))
    .map(({ name }) => name);

export const exampleFile = (name: string): string => `${folder}${name}/plan.json`;

export const exampleContent = (name: string): unknown => JSON.parse(readFileSync(exampleFile(name), 'utf8'));

/** An example as a plan; throws with every issue when it is not one. */
export function examplePlan(name: string): Plan {
  const reading = readPlan(exampleContent(name));
  if (reading.ok) return reading.plan;
  throw new Error(`${name}: ${reading.issues.map(({ message }) => message).join('; ')}`);
}
