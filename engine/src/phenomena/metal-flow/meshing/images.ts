import { onLineX, onLineY, type QuadMesh } from '../quad-mesh.ts';

/** One mirroring of all nodes there are so far: in y = at (off 1) or x = at (off 0). */
export interface Image {
  readonly off: 0 | 1;
  readonly at: number;
  /** Node number of each node's image; its own on the line. */
  readonly of: Int32Array;
}

/** The mirrorings that make the whole section: in the line x first, then all of it in the line y. */
export function imagesOf(mesh: QuadMesh): Image[] {
  const { symmetry } = mesh;
  const images: Image[] = [];
  let shared = nodesOn(mesh, onLineX);
  let count = mesh.xy.length / 2;
  if (symmetry.x !== undefined) {
    images.push({ off: 0, at: symmetry.x, of: numbered(shared, count) });
    count = highest(images[0].of) + 1;
  }
  if (symmetry.y !== undefined) {
    shared = nodesOn(mesh, onLineY);
    if (images.length > 0) for (const node of [...shared]) shared.add(images[0].of[node]);
    images.push({ off: 1, at: symmetry.y, of: numbered(shared, count) });
  }
  return images;
}

/** The node of the computed part that each node of the whole is, or is an image of. */
export function partOf({ xy }: QuadMesh, images: readonly Image[]): Int32Array {
  const part = Array.from({ length: xy.length / 2 }, (_, node) => node);
  for (const { of } of images) for (let node = 0; node < of.length; node++) part[of[node]] = part[node];
  return Int32Array.from(part);
}

function nodesOn({ loop, lies }: QuadMesh, line: number): Set<number> {
  const nodes = new Set<number>();
  for (let i = 0; i < loop.length; i++)
    if (lies[i] === line) nodes.add(loop[i]).add(loop[(i + 1) % loop.length]);
  return nodes;
}

function numbered(shared: ReadonlySet<number>, count: number): Int32Array {
  let next = count;
  return Int32Array.from({ length: count }, (_, node) => (shared.has(node) ? node : next++));
}

const highest = (nodes: Int32Array): number => nodes.reduce((most, node) => Math.max(most, node), -1);
