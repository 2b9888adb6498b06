import { edgesOf, nearestOn, pointAt } from '../../section/edges.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { selfCrossing } from '../../section/self-crossing.ts';
import { mirrored } from '../../section/transform.ts';
import type { Issue } from '../../units/issue.ts';
import { type EnteringSection, outlineOfSection, reachMm } from './entering-section.ts';
import { type FlowCase, linesOf } from './flow-case.ts';

/** A written outline may miss its mirror image by so much, m: figures in a file are rounded. */
const mirrorMiss = 5e-5;

/** What is wrong with an entering section beyond the limits of its single values. */
export function senseOfSection(
  section: EnteringSection,
  symmetry: FlowCase['symmetry'] | undefined,
): Issue[] {
  if (section.shape === 'square') return roundCorner(section.cornerRadius, section.side);
  if (section.shape === 'rectangle')
    return roundCorner(section.cornerRadius, Math.min(section.width, section.height));
  const path = section.shape === 'outline' ? 'section.rows' : 'section.pointsMm';
  const asWritten = section.shape === 'outline' ? section.rows : section.pointsMm;
  const first = [...drawnWithin(asWritten, path), ...repeatedPoints(asWritten, path)];
  if (first.length > 0) return first;
  const outline = outlineOfSection(section);
  const crossed = crossings(outline, path);
  if (crossed.length > 0) return crossed;
  return [...sliver(outline), ...unlikeItsImage(outline, symmetry, path)];
}

function roundCorner(radius: number, side: number): Issue[] {
  if (radius <= side / 2) return [];
  const [value, most] = [tidyMm(radius), tidyMm(side / 2)];
  const message = `section.cornerRadiusMm is ${value} mm; allowed: ${most} mm or less, half the shorter side`;
  return [{ path: 'section.cornerRadiusMm', value, unit: 'mm', limit: `${most} or less`, message }];
}

/** Rows with bulges carry no limits of their own. */
export function drawnWithin({ vertices }: Outline, path: string): Issue[] {
  const far = vertices.flatMap(({ x, y, bulge }, i) =>
    Math.max(Math.abs(x), Math.abs(y)) > reachMm / 1e3 || Math.abs(bulge) > mostBulge ? [i] : [],
  );
  const limit = `within ${reachMm} mm of the middle, bulge ${-mostBulge} to ${mostBulge}`;
  return far.map((i) => ({
    path: `${path}.${i}`,
    limit,
    message: `${path}.${i} is ${spot(vertices[i])}, bulge ${vertices[i].bulge}; allowed: ${limit}`,
  }));
}

/** An arc of nearly a full circle. */
const mostBulge = 20;

export function repeatedPoints({ vertices }: Outline, path: string, closed = true): Issue[] {
  const last = closed ? vertices.length : vertices.length - 1;
  const repeated = vertices.slice(0, last).flatMap((from, i) => {
    const to = vertices[(i + 1) % vertices.length];
    return Math.hypot(to.x - from.x, to.y - from.y) < 1e-7 ? [from] : [];
  });
  return repeated.map((point) => ({
    path,
    limit: 'neighbouring points apart',
    message: `${path} has the point ${spot(point)} twice in a row; an outline closes by itself`,
  }));
}

function crossings(outline: Outline, path: string): Issue[] {
  const point = selfCrossing(outline);
  if (!point) return [];
  const message = `${path} crosses or touches itself at ${spot(point)}`;
  return [{ path, limit: 'an outline that does not cross itself', message }];
}

function sliver(outline: Outline): Issue[] {
  const value = Number((sectionProperties(outline).area * 1e6).toPrecision(4));
  if (value >= leastMm2) return [];
  const message = `section is ${value} mm²; allowed: ${leastMm2} mm² or more`;
  return [{ path: 'section', value, unit: 'mm²', limit: `${leastMm2} or more`, message }];
}

const leastMm2 = 25;

/** The section must be its own mirror image in the lines that symmetry names. */
function unlikeItsImage(outline: Outline, symmetry: FlowCase['symmetry'] | undefined, path: string): Issue[] {
  const lines = Object.keys(linesOf(symmetry ?? 'none')) as ('x' | 'y')[];
  return lines.flatMap((line) => {
    const miss = largestMiss(outline, line);
    if (miss.distance <= mirrorMiss) return [];
    const message = `${path} is not its own mirror image in ${line} = 0: it misses by ${tidyMm(miss.distance)} mm at ${spot(miss)}`;
    return [{ path, limit: 'a whole section that is symmetric as said', message }];
  });
}

function largestMiss(outline: Outline, line: 'x' | 'y') {
  const edges = edgesOf(outline);
  const misses = edgesOf(mirrored(outline, line)).flatMap((edge) =>
    [0, 0.5].map((share) => {
      const { x, y } = pointAt(edge, share);
      return { x, y, distance: nearestOn(edges, x, y).distance };
    }),
  );
  return misses.reduce((worst, each) => (each.distance > worst.distance ? each : worst));
}

export const tidyMm = (metres: number): number => Number((metres * 1e3).toFixed(2));

export const spot = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `x ${tidyMm(x)}, y ${tidyMm(y)} mm`;
