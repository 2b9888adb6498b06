import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { FlowCase } from '@bloomrail/engine/line/flow-case/flow-case';
import { solveFlowCase } from '@bloomrail/engine/line/flow-case/run-flow-case';
import { must } from '@bloomrail/engine/outcome/result';
import { outlineOf } from '@bloomrail/engine/phenomena/metal-flow/meshing/whole';
import type { FlowSolution } from '@bloomrail/engine/phenomena/metal-flow/solution';
import type { Outline } from '@bloomrail/engine/section/outline';

const root = fileURLToPath(new URL('../../../', import.meta.url));
export const json = (file: string) => JSON.parse(readFileSync(root + file, 'utf8'));

export const caseNamed = (name: string): FlowCase => FlowCase.parse(json(`examples/one-pass/${name}.json`));

/** An example pass, with other nodes or slices where they are given. */
export const rolled = (name: string, other: { nodes?: number; slices?: number } = {}): FlowSolution =>
  must(solveFlowCase({ ...caseNamed(name), ...other })).solution;

/** The whole section as it leaves. */
export function exitOutline({ mesh, sections }: FlowSolution): Outline {
  return outlineOf(mesh, sections[sections.length - 1].xy);
}

/** Widest across x, m. */
export function widest(solution: FlowSolution): number {
  const xs = exitOutline(solution).vertices.map(({ x }) => x);
  return Math.max(...xs) - Math.min(...xs);
}
