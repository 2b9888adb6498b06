import { patternOfElements, type SymmetricPattern } from './pattern.ts';
import { type Random, seededRandom } from './random.ts';

/** A matrix to factor, with what a caller would know about it. */
export interface Strip {
  readonly pattern: SymmetricPattern;
  readonly values: Float64Array;
  readonly signs: Int8Array;
  /** x, y per node of three unknowns each: two velocities and a pressure. */
  readonly coordinates: Float64Array;
}

/**
 * A strip of across × along nodes in square elements, velocity and pressure in each node: stiffness of a viscous
 * solid, minus divergence, and a small negative pressure block that makes it quasi-definite.
 * Viscosity varies from element to element over three decades, as in a bar that is cold outside and hot inside.
 */
export function mixedStrip(across: number, along: number, random: Random = seededRandom(1)): Strip {
  const nodes = across * along;
  const elements: number[] = [];
  for (let y = 0; y + 1 < along; y++) {
    for (let x = 0; x + 1 < across; x++) {
      const node = y * across + x;
      elements.push(node, node + 1, node + across + 1, node + across);
    }
  }
  const { pattern, slot } = patternOfElements(3 * nodes, elements, 4, 3);
  const values = new Float64Array(pattern.row.length);
  const local = elementParts();
  for (let e = 0; e < elements.length / 4; e++) {
    const viscosity = 10 ** (3 * random() - 1.5);
    for (let i = 0; i < 12; i++) {
      for (let j = 0; j <= i; j++) {
        const at = i * 12 + j;
        const value =
          viscosity * local.stiffness[at] + local.coupling[at] - local.mass[at] / (20 * viscosity);
        values[slot[e * 144 + at]] += value;
      }
    }
  }
  for (let node = 0; node < across; node++) {
    for (const dof of [0, 1]) values[pattern.columnStart[3 * node + dof]] += 10;
  }
  const signs = Int8Array.from({ length: 3 * nodes }, (_, i) => (i % 3 === 2 ? -1 : 1));
  const coordinates = Float64Array.from({ length: 2 * nodes }, (_, i) =>
    i % 2 === 0 ? (i / 2) % across : Math.floor(i / 2 / across),
  );
  return { pattern, values, signs, coordinates };
}

/** Matrices of the unit square in local unknowns (u, v, p) × 4, by the 2 × 2 Gauss rule. */
function elementParts() {
  const stiffness = new Float64Array(144);
  const coupling = new Float64Array(144);
  const mass = new Float64Array(144);
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  const gauss = 1 / Math.sqrt(3);
  for (const [x, y] of corners) {
    const shape = corners.map(([cx, cy]) => ((1 + cx * x * gauss) * (1 + cy * y * gauss)) / 4);
    const dx = corners.map(([cx, cy]) => (cx * (1 + cy * y * gauss)) / 2);
    const dy = corners.map(([cx, cy]) => (cy * (1 + cx * x * gauss)) / 2);
    for (let a = 0; a < 4; a++) {
      for (let b = 0; b < 4; b++) {
        const block = 3 * a * 12 + 3 * b;
        stiffness[block] += (2 * dx[a] * dx[b] + dy[a] * dy[b]) / 4;
        stiffness[block + 1] += (dy[a] * dx[b]) / 4;
        stiffness[block + 12] += (dx[a] * dy[b]) / 4;
        stiffness[block + 13] += (dx[a] * dx[b] + 2 * dy[a] * dy[b]) / 4;
        coupling[block + 2] -= (dx[a] * shape[b]) / 4;
        coupling[block + 14] -= (dy[a] * shape[b]) / 4;
        coupling[block + 24] -= (dx[b] * shape[a]) / 4;
        coupling[block + 25] -= (dy[b] * shape[a]) / 4;
        mass[block + 26] += (shape[a] * shape[b]) / 4;
      }
    }
  }
  return { stiffness, coupling, mass };
}
