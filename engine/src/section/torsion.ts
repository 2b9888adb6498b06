import { analyse, factor, solve } from '../numerics/ldlt.ts';
import { patternOfElements } from '../numerics/pattern.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import type { Outline } from './outline.ts';
import { sectionProperties } from './properties.ts';
import { type QuadraticMesh, quadraticMesh } from './quadratic-mesh.ts';
import { triangulate } from './triangulate.ts';

/** Nodes of the linear mesh on which J of a rail is right to 0.1 %: see the mesh study in the test. */
const nodesWanted = 200;

/**
 * Torsion constant J, m⁴: M = G·J·twist per length. Prandtl's stress function, ∇²φ = −2 inside and 0 on the boundary,
 * J = 2 ∫ φ dA, on six-node triangles with curved sides; from below, to 0.1 % on rails. One piece without holes.
 * Source: Timoshenko and Goodier, Theory of Elasticity (1951), § 104.
 */
export function torsionConstant(
  outline: Outline,
  size = Math.sqrt(sectionProperties(outline).area / nodesWanted),
): Result<number> {
  const mesh = triangulate(outline, { size });
  return mesh.ok ? torsionOnMesh(quadraticMesh(mesh.value, outline)) : mesh;
}

export function torsionOnMesh(mesh: QuadraticMesh): Result<number> {
  const size = mesh.xy.length / 2;
  const { pattern, slot } = patternOfElements(size, mesh.triangles, 6);
  const values = new Float64Array(pattern.row.length);
  const load = new Float64Array(size);
  const element = { stiffness: new Float64Array(36), load: new Float64Array(6) };
  for (let t = 0; 6 * t < mesh.triangles.length; t++) {
    if (!addTo(element, mesh, t)) {
      return fail({
        model: 'torsion',
        reason: 'A curved triangle at the boundary is turned over; a smaller mesh size helps.',
      });
    }
    assemble(mesh, t, element, slot, values, load);
  }
  for (let node = 0; node < size; node++) if (mesh.onBoundary[node]) values[pattern.columnStart[node]] = 1;
  const factored = factor(analyse(pattern, mesh.xy), values);
  if (!factored.ok) return factored;
  const phi = solve(factored.value, load);
  let constant = 0;
  for (let node = 0; node < size; node++) constant += load[node] * phi[node];
  return ok(constant);
}

interface Element {
  /** ∫ ∇Nᵢ·∇Nⱼ dA at 6i + j. */
  readonly stiffness: Float64Array;
  /** 2 ∫ Nᵢ dA, m². */
  readonly load: Float64Array;
}

/** Boundary nodes keep φ = 0: they take no load and no coupling. */
function assemble(
  { triangles, onBoundary }: QuadraticMesh,
  t: number,
  { stiffness, load }: Element,
  slot: Int32Array,
  values: Float64Array,
  into: Float64Array,
): void {
  for (let i = 0; i < 6; i++) {
    const node = triangles[6 * t + i];
    if (onBoundary[node]) continue;
    into[node] += load[i];
    for (let j = 0; j <= i; j++) {
      if (!onBoundary[triangles[6 * t + j]]) values[slot[36 * t + 6 * i + j]] += stiffness[6 * i + j];
    }
  }
}

/** Quadratic shape functions and their slopes by r and s at barycentric coordinates p = 1 − r − s, r, s. */
function shapesAt(p: number, r: number, s: number) {
  return {
    shape: [p * (2 * p - 1), r * (2 * r - 1), s * (2 * s - 1), 4 * p * r, 4 * r * s, 4 * s * p],
    slopes: [
      1 - 4 * p,
      1 - 4 * p,
      4 * r - 1,
      0,
      0,
      4 * s - 1,
      4 * (p - r),
      -4 * r,
      4 * s,
      4 * r,
      -4 * s,
      4 * (p - s),
    ],
  };
}

/** Shapes, slopes and weights at six points, exact to degree 4. Source: Dunavant 1985. */
const rule = [
  { p: 0.091576213509771, weight: 0.109951743655322 },
  { p: 0.445948490915965, weight: 0.223381589678011 },
].flatMap(({ p, weight }) => {
  const q = 1 - 2 * p;
  return [shapesAt(q, p, p), shapesAt(p, q, p), shapesAt(p, p, q)].map((shapes) => ({ ...shapes, weight }));
});

/** One triangle's stiffness and load; false when its map is turned over at a point of the rule. */
function addTo({ stiffness, load }: Element, { xy, triangles }: QuadraticMesh, t: number): boolean {
  stiffness.fill(0);
  load.fill(0);
  for (const { shape, slopes, weight } of rule) {
    let [xr, xs, yr, ys] = [0, 0, 0, 0];
    for (let i = 0; i < 6; i++) {
      const node = 2 * triangles[6 * t + i];
      xr += slopes[2 * i] * xy[node];
      xs += slopes[2 * i + 1] * xy[node];
      yr += slopes[2 * i] * xy[node + 1];
      ys += slopes[2 * i + 1] * xy[node + 1];
    }
    const jacobian = xr * ys - xs * yr;
    if (!(jacobian > 0)) return false;
    const area = (weight * jacobian) / 2;
    for (let i = 0; i < 6; i++) {
      load[i] += 2 * area * shape[i];
      const [ix, iy] = [
        slopes[2 * i] * ys - slopes[2 * i + 1] * yr,
        slopes[2 * i + 1] * xr - slopes[2 * i] * xs,
      ];
      for (let j = 0; j <= i; j++) {
        const [jx, jy] = [
          slopes[2 * j] * ys - slopes[2 * j + 1] * yr,
          slopes[2 * j + 1] * xr - slopes[2 * j] * xs,
        ];
        stiffness[6 * i + j] += (area * (ix * jx + iy * jy)) / (jacobian * jacobian);
      }
    }
  }
  return true;
}
