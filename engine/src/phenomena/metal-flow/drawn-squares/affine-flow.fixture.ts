import type { Random } from '../../../numerics/random.ts';
import { copies, loopArea, onLineX, onLineY, type QuadMesh, skin } from '../quad-mesh.ts';
import type { FlowSection, FlowSolution, FlowStep } from '../solution.ts';

/** dx/dt = xx x + xy y, dy/dt = yx x + yy y; 1/s. With symmetry only xx and yy may differ from 0. */
export interface Rates {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
}

export interface AffineFlow {
  readonly rates: Rates;
  /** s that each slice lasts. */
  readonly duration: number;
  readonly slices: number;
  /** Given, nodes slide over the steel after each slice, as where a mesh is mended; corners stay. */
  readonly sliding?: Random;
}

/** A pass in which every slice does the same to all of the section: where any point ends is known exactly. */
export function affineFlow(mesh: QuadMesh, { rates, duration, slices, sliding }: AffineFlow): FlowSolution {
  const sections: FlowSection[] = [];
  const steps: FlowStep[] = [];
  const area = (xy: Float64Array): number => copies(mesh.symmetry) * loopArea(mesh.loop, xy);
  let xy: Float64Array = Float64Array.from(mesh.xy);
  const flow = area(xy);
  for (let i = 0; i <= slices; i++) {
    const section = { distance: 0, xy, area: area(xy), speed: flow / area(xy), pull: 0, temperature: [] };
    sections.push(section);
    if (i === slices) break;
    const velocity = velocityAt(xy, rates);
    xy = xy.map((place, at) => place + duration * velocity[at]);
    if (sliding) slide(mesh, xy, sliding);
    const length = (duration * (section.speed + flow / area(xy))) / 2;
    steps.push({
      length,
      velocity,
      excess: new Float64Array(xy.length / 2),
      rate: [],
      flowStress: [],
      shearShare: [],
      contact: noContact,
    });
  }
  return { ...nothingElse, mesh, sections, steps, elongation: flow / area(xy) };
}

/** Where a point goes in the whole pass. */
export function affineMap({ rates, duration, slices }: AffineFlow, x: number, y: number): [number, number] {
  let place: [number, number] = [x, y];
  for (let i = 0; i < slices; i++) {
    const [px, py] = place;
    place = [
      px + duration * (rates.xx * px + rates.xy * py),
      py + duration * (rates.yx * px + rates.yy * py),
    ];
  }
  return place;
}

function velocityAt(xy: Float64Array, { xx, xy: sheared, yx, yy }: Rates): Float64Array {
  return xy.map((value, at) =>
    at % 2 === 0 ? xx * value + sheared * xy[at + 1] : yx * xy[at - 1] + yy * value,
  );
}

/** Inner nodes by a share of the way to a neighbour, nodes of straight stretches of the loop along it. */
function slide({ quads, loop }: QuadMesh, xy: Float64Array, random: Random): void {
  const onLoop = new Set(loop);
  for (let at = 0; at < quads.length; at++) {
    if (!onLoop.has(quads[at])) towards(xy, quads[at], quads[(at & ~3) | ((at + 1) & 3)], 0.05 * random());
  }
  for (let i = 0; i < loop.length; i++) {
    const [a, b, c] = [loop[i], loop[(i + 1) % loop.length], loop[(i + 2) % loop.length]];
    const [ux, uy] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
    const [wx, wy] = [xy[2 * c] - xy[2 * b], xy[2 * c + 1] - xy[2 * b + 1]];
    if (Math.abs(ux * wy - uy * wx) < 1e-9 * Math.hypot(ux, uy) * Math.hypot(wx, wy)) towards(xy, b, c, 0.1);
  }
}

function towards(xy: Float64Array, node: number, other: number, share: number): void {
  for (const i of [0, 1]) xy[2 * node + i] += share * (xy[2 * other + i] - xy[2 * node + i]);
}

/** A square of `across` × `across` elements, or the quarter of it right of and above its lines of symmetry; m. */
export function squareMesh(side: number, across: number, quarter = false): QuadMesh {
  const [low, n] = [quarter ? 0 : -side / 2, across + 1];
  const place = (i: number): number => low + ((side / 2 - low) * i) / across;
  const xy = Float64Array.from({ length: 2 * n * n }, (_, at) =>
    place(at % 2 === 0 ? (at >> 1) % n : Math.floor((at >> 1) / n)),
  );
  const corner = (c: number, r: number): number[] => [
    r * n + c,
    r * n + c + 1,
    (r + 1) * n + c + 1,
    (r + 1) * n + c,
  ];
  const cells = Array.from({ length: across * across }, (_, k) => corner(k % across, Math.floor(k / across)));
  const run = Array.from({ length: across }, (_, i) => i);
  const loop = [
    ...run,
    ...run.map((i) => i * n + across),
    ...run.map((i) => n * n - 1 - i),
    ...run.map((i) => (across - i) * n),
  ];
  const sides = quarter ? [onLineY, skin, skin, onLineX] : [skin, skin, skin, skin];
  return {
    xy,
    quads: Int32Array.from(cells.flat()),
    loop: Int32Array.from(loop),
    lies: Int32Array.from(loop, (_, i) => sides[Math.floor(i / across)]),
    symmetry: quarter ? { x: 0, y: 0 } : {},
  };
}

const noContact = { node: [], roll: [], force: [], pressure: [], friction: [], slip: [] };

const nothingElse = {
  rolls: [],
  forwardSlip: 0,
  entrySpeed: 1,
  exitSpeed: 1,
  temperature: [],
  strain: [],
  heat: [],
  bending: { momentX: 0, momentY: 0 },
  energy: { rolls: 0, tension: 0, plastic: 0, friction: 0, error: 0 },
  quality: {
    nodes: 0,
    slices: 0,
    marches: 0,
    rejected: 0,
    restarts: 0,
    flowChange: 0,
    pullChange: 0,
    areaChange: 0,
    warpingChange: 0,
    volumeDrift: 0,
    largestShear: 0,
  },
};
