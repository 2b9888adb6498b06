import type { Field } from '../outcome/field.ts';
import { dissect, type SeparatorTree } from './dissection.ts';
import { strideOf } from './front.ts';
import { type Grouping, graphOf, grouped } from './graph.ts';
import type { SymmetricPattern } from './pattern.ts';

/**
 * Everything about a factorisation that does not depend on the values: reusable for every matrix of one pattern.
 *
 * Unknowns are eliminated in the order `unknown`; "place" is the position in it. Front f eliminates the places
 * pivotStart[f] … pivotStart[f + 1] − 1, and touches the later places in its border:
 *
 *     pivots  | L D Lᵀ          order = pivots + border; the panel on the left stays, the update on the right
 *     border  | L      update   is added to the parent front. Lower triangles, column after column.
 */
export interface Symbolic {
  readonly pattern: SymmetricPattern;
  readonly unknown: Int32Array;
  readonly pivotStart: Int32Array;
  /** Front that takes each front's update, −1 for none. Children come first. */
  readonly parent: Int32Array;
  /** Children of front f: firstChild[f], then nextChild of that, until −1. */
  readonly firstChild: Int32Array;
  readonly nextChild: Int32Array;
  /** Places in the border of front f: border[borderStart[f]] … ascending; and their rows in the parent front. */
  readonly borderStart: Int32Array;
  readonly border: Int32Array;
  readonly rowInParent: Int32Array;
  /** Where each entry of the matrix goes in the panels. */
  readonly entryTo: Int32Array;
  /** Where the pivot columns of front f start among all panels, strideOf(order) × pivots numbers. */
  readonly panelStart: Int32Array;
  readonly largestPanel: number;
  /** Where the update of front f starts in a workspace of so many numbers. */
  readonly updateStart: Int32Array;
  readonly workspaceSize: number;
}

/**
 * Finds the order of elimination and lays out all fronts.
 *
 * coordinates   x, y per unknown, or per node when several consecutive unknowns share one; they only guide the
 *               order. Without them the graph alone does.
 */
export function analyse(pattern: SymmetricPattern, coordinates?: Field): Symbolic {
  const grouping = grouped(graphOf(pattern));
  const tree = dissect(grouping.graph, coordinates && placesOf(grouping, coordinates, pattern.size));
  const { unknown, place } = eliminationOrder(grouping, tree);
  const pivotStart = pivotStarts(grouping, tree);
  const { borderStart, border } = borders(grouping, tree, place, pivotStart);
  const { parent } = tree;
  const rowInParent = rowsInParent(parent, pivotStart, borderStart, border);
  const shape = { pivotStart, borderStart, parent };
  const places = storage(shape);
  const entryTo = entriesInPanels(pattern, place, pivotStart, borderStart, border, places.panelStart);
  return {
    pattern,
    unknown,
    ...shape,
    ...children(parent),
    border,
    rowInParent,
    entryTo,
    ...places,
  };
}

function children(parent: Int32Array) {
  const firstChild = new Int32Array(parent.length).fill(-1);
  const nextChild = new Int32Array(parent.length).fill(-1);
  for (let f = parent.length - 1; f >= 0; f--) {
    if (parent[f] < 0) continue;
    nextChild[f] = firstChild[parent[f]];
    firstChild[parent[f]] = f;
  }
  return { firstChild, nextChild };
}

/** x, y per vertex. */
function placesOf({ graph, vertexOf }: Grouping, coordinates: Field, size: number): Float64Array {
  const perNode = size / (coordinates.length / 2);
  if (!Number.isInteger(perNode))
    throw new RangeError(`${coordinates.length} coordinates for ${size} unknowns`);
  const places = new Float64Array(2 * graph.weight.length);
  for (let i = 0; i < size; i++) {
    const node = Math.floor(i / perNode);
    places[2 * vertexOf[i]] = coordinates[2 * node];
    places[2 * vertexOf[i] + 1] = coordinates[2 * node + 1];
  }
  return places;
}

function eliminationOrder({ graph, vertexOf }: Grouping, tree: SeparatorTree) {
  const next = new Int32Array(graph.weight.length);
  let places = 0;
  for (const v of tree.vertex) {
    next[v] = places;
    places += graph.weight[v];
  }
  const place = vertexOf.map((v) => next[v]++);
  const unknown = new Int32Array(places);
  for (let i = 0; i < places; i++) unknown[place[i]] = i;
  return { unknown, place };
}

function pivotStarts({ graph }: Grouping, tree: SeparatorTree): Int32Array {
  const starts = new Int32Array(tree.start.length);
  for (let f = 0; f + 1 < starts.length; f++) {
    starts[f + 1] = starts[f];
    for (let at = tree.start[f]; at < tree.start[f + 1]; at++) starts[f + 1] += graph.weight[tree.vertex[at]];
  }
  return starts;
}

/** The border of a front: later places that its own vertices or its children's borders touch. */
function borders(
  { graph, vertexOf }: Grouping,
  tree: SeparatorTree,
  place: Int32Array,
  pivotStart: Int32Array,
) {
  const firstPlace = new Int32Array(graph.weight.length).fill(place.length);
  for (let i = 0; i < place.length; i++)
    firstPlace[vertexOf[i]] = Math.min(firstPlace[vertexOf[i]], place[i]);
  const vertexAt = new Int32Array(place.length);
  for (let i = 0; i < place.length; i++) vertexAt[place[i]] = vertexOf[i];
  const fronts = tree.parent.length;
  const borderStart = new Int32Array(fronts + 1);
  const inherited: number[][] = Array.from({ length: fronts }, () => []);
  const border: number[] = [];
  const seenBy = new Int32Array(graph.weight.length).fill(-1);
  for (let f = 0; f < fronts; f++) {
    const vertices: number[] = [];
    const meet = (v: number) => {
      if (seenBy[v] === f || firstPlace[v] < pivotStart[f + 1]) return;
      seenBy[v] = f;
      vertices.push(v);
    };
    for (let own = tree.start[f]; own < tree.start[f + 1]; own++) {
      const v = tree.vertex[own];
      for (let at = graph.start[v]; at < graph.start[v + 1]; at++) meet(graph.neighbour[at]);
    }
    for (const v of inherited[f]) meet(v);
    vertices.sort((a, b) => firstPlace[a] - firstPlace[b]);
    for (const v of vertices) {
      for (let dof = 0; dof < graph.weight[v]; dof++) border.push(firstPlace[v] + dof);
    }
    borderStart[f + 1] = border.length;
    if (tree.parent[f] >= 0) for (const v of vertices) inherited[tree.parent[f]].push(v);
  }
  return { borderStart, border: Int32Array.from(border) };
}

/** Row in a front of any place, while that front is loaded. */
function loadRows(
  rowOf: Int32Array,
  f: number,
  pivotStart: Int32Array,
  borderStart: Int32Array,
  border: Int32Array,
): number {
  const pivots = pivotStart[f + 1] - pivotStart[f];
  for (let k = 0; k < pivots; k++) rowOf[pivotStart[f] + k] = k;
  for (let at = borderStart[f]; at < borderStart[f + 1]; at++)
    rowOf[border[at]] = pivots + at - borderStart[f];
  return pivots + borderStart[f + 1] - borderStart[f];
}

function rowsInParent(
  parent: Int32Array,
  pivotStart: Int32Array,
  borderStart: Int32Array,
  border: Int32Array,
): Int32Array {
  const rowOf = new Int32Array(pivotStart[parent.length]);
  const rows = new Int32Array(border.length);
  for (let f = 0; f < parent.length; f++) {
    if (parent[f] < 0) continue;
    loadRows(rowOf, parent[f], pivotStart, borderStart, border);
    for (let at = borderStart[f]; at < borderStart[f + 1]; at++) rows[at] = rowOf[border[at]];
  }
  return rows;
}

/** Each entry goes into the panel of the front that eliminates the earlier of its two unknowns. */
function entriesInPanels(
  { size, columnStart, row }: SymmetricPattern,
  place: Int32Array,
  pivotStart: Int32Array,
  borderStart: Int32Array,
  border: Int32Array,
  panelStart: Int32Array,
): Int32Array {
  const column = new Int32Array(row.length);
  for (let j = 0; j < size; j++) column.fill(j, columnStart[j], columnStart[j + 1]);
  const earlier = (at: number) => Math.min(place[row[at]], place[column[at]]);
  const { start, entry } = sortedBy(earlier, row.length, size);
  const entryTo = new Int32Array(row.length);
  const rowOf = new Int32Array(size);
  for (let f = 0; f + 1 < pivotStart.length; f++) {
    const stride = strideOf(loadRows(rowOf, f, pivotStart, borderStart, border));
    for (let n = start[pivotStart[f]]; n < start[pivotStart[f + 1]]; n++) {
      const [a, b] = [rowOf[place[row[entry[n]]]], rowOf[place[column[entry[n]]]]];
      entryTo[entry[n]] = panelStart[f] + Math.min(a, b) * stride + Math.max(a, b);
    }
  }
  return entryTo;
}

/** Entries by ascending key: those of key k are entry[start[k]] … entry[start[k + 1] − 1]. */
function sortedBy(key: (at: number) => number, entries: number, keys: number) {
  const start = new Int32Array(keys + 1);
  for (let at = 0; at < entries; at++) start[key(at) + 1]++;
  for (let k = 0; k < keys; k++) start[k + 1] += start[k];
  const next = start.slice(0, keys);
  const entry = new Int32Array(entries);
  for (let at = 0; at < entries; at++) entry[next[key(at)]++] = at;
  return { start, entry };
}

/**
 * Where panels and updates lie. An update must outlive the assembly of its parent, and no longer: those of even depth
 * pile up from the bottom of the workspace, those of odd depth hang from its top, so nothing is ever moved.
 */
function storage({
  pivotStart,
  borderStart,
  parent,
}: Pick<Symbolic, 'pivotStart' | 'borderStart' | 'parent'>) {
  const fronts = parent.length;
  const panelStart = new Int32Array(fronts + 1);
  const odd = new Uint8Array(fronts);
  for (let f = fronts - 1; f >= 0; f--) odd[f] = parent[f] < 0 ? 0 : 1 - odd[parent[f]];
  const updateStart = new Int32Array(fronts);
  const height = [0, 0];
  const childrenFrom = new Int32Array(fronts).fill(-1);
  let [workspaceSize, largestPanel] = [0, 0];
  for (let f = 0; f < fronts; f++) {
    const pivots = pivotStart[f + 1] - pivotStart[f];
    const left = borderStart[f + 1] - borderStart[f];
    const panel = pivots * strideOf(pivots + left);
    panelStart[f + 1] = panelStart[f] + panel;
    largestPanel = Math.max(largestPanel, panel);
    const own = odd[f];
    const base = height[own];
    height[own] += left * strideOf(left);
    updateStart[f] = own ? height[own] : base;
    workspaceSize = Math.max(workspaceSize, height[0] + height[1]);
    if (childrenFrom[f] >= 0) height[1 - own] = childrenFrom[f];
    if (parent[f] < 0) height[own] = base;
    else if (childrenFrom[parent[f]] < 0) childrenFrom[parent[f]] = base;
  }
  for (let f = 0; f < fronts; f++) if (odd[f]) updateStart[f] = workspaceSize - updateStart[f];
  return { panelStart, largestPanel, updateStart, workspaceSize };
}
