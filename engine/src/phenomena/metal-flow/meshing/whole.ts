import type { Field } from '../../../outcome/field.ts';
import type { TriMesh } from '../../../section/mesh.ts';
import type { Outline } from '../../../section/outline.ts';
import { type QuadMesh, skin } from '../quad-mesh.ts';
import { type Image, imagesOf, partOf } from './images.ts';
import { inTwo } from './split-in-two.ts';

/** The whole section as linear triangles, with the node of the computed part that each of its nodes is or mirrors. */
export interface WholeMesh extends TriMesh {
  readonly part: Int32Array;
}

/**
 * The whole section of a computed part: its mirror images joined on, nodes on lines of symmetry shared, each element cut
 * in two along its better diagonal, the images alike. The computed part's own nodes come first and keep their numbers.
 * The boundary begins at the first node of the skin, and its edges are numbered as those of `outlineOf`.
 */
export function triMeshOf(mesh: QuadMesh): WholeMesh {
  const images = imagesOf(mesh);
  const triangles = images.reduce((all, { of }) => mirrored(all, of), inTwo(mesh.quads, mesh.xy));
  const ring = ringOf(mesh, images);
  return {
    xy: wholeXy(mesh, mesh.xy),
    triangles,
    boundary: Int32Array.from(ring.flatMap((node, i) => [node, ring[(i + 1) % ring.length]])),
    boundaryEdgeOf: Int32Array.from(ring, (_, i) => i),
    part: partOf(mesh, images),
  };
}

/** Places of the nodes of the whole section when those of the computed part stand at `xy`. */
export function wholeXy(mesh: QuadMesh, xy: Field): Float64Array {
  const whole = [...xy];
  for (const { of, off, at } of imagesOf(mesh)) {
    for (let node = 0; node < of.length; node++) {
      if (of[node] === node) continue;
      whole[2 * of[node] + off] = 2 * at - whole[2 * node + off];
      whole[2 * of[node] + 1 - off] = whole[2 * node + 1 - off];
    }
  }
  return Float64Array.from(whole);
}

/** The outline of the whole section as a polygon through its skin, counter-clockwise from the first node of the skin. */
export function outlineOf(mesh: QuadMesh, xy: Field): Outline {
  const whole = wholeXy(mesh, xy);
  return {
    vertices: ringOf(mesh, imagesOf(mesh)).map((node) => ({
      x: whole[2 * node],
      y: whole[2 * node + 1],
      bulge: 0,
    })),
  };
}

/** Triangles and their images; corners change places, so that images turn the same way. */
function mirrored(triangles: Int32Array, of: Int32Array): Int32Array {
  const n = triangles.length;
  const both = new Int32Array(2 * n);
  both.set(triangles);
  for (let t = 0; t < n; t += 3) {
    both[n + t] = of[triangles[t + 2]];
    both[n + t + 1] = of[triangles[t + 1]];
    both[n + t + 2] = of[triangles[t]];
  }
  return both;
}

/**
 * Nodes around the whole section, counter-clockwise: the skin of the computed part, then its images backwards. A skin
 * that begins and ends on lines of symmetry has a node there that is its own image and is not repeated.
 */
function ringOf(mesh: QuadMesh, images: readonly Image[]): number[] {
  let ring = skinOf(mesh);
  for (const { of } of images) {
    const back = ring.map((node) => of[node]).reverse();
    const [first, last] = [ring[0], ring[ring.length - 1]];
    ring = [...ring, ...back.filter((node) => node !== first && node !== last)];
  }
  return ring;
}

/** Nodes of the skin in order: from one line of symmetry to the other, or all around. */
function skinOf({ loop, lies }: QuadMesh): number[] {
  const n = loop.length;
  const start = Math.max(
    0,
    Array.from(loop).findIndex((_, i) => lies[i] === skin && lies[(i + n - 1) % n] !== skin),
  );
  const nodes = [loop[start]];
  for (let i = start; i < start + n && lies[i % n] === skin; i++) nodes.push(loop[(i + 1) % n]);
  return nodes.length > n ? nodes.slice(0, n) : nodes;
}
