import type { Field, Indices } from '../../outcome/field.ts';
import type { TriMesh } from '../../section/mesh.ts';

/**
 * The boundary of a section as heat sees it. Edge e has two ends, 2e and 2e + 1; half of its length belongs to each,
 * and an end has the temperature of its node. All rows of surface heat have one entry per end.
 */
export interface Skin {
  /** Boundary edges. */
  readonly edges: number;
  /** Node under each end. */
  readonly node: Indices;
  /** m, of each edge. */
  readonly length: Field;
  /** Outward unit normal of each edge. */
  readonly nx: Field;
  readonly ny: Field;
  /** Number of the outline's edge on which each edge lies. */
  readonly outlineEdge: Indices;
}

/**
 * One way in which heat crosses the surface, kept apart in the ledger: 'radiation', 'convection', 'water', 'rolls'.
 *
 * heat writes, for every end, the flux into the steel, W/m², and adds its slope dq/dT, W/m²K (never positive), from
 * the surface temperature, °C, at a time, s, counted like the start of the computation.
 */
export interface SurfaceChannel {
  readonly name: string;
  heat(surface: Field, time: number, flux: Float64Array, slope: Float64Array): void;
}

export type SurfaceHeat = readonly SurfaceChannel[];

/** A channel whose flux at an end depends on that end's temperature alone. */
export function pointwise(
  name: string,
  law: (temperature: number, time: number, end: number) => { readonly flux: number; readonly slope: number },
): SurfaceChannel {
  return {
    name,
    heat(surface, time, flux, slope) {
      for (let end = 0; end < flux.length; end++) {
        const here = law(surface[end], time, end);
        flux[end] = here.flux;
        slope[end] += here.slope;
      }
    },
  };
}

export function skinOf(mesh: TriMesh): Skin {
  const edges = mesh.boundary.length / 2;
  const length = new Float64Array(edges);
  const [nx, ny] = [new Float64Array(edges), new Float64Array(edges)];
  for (let e = 0; e < edges; e++) {
    const [a, b] = [2 * mesh.boundary[2 * e], 2 * mesh.boundary[2 * e + 1]];
    const [dx, dy] = [mesh.xy[b] - mesh.xy[a], mesh.xy[b + 1] - mesh.xy[a + 1]];
    length[e] = Math.hypot(dx, dy);
    nx[e] = dy / length[e];
    ny[e] = -dx / length[e];
  }
  return { edges, node: mesh.boundary, length, nx, ny, outlineEdge: mesh.boundaryEdgeOf };
}

/** Mean of a nodal field along the surface, weighted with length. */
export function meanAlong({ edges, node, length }: Skin, field: Field): number {
  let [sum, total] = [0, 0];
  for (let e = 0; e < edges; e++) {
    sum += (length[e] * (field[node[2 * e]] + field[node[2 * e + 1]])) / 2;
    total += length[e];
  }
  return sum / total;
}
