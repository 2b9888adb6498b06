import type { SurfaceChannel } from '../conduction/surface.ts';
import { blackEmission, blackEmissionSlope } from './grey.ts';
import type { ViewFactors } from './view-factors.ts';

export interface Enclosure {
  /** Of the steel, 0 to 1, the same for all wavelengths and directions (grey, diffuse). */
  readonly emissivity: number;
  /** °C of black surroundings and of a black floor. */
  readonly ambient: number;
  readonly floor?: number;
}

/**
 * Radiation of a section that sees itself, its neighbours in the row and a floor, all reflections counted:
 * q = ε (G − σT⁴), G = Σ F J, J = ε σT⁴ + (1 − ε) G. Neighbours are as hot as the own section, edge by edge.
 */
export function radiosity(factors: ViewFactors, enclosure: Enclosure): SurfaceChannel {
  const { emissivity, ambient, floor = ambient } = enclosure;
  const { edges } = factors;
  const { absorbed, fromOutside } = reflected(factors, emissivity, ambient, floor);
  const ownShare = rowSums(absorbed, edges);
  const emission = new Float64Array(edges);
  return {
    name: 'radiation',
    heat(surface, _time, flux, slope) {
      for (let e = 0; e < edges; e++) {
        emission[e] = (blackEmission(surface[2 * e]) + blackEmission(surface[2 * e + 1])) / 2;
      }
      for (let e = 0; e < edges; e++) {
        let received = fromOutside[e];
        for (let j = 0; j < edges; j++) received += absorbed[e * edges + j] * emission[j];
        for (let end = 2 * e; end < 2 * e + 2; end++) {
          flux[end] = emissivity * (received - blackEmission(surface[end]));
          // As if all that it sees of its own kind cooled with it: Newton then needs no coupling between edges.
          slope[end] -= emissivity * (1 - ownShare[e]) * blackEmissionSlope(surface[end]);
        }
      }
    },
  };
}

/** What arrives at each edge per unit of black emission of each other, after all reflections, and from outside, W/m². */
function reflected(factors: ViewFactors, emissivity: number, ambient: number, floorAt: number) {
  const { edges, between, floor, surroundings } = factors;
  const spread = allReflections(between, 1 - emissivity, edges);
  const direct = Float64Array.from(
    { length: edges },
    (_, e) => floor[e] * blackEmission(floorAt) + surroundings[e] * blackEmission(ambient),
  );
  const arriving = product(between, spread, edges);
  const fromOutside = direct.slice();
  for (let e = 0; e < edges; e++) {
    for (let j = 0; j < edges; j++) fromOutside[e] += (1 - emissivity) * arriving[e * edges + j] * direct[j];
  }
  return { absorbed: arriving.map((each) => emissivity * each), fromOutside };
}

/** (1 − ρF)⁻¹ = (1 + M)(1 + M²)(1 + M⁴)… with M = ρF: 2⁸ reflections, beyond which nothing is left. */
function allReflections(between: Float64Array, reflectivity: number, n: number): Float64Array {
  let power: Float64Array = between.map((each) => reflectivity * each);
  let sum: Float64Array = withIdentity(power, n);
  for (let doubling = 1; doubling < 8 && power.some((each) => each > 1e-14); doubling++) {
    power = product(power, power, n);
    sum = product(sum, withIdentity(power, n), n);
  }
  return sum;
}

function withIdentity(matrix: Float64Array, n: number): Float64Array {
  const sum = matrix.slice();
  for (let i = 0; i < n; i++) sum[i * n + i] += 1;
  return sum;
}

function product(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const left = a[i * n + k];
      if (left === 0) continue;
      for (let j = 0; j < n; j++) c[i * n + j] += left * b[k * n + j];
    }
  }
  return c;
}

const rowSums = (matrix: Float64Array, n: number): Float64Array =>
  Float64Array.from({ length: n }, (_, i) =>
    matrix.subarray(i * n, (i + 1) * n).reduce((sum, each) => sum + each, 0),
  );
