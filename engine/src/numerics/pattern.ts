import type { Indices } from '../outcome/field.ts';

/**
 * Where a symmetric sparse matrix may hold entries: its lower triangle, column after column.
 * Column j owns the entries columnStart[j] … columnStart[j + 1] − 1; the diagonal comes first, rows ascend.
 */
export interface SymmetricPattern {
  readonly size: number;
  readonly columnStart: Int32Array;
  readonly row: Int32Array;
}

/** A pattern and where each element adds to it. */
export interface ElementMap {
  readonly pattern: SymmetricPattern;
  /**
   * With k = perElement · dofsPerNode local unknowns: slot[e·k² + i·k + j] is the place of local (i, j) in the
   * value array. (i, j) and (j, i) share it, so assembly adds one triangle: j ≤ i.
   */
  readonly slot: Int32Array;
}

/**
 * The pattern of a matrix assembled from elements.
 *
 * size         unknowns in all; node n carries the unknowns n·dofsPerNode … n·dofsPerNode + dofsPerNode − 1.
 * elements     node numbers, perElement for each element; a number outside the nodes throws.
 * Nodes without an element keep a diagonal entry.
 */
export function patternOfElements(
  size: number,
  elements: Indices,
  perElement: number,
  dofsPerNode = 1,
): ElementMap {
  const nodes = size / dofsPerNode;
  const visits = elementsOfNodes(nodes, elements);
  const graph = laterNeighbours(nodes, elements, perElement, visits);
  const columnStart = expandedStarts(graph, dofsPerNode);
  const row = expandedRows(graph, dofsPerNode, columnStart);
  const slot = slots(graph, elements, perElement, dofsPerNode, columnStart, visits);
  return { pattern: { size, columnStart, row }, slot };
}

/** Ragged rows of whole numbers: row n owns item[start[n]] … item[start[n + 1] − 1]. */
interface Rows {
  readonly start: Int32Array;
  readonly item: Int32Array;
}

/** For each node, where it stands in `elements`. */
function elementsOfNodes(nodes: number, elements: Indices): Rows {
  const start = new Int32Array(nodes + 1);
  for (let at = 0; at < elements.length; at++) {
    const node = elements[at];
    if (!(node >= 0 && node < nodes)) throw new RangeError(`element node ${node} outside 0 … ${nodes - 1}`);
    start[node + 1]++;
  }
  for (let n = 0; n < nodes; n++) start[n + 1] += start[n];
  const next = start.slice(0, nodes);
  const item = new Int32Array(elements.length);
  for (let at = 0; at < elements.length; at++) item[next[elements[at]]++] = at;
  return { start, item };
}

/** For each node its neighbours with a higher number, ascending. */
function laterNeighbours(nodes: number, elements: Indices, perElement: number, visits: Rows): Rows {
  const start = new Int32Array(nodes + 1);
  const seenBy = new Int32Array(nodes).fill(-1);
  const found: number[] = [];
  for (let node = 0; node < nodes; node++) {
    const mine: number[] = [];
    for (let v = visits.start[node]; v < visits.start[node + 1]; v++) {
      const first = visits.item[v] - (visits.item[v] % perElement);
      for (let at = first; at < first + perElement; at++) {
        const other = elements[at];
        if (other <= node || seenBy[other] === node) continue;
        seenBy[other] = node;
        mine.push(other);
      }
    }
    mine.sort((a, b) => a - b);
    for (const other of mine) found.push(other);
    start[node + 1] = found.length;
  }
  return { start, item: Int32Array.from(found) };
}

function expandedStarts({ start }: Rows, dofs: number): Int32Array {
  const nodes = start.length - 1;
  const columnStart = new Int32Array(nodes * dofs + 1);
  for (let column = 0; column < nodes * dofs; column++) {
    const node = Math.floor(column / dofs);
    const below = dofs * (start[node + 1] - start[node]);
    columnStart[column + 1] = columnStart[column] + dofs - (column % dofs) + below;
  }
  return columnStart;
}

function expandedRows({ start, item }: Rows, dofs: number, columnStart: Int32Array): Int32Array {
  const columns = columnStart.length - 1;
  const row = new Int32Array(columnStart[columns]);
  for (let column = 0; column < columns; column++) {
    const node = Math.floor(column / dofs);
    let at = columnStart[column];
    for (let own = column; own < (node + 1) * dofs; own++) row[at++] = own;
    for (let n = start[node]; n < start[node + 1]; n++) {
      for (let dof = 0; dof < dofs; dof++) row[at++] = item[n] * dofs + dof;
    }
  }
  return row;
}

function slots(
  { start, item }: Rows,
  elements: Indices,
  perElement: number,
  dofs: number,
  columnStart: Int32Array,
  visits: Rows,
): Int32Array {
  const k = perElement * dofs;
  const slot = new Int32Array((elements.length / perElement) * k * k);
  const rank = new Int32Array(start.length - 1);
  for (let node = 0; node < rank.length; node++) {
    for (let n = start[node]; n < start[node + 1]; n++) rank[item[n]] = n - start[node];
    for (let v = visits.start[node]; v < visits.start[node + 1]; v++) {
      const local = visits.item[v] % perElement;
      const first = visits.item[v] - local;
      const block = (first / perElement) * k * k;
      for (let other = 0; other < perElement; other++) {
        const neighbour = elements[first + other];
        if (neighbour < node) continue;
        for (let c = 0; c < dofs; c++) {
          for (let d = 0; d < dofs; d++) {
            const column = columnStart[node * dofs + (neighbour === node ? Math.min(c, d) : c)];
            const below = neighbour === node ? Math.abs(d - c) : dofs - c + dofs * rank[neighbour] + d;
            const [i, j] = [local * dofs + c, other * dofs + d];
            slot[block + i * k + j] = column + below;
            slot[block + j * k + i] = column + below;
          }
        }
      }
    }
  }
  return slot;
}
