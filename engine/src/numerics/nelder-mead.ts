import type { Field } from '../outcome/field.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { type Box, boxed, freed, intoBox } from './box.ts';

export interface Minimum {
  readonly parameters: Float64Array;
  readonly value: number;
  /** Evaluations of f. */
  readonly evaluations: number;
  /** Largest extent of the last simplex, in units of `size`. */
  readonly residual: number;
}

export interface SearchOptions extends Box {
  /** Edge of the first simplex per parameter; default 5 % of the start value, 0.05 where that is zero. */
  readonly size?: Field;
  /** The simplex is small enough when no edge exceeds this part of `size`. */
  readonly tolerance?: number;
  readonly maxEvaluations?: number;
}

interface Vertex {
  /** Where the simplex has it, in free coordinates, and where that is in the box. */
  readonly at: Float64Array;
  readonly parameters: Float64Array;
  readonly value: number;
}

/**
 * A local minimum of f without derivatives, inside a box, for up to about ten parameters.
 *
 * The simplex moves in free coordinates that never leave the box, see box.ts; NaN counts as +∞. When it has shrunk,
 * a fresh one is laid out at the best point, until that gains next to nothing: a flattened simplex is no answer.
 * Nothing is random. A Failure when f is nowhere finite at the start, or evaluations run out.
 * Source: J. Nelder, R. Mead 1965, with the factors of F. Gao, L. Han 2012; from memory.
 */
export function nelderMead(
  f: (parameters: Field) => number,
  start: Field,
  options: SearchOptions = {},
): Result<Minimum> {
  const { tolerance = 1e-6, maxEvaluations = 400 * start.length } = options;
  const size = options.size ?? Array.from(start, (x) => 0.05 * Math.abs(x) || 0.05);
  let evaluations = 0;
  const vertex = (at: Float64Array): Vertex => {
    evaluations++;
    const inside = at.map((z, i) => boxed(z, i, options, size[i]));
    const parameters = intoBox(inside, options);
    const value = f(parameters);
    return { at, parameters, value: Number.isNaN(value) ? Number.POSITIVE_INFINITY : value };
  };
  const vertexAt = (x: Float64Array) => vertex(x.map((xi, i) => freed(xi, i, options, size[i])));
  let best = vertexAt(intoBox(Float64Array.from(start), options));
  for (let turn = 1; ; turn = -turn) {
    const simplex = [best, ...laidOut(best.parameters, size, turn, options).map(vertexAt)].sort(byValue);
    if (simplex[0].value === Number.POSITIVE_INFINITY) return nowhereFinite(evaluations);
    const spread = finiteSpread(simplex);
    while (extent(simplex, size) > tolerance) {
      if (evaluations > maxEvaluations) return ranOut(simplex, extent(simplex, size), evaluations);
      step(simplex, vertex);
    }
    const gained = best.value - simplex[0].value;
    best = simplex[0];
    if (gained > tolerance * spread) continue;
    const residual = extent(simplex, size);
    return ok({ parameters: best.parameters, value: best.value, evaluations, residual });
  }
}

/** One corner per parameter, a `size` away; on the other side where a bound leaves less room. */
function laidOut(from: Float64Array, size: Field, turn: number, box: Box): Float64Array[] {
  return Array.from(from, (_, i) => {
    const [there, back] = [turn, -turn].map((side) => {
      const corner = from.slice();
      corner[i] += side * size[i];
      return intoBox(corner, box);
    });
    return Math.abs(there[i] - from[i]) >= Math.abs(back[i] - from[i]) ? there : back;
  });
}

/** Replaces the worst vertex, or draws all towards the best; keeps the simplex sorted. */
function step(simplex: Vertex[], vertex: (at: Float64Array) => Vertex): void {
  const n = simplex.length - 1;
  const worst = simplex[n];
  const centre = centreOf(simplex.slice(0, n));
  const along = (t: number) => vertex(centre.map((c, i) => c + t * (c - worst.at[i])));
  const reflected = along(1);
  let next: Vertex;
  if (reflected.value < simplex[0].value) {
    const expanded = along(1 + 2 / Math.max(n, 2));
    next = expanded.value < reflected.value ? expanded : reflected;
  } else if (n > 1 && reflected.value < simplex[n - 1].value) {
    next = reflected;
  } else {
    const nearer = 0.75 - 1 / (2 * Math.max(n, 2));
    const contracted = along(reflected.value < worst.value ? nearer : -nearer);
    next = contracted.value < Math.min(worst.value, reflected.value) ? contracted : worst;
  }
  if (next !== worst) simplex[n] = next;
  else shrink(simplex, vertex);
  simplex.sort(byValue);
}

function shrink(simplex: Vertex[], vertex: (at: Float64Array) => Vertex): void {
  const kept = 1 - 1 / Math.max(simplex.length - 1, 2);
  const best = simplex[0].at;
  for (let v = 1; v < simplex.length; v++) {
    simplex[v] = vertex(simplex[v].at.map((x, i) => best[i] + kept * (x - best[i])));
  }
}

function centreOf(vertices: Vertex[]): Float64Array {
  return vertices[0].at.map((_, i) => vertices.reduce((sum, { at }) => sum + at[i], 0) / vertices.length);
}

function extent(simplex: Vertex[], size: Field): number {
  const best = simplex[0].parameters;
  let most = 0;
  for (const { parameters } of simplex) {
    for (let i = 0; i < best.length; i++) {
      most = Math.max(most, Math.abs(parameters[i] - best[i]) / size[i]);
    }
  }
  return most;
}

/** What a step of `size` does to the function. */
function finiteSpread(simplex: Vertex[]): number {
  const values = simplex.map(({ value }) => value).filter(Number.isFinite);
  return Math.max(...values) - Math.min(...values);
}

const byValue = (a: Vertex, b: Vertex): number => a.value - b.value;

const nowhereFinite = (iterations: number): Result<Minimum> =>
  fail({ model: 'search', reason: 'the function is not finite anywhere around the start', iterations });

function ranOut(simplex: Vertex[], residual: number, iterations: number): Result<Minimum> {
  const reason = `still moving after ${iterations} evaluations, best value ${simplex[0].value}`;
  return fail({ model: 'search', reason, residual, iterations });
}
