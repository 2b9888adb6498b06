import type { Field } from '../../outcome/field.ts';
import type { Grid } from './grid.ts';
import { jacobianShare } from './quad-mesh.ts';

/**
 * Integrals over every element at given node places, 2 × 2 Gauss points. Packed triangles: entry (i, j), j ≤ i, stands
 * at i (i + 1)/2 + j; unknowns of an element are x and y of its first node, then of its second, …
 */
export interface ElementGeometry {
  readonly area: Float64Array;
  /** ∫ ∂N/∂x and ∂N/∂y: 8 per element; its product with the velocities is the rate of the area. */
  readonly divergence: Float64Array;
  /** ∫ (ε_x² + ε_y² + γ²/2) as a form of the velocities: 36 per element. */
  readonly strain: Float64Array;
  /** ∫ ∇N·∇N and ∫ N N: 10 per element. */
  readonly laplace: Float64Array;
  readonly mass: Float64Array;
}

export const geometryFor = ({ elements }: Grid): ElementGeometry => ({
  area: new Float64Array(elements),
  divergence: new Float64Array(8 * elements),
  strain: new Float64Array(36 * elements),
  laplace: new Float64Array(10 * elements),
  mass: new Float64Array(10 * elements),
});

/** Fills `out`; returns the smallest Jacobian over its element's mean: 0 or less where an element is turned over. */
export function measureElements(grid: Grid, xy: Field, out: ElementGeometry): number {
  const at: GaussPoint = {
    dx: new Float64Array(4),
    dy: new Float64Array(4),
    n: new Float64Array(4),
    weight: 0,
  };
  for (const row of [out.area, out.divergence, out.strain, out.laplace, out.mass]) row.fill(0);
  let worst = Number.POSITIVE_INFINITY;
  for (let k = 0; k < grid.elements; k++) {
    let least = Number.POSITIVE_INFINITY;
    for (let point = 0; point < 4; point++) {
      gaussPoint(grid.quads, xy, k, point, at);
      least = Math.min(least, at.weight);
      accumulate(k, at, out);
    }
    worst = Math.min(worst, (4 * least) / Math.abs(out.area[k]));
  }
  return worst;
}

interface GaussPoint {
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly n: Float64Array;
  weight: number;
}

const cornerXi = [-1, 1, 1, -1];
const cornerEta = [-1, -1, 1, 1];

function gaussPoint(quads: Grid['quads'], xy: Field, k: number, point: number, at: GaussPoint): void {
  const [xi, eta] = [cornerXi[point] / Math.sqrt(3), cornerEta[point] / Math.sqrt(3)];
  let [xXi, yXi, xEta, yEta] = [0, 0, 0, 0];
  for (let a = 0; a < 4; a++) {
    const [x, y] = [xy[2 * quads[4 * k + a]], xy[2 * quads[4 * k + a] + 1]];
    const nXi = (cornerXi[a] * (1 + cornerEta[a] * eta)) / 4;
    const nEta = (cornerEta[a] * (1 + cornerXi[a] * xi)) / 4;
    at.n[a] = ((1 + cornerXi[a] * xi) * (1 + cornerEta[a] * eta)) / 4;
    xXi += x * nXi;
    yXi += y * nXi;
    xEta += x * nEta;
    yEta += y * nEta;
  }
  const jacobian = xXi * yEta - xEta * yXi;
  for (let a = 0; a < 4; a++) {
    const nXi = (cornerXi[a] * (1 + cornerEta[a] * eta)) / 4;
    const nEta = (cornerEta[a] * (1 + cornerXi[a] * xi)) / 4;
    at.dx[a] = (yEta * nXi - yXi * nEta) / jacobian;
    at.dy[a] = (xXi * nEta - xEta * nXi) / jacobian;
  }
  at.weight = jacobian;
}

function accumulate(k: number, { dx, dy, n, weight }: GaussPoint, out: ElementGeometry): void {
  out.area[k] += weight;
  let scalar = 10 * k;
  for (let a = 0; a < 4; a++) {
    out.divergence[8 * k + 2 * a] += weight * dx[a];
    out.divergence[8 * k + 2 * a + 1] += weight * dy[a];
    const rowX = 36 * k + a * (2 * a + 1);
    const rowY = rowX + 2 * a + 1;
    for (let b = 0; b <= a; b++) {
      const [xx, yy] = [weight * dx[a] * dx[b], weight * dy[a] * dy[b]];
      out.laplace[scalar] += xx + yy;
      out.mass[scalar++] += weight * n[a] * n[b];
      out.strain[rowX + 2 * b] += xx + yy / 2;
      if (b < a) out.strain[rowX + 2 * b + 1] += (weight * dy[a] * dx[b]) / 2;
      out.strain[rowY + 2 * b] += (weight * dx[a] * dy[b]) / 2;
      out.strain[rowY + 2 * b + 1] += yy + xx / 2;
    }
  }
}

/** The worst jacobianShare of any element, without the integrals. */
export function leastJacobian({ quads, elements }: Grid, xy: Field): number {
  let worst = Number.POSITIVE_INFINITY;
  for (let k = 0; k < elements; k++) worst = Math.min(worst, jacobianShare(quads, xy, k));
  return worst;
}
