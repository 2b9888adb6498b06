import type { Field } from '../../outcome/field.ts';
import type { FlowRoll } from '../../phenomena/metal-flow/problem.ts';
import type { Symmetry } from '../../phenomena/metal-flow/quad-mesh.ts';
import { heightAt } from '../../section/crossings.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { depthBehind, imageOf, type RollEdge } from './roll-geometry.ts';

export interface GrooveFill {
  /** m, from collar to collar. */
  readonly mouth: number;
  /** Share of the opening between the collars that is steel. */
  readonly fill: number;
  /** m², beyond the mouth. */
  readonly fin: number;
}

/** Closer to the collars than this counts as collar; a groove is deeper than ten times as much, m. */
const collarDepth = 1e-4;
const strips = 200;

/**
 * How full the groove of the top and bottom rolls is. Nothing for flat rolls, and for rolls whose edges do not end in
 * collars, as in a universal pass. Opening and fin by the midpoint rule in 200 strips.
 */
export function grooveFill(
  rolls: readonly FlowRoll[],
  symmetry: Symmetry,
  exit: Outline,
): GrooveFill | undefined {
  const top = rolls.find(({ side }) => side === 'top');
  if (!top) return undefined;
  const upper: RollEdge = { side: 'top', points: top.profile };
  const given = rolls.find(({ side }) => side === 'bottom');
  const lower: RollEdge = given ? { side: 'bottom', points: given.profile } : imageOf(upper, 'y');
  const mouth = mouthOf(top.profile, symmetry);
  return mouth ? filled(upper, lower, mouth, exit) : undefined;
}

function filled(upper: RollEdge, lower: RollEdge, [left, right]: Span, exit: Outline): GrooveFill {
  const step = (right - left) / strips;
  let opening = 0;
  for (let i = 0; i < strips; i++) opening += step * clearAt(upper, lower, left + (i + 0.5) * step);
  const fin = finBeyond(exit, left, right);
  return { mouth: right - left, fill: (sectionProperties(exit).area - fin) / opening, fin };
}

/** Height between two edges, m; with symmetry an edge may be given on one side only, and its image is as far away. */
function clearAt(upper: RollEdge, lower: RollEdge, x: number): number {
  const at = (from: number) => -depthBehind(upper, from, 0) - depthBehind(lower, from, 0);
  return Number.isFinite(at(x)) ? at(x) : at(-x);
}

type Span = readonly [left: number, right: number];

/** Where a roll's edge leaves its collars; with symmetry in x = 0 the right side tells both. */
function mouthOf(profile: Field, { x: line }: Symmetry): Span | undefined {
  const xs = Array.from({ length: profile.length / 2 }, (_, i) => profile[2 * i]);
  const ys = xs.map((_, i) => profile[2 * i + 1]);
  const collar = Math.min(...ys);
  if (Math.max(...ys) - collar < 10 * collarDepth) return undefined;
  const deep = xs.filter((_, i) => ys[i] - collar > collarDepth);
  const right = Math.min(...xs.filter((x, i) => ys[i] - collar <= collarDepth && x > Math.max(...deep)));
  const left = Math.max(...xs.filter((x, i) => ys[i] - collar <= collarDepth && x < Math.min(...deep)));
  const span: Span = line === undefined ? [left, right] : [2 * line - right, right];
  return span.every(Number.isFinite) ? span : undefined;
}

function finBeyond(exit: Outline, left: number, right: number): number {
  const xs = exit.vertices.map(({ x }) => x);
  return beyondWall(exit, Math.min(...xs), left) + beyondWall(exit, right, Math.max(...xs));
}

function beyondWall(exit: Outline, from: number, to: number): number {
  if (to <= from) return 0;
  const step = (to - from) / strips;
  let area = 0;
  for (let i = 0; i < strips; i++) area += heightAt(exit, from + (i + 0.5) * step) * step;
  return area;
}
