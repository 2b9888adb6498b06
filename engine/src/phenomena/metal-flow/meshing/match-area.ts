import type { Field, Indices } from '../../../outcome/field.ts';
import { loopArea, onLineX, skin } from '../quad-mesh.ts';

/**
 * Moves the skin along its normals by one common distance until the loop encloses the wanted area, m², to round-off:
 * what chords cut off arcs is given back evenly. Corners move along both normals, nodes on lines of symmetry along their
 * line. Returns the distance, m, outwards positive.
 */
export function matchArea(xy: Float64Array, loop: Indices, lies: Indices, wanted: number): number {
  const ways = skinWays(xy, loop, lies);
  let moved = 0;
  for (let step = 0; step < 8; step++) {
    const missing = wanted - loopArea(loop, xy);
    if (Math.abs(missing) <= 2e-16 * wanted) break;
    const distance = missing / growthOf(xy, loop, ways);
    for (let i = 0; i < loop.length; i++) {
      xy[2 * loop[i]] += distance * ways[2 * i];
      xy[2 * loop[i] + 1] += distance * ways[2 * i + 1];
    }
    moved += distance;
  }
  return moved;
}

/** Area gained per distance moved, m. */
function growthOf(xy: Field, loop: Indices, ways: Field): number {
  let twice = 0;
  const n = loop.length;
  for (let i = 0; i < n; i++) {
    const [before, after] = [2 * loop[(i + n - 1) % n], 2 * loop[(i + 1) % n]];
    twice += ways[2 * i] * (xy[after + 1] - xy[before + 1]) - ways[2 * i + 1] * (xy[after] - xy[before]);
  }
  return twice / 2;
}

/** How each node of the loop moves when the skin edges beside it move out by 1, two numbers per node. */
function skinWays(xy: Field, loop: Indices, lies: Indices): Float64Array {
  const n = loop.length;
  const ways = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const before = (i + n - 1) % n;
    const [from, to] = [lies[before], lies[i]];
    const [p, q] = [normalOf(xy, loop, before), normalOf(xy, loop, i)];
    if (from === skin && to === skin) ways.set(alongBoth(p, q), 2 * i);
    else if (from === skin) ways.set(alongLine(p, to), 2 * i);
    else if (to === skin) ways.set(alongLine(q, from), 2 * i);
  }
  return ways;
}

type Vector = readonly [x: number, y: number];

function normalOf(xy: Field, loop: Indices, i: number): Vector {
  const [a, b] = [2 * loop[i], 2 * loop[(i + 1) % loop.length]];
  const [dx, dy] = [xy[b] - xy[a], xy[b + 1] - xy[a + 1]];
  const length = Math.hypot(dx, dy);
  return [dy / length, -dx / length];
}

/** No node moves more than this many times the common distance: a tip would run away. */
const farthest = 3;

const alongBoth = ([px, py]: Vector, [qx, qy]: Vector): Vector => {
  const share = Math.max(1 + px * qx + py * qy, 2 / farthest ** 2);
  return [(px + qx) / share, (py + qy) / share];
};

/** Nodes on an upright line move up or down, on a level one left or right. */
const alongLine = ([x, y]: Vector, line: number): Vector =>
  line === onLineX ? [0, stretched(y)] : [stretched(x), 0];

const stretched = (part: number): number =>
  Math.abs(part) < 1 / farthest ? farthest * Math.sign(part) : 1 / part;
