import type { SymmetricPattern } from './pattern.ts';

/**
 * Which vertices of a symmetric matrix touch. Vertex v touches neighbour[start[v]] … neighbour[start[v + 1] − 1],
 * itself left out, and stands for weight[v] unknowns.
 */
export interface Graph {
  readonly start: Int32Array;
  readonly neighbour: Int32Array;
  readonly weight: Int32Array;
}

/** Unknowns that touch exactly the same others, gathered: all degrees of freedom of one node, as a rule. */
export interface Grouping {
  readonly graph: Graph;
  /** The vertex of each unknown. */
  readonly vertexOf: Int32Array;
}

/** The graph of a pattern, one vertex per unknown. */
export function graphOf({ size, columnStart, row }: SymmetricPattern): Graph {
  const start = new Int32Array(size + 1);
  for (let column = 0; column < size; column++) {
    for (let at = columnStart[column] + 1; at < columnStart[column + 1]; at++) {
      start[column + 1]++;
      start[row[at] + 1]++;
    }
  }
  for (let v = 0; v < size; v++) start[v + 1] += start[v];
  const neighbour = new Int32Array(start[size]);
  const next = start.slice(0, size);
  for (let column = 0; column < size; column++) {
    for (let at = columnStart[column] + 1; at < columnStart[column + 1]; at++) {
      neighbour[next[column]++] = row[at];
      neighbour[next[row[at]]++] = column;
    }
  }
  return { start, neighbour, weight: new Int32Array(size).fill(1) };
}

/** Gathers indistinguishable vertices, so that they are ordered side by side and cost one vertex in the search. */
export function grouped(graph: Graph): Grouping {
  const size = graph.weight.length;
  const leader = leaders(graph);
  const vertexOf = new Int32Array(size);
  const members: number[] = [];
  for (let v = 0; v < size; v++) {
    if (leader[v] === v) members.push(v);
    vertexOf[v] = leader[v] === v ? members.length - 1 : vertexOf[leader[v]];
  }
  const weight = new Int32Array(members.length);
  for (let v = 0; v < size; v++) weight[vertexOf[v]] += graph.weight[v];
  const start = new Int32Array(members.length + 1);
  const found: number[] = [];
  members.forEach((v, vertex) => {
    for (let at = graph.start[v]; at < graph.start[v + 1]; at++) {
      const other = graph.neighbour[at];
      if (leader[other] === other && other !== v) found.push(vertexOf[other]);
    }
    start[vertex + 1] = found.length;
  });
  return { graph: { start, neighbour: Int32Array.from(found), weight }, vertexOf };
}

/** For each vertex the lowest one with the same closed neighbourhood. */
function leaders({ start, neighbour }: Graph): Int32Array {
  const size = start.length - 1;
  const leader = Int32Array.from({ length: size }, (_, v) => v);
  const sum = new Float64Array(size);
  for (let v = 0; v < size; v++) {
    sum[v] = v;
    for (let at = start[v]; at < start[v + 1]; at++) sum[v] += neighbour[at];
  }
  const mark = new Int32Array(size).fill(-1);
  for (let v = 0; v < size; v++) {
    if (leader[v] !== v) continue;
    for (let at = start[v]; at < start[v + 1]; at++) mark[neighbour[at]] = v;
    mark[v] = v;
    for (let at = start[v]; at < start[v + 1]; at++) {
      const w = neighbour[at];
      const isLike = w > v && sum[w] === sum[v] && start[w + 1] - start[w] === start[v + 1] - start[v];
      if (isLike && isWithin(w, v)) leader[w] = v;
    }
  }
  return leader;

  function isWithin(w: number, v: number): boolean {
    for (let at = start[w]; at < start[w + 1]; at++) if (mark[neighbour[at]] !== v) return false;
    return true;
  }
}
