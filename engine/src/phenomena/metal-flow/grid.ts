import { analyse, type Symbolic } from '../../numerics/ldlt.ts';
import { type ElementMap, patternOfElements } from '../../numerics/pattern.ts';
import type { Field, Indices } from '../../outcome/field.ts';
import { onLineX, type QuadMesh, quadCount, skin } from './quad-mesh.ts';

/** What all slices of a pass share: who touches whom, which unknowns are held, how the matrices are laid out. */
export interface Grid {
  readonly mesh: QuadMesh;
  readonly nodes: number;
  readonly elements: number;
  readonly quads: Indices;
  readonly skin: SkinNodes;
  /** Unknowns 2·node (x) and 2·node + 1 (y) that symmetry holds at zero. */
  readonly held: Int32Array;
  /** Places of the matrix entries that couple held unknowns to others. */
  readonly heldEntries: Int32Array;
  /** Two velocities per node; one value per node. */
  readonly flow: Layout;
  readonly scalar: Layout;
}

export interface Layout extends ElementMap {
  readonly symbolic: Symbolic;
}

/** Nodes on the skin, in order around, each with its two neighbours on the skin (itself where the skin ends). */
export interface SkinNodes {
  readonly node: Int32Array;
  readonly before: Int32Array;
  readonly after: Int32Array;
  /** Elements around each skin node: element[start[s]] … element[start[s + 1] − 1]. */
  readonly start: Int32Array;
  readonly element: Int32Array;
}

export function gridOf(mesh: QuadMesh): Grid {
  const nodes = mesh.xy.length / 2;
  const flow = layoutOf(mesh, nodes, 2);
  const held = heldUnknowns(mesh);
  return {
    mesh,
    nodes,
    elements: quadCount(mesh),
    quads: mesh.quads,
    skin: skinNodes(mesh, nodes),
    held,
    heldEntries: entriesBeside(flow, held),
    flow,
    scalar: layoutOf(mesh, nodes, 1),
  };
}

function layoutOf(mesh: QuadMesh, nodes: number, unknowns: number): Layout {
  const map = patternOfElements(unknowns * nodes, mesh.quads, 4, unknowns);
  return { ...map, symbolic: analyse(map.pattern, mesh.xy) };
}

function heldUnknowns({ loop, lies }: QuadMesh): Int32Array {
  const held = new Set<number>();
  for (let i = 0; i < loop.length; i++) {
    if (lies[i] === skin) continue;
    const direction = lies[i] === onLineX ? 0 : 1;
    held.add(2 * loop[i] + direction);
    held.add(2 * loop[(i + 1) % loop.length] + direction);
  }
  return Int32Array.from(held).sort();
}

function entriesBeside({ pattern: { columnStart, row } }: Layout, held: Int32Array): Int32Array {
  const isHeld = new Set(held);
  const entries: number[] = [];
  for (let column = 0; column + 1 < columnStart.length; column++) {
    for (let at = columnStart[column] + 1; at < columnStart[column + 1]; at++) {
      if (isHeld.has(column) || isHeld.has(row[at])) entries.push(at);
    }
  }
  return Int32Array.from(entries);
}

function skinNodes({ loop, lies, quads }: QuadMesh, nodes: number): SkinNodes {
  const count = loop.length;
  const isSkin = (edge: number) => lies[(edge + count) % count] === skin;
  const [node, before, after]: [number[], number[], number[]] = [[], [], []];
  for (let i = 0; i < count; i++) {
    if (!isSkin(i) && !isSkin(i - 1)) continue;
    node.push(loop[i]);
    before.push(isSkin(i - 1) ? loop[(i - 1 + count) % count] : loop[i]);
    after.push(isSkin(i) ? loop[(i + 1) % count] : loop[i]);
  }
  const around: number[][] = Array.from({ length: nodes }, () => []);
  for (let at = 0; at < quads.length; at++) around[quads[at]].push(at >> 2);
  const start = new Int32Array(node.length + 1);
  node.forEach((n, s) => {
    start[s + 1] = start[s] + around[n].length;
  });
  return {
    node: Int32Array.from(node),
    before: Int32Array.from(before),
    after: Int32Array.from(after),
    start,
    element: Int32Array.from(node.flatMap((n) => around[n])),
  };
}

/** Half the skin on both sides of a skin node, m. */
export function skinShare({ node, before, after }: SkinNodes, s: number, xy: Field): number {
  const [a, b, c] = [2 * before[s], 2 * node[s], 2 * after[s]];
  const left = Math.hypot(xy[b] - xy[a], xy[b + 1] - xy[a + 1]);
  return (left + Math.hypot(xy[c] - xy[b], xy[c + 1] - xy[b + 1])) / 2;
}
