import { expect, test } from 'vitest';
import { seededRandom } from '../../../numerics/random.ts';
import { contactsFor } from '../contact.ts';
import { geometryFor, measureElements } from '../element-geometry.ts';
import { evenMesh } from '../even-mesh.fixture.ts';
import { gridOf } from '../grid.ts';
import { sliceRoom } from '../slice.ts';
import type { SliceTask } from '../slice-problem.ts';
import { touchingOf } from '../touching.ts';
import { potential, viscousFor } from '../viscous.ts';
import { warp, warpingFor } from '../warping.ts';
import { warpingModes } from '../warping-modes.ts';
import { type ChainLink, linkRoom } from './link.ts';
import { addElements } from './link-elements.ts';
import { linkLayout } from './link-layout.ts';
import { addNodes } from './link-nodes.ts';

const mesh = evenMesh({ width: 0.08, height: 0.05, columns: 4, rows: 3, distortion: 0.2 });
const grid = gridOf(mesh);
const geometry = geometryFor(grid);
measureElements(grid, mesh.xy, geometry);
const [n, length, spacing, modes] = [mesh.xy.length, 0.01, 0.012, 2];
const layout = linkLayout(modes);
const random = seededRandom(7);
const field = (size: number, scale: number) =>
  Float64Array.from({ length: size }, () => scale * (2 * random() - 1));
const shapes = field(layout.shapes * n, 1);
const before = field(layout.shapes * n, 1);
const [velocity, upstream] = [field(n, 0.1), field(n, 0.1)];
const coupling = field(n / 2, 1e5).map(Math.abs);
const along = 3;
const motion = { speed: 2, duration: length / 2, length };

/** The slice after its unknowns, as they stand in a link, have changed. */
function sliceAfter(change: Float64Array) {
  const flow = viscousFor(grid, geometry);
  flow.strength.fill(1e8);
  flow.exponent.fill(0.15);
  flow.bulk = 1e9;
  flow.floor = 1e-4;
  flow.softening = 1;
  flow.shear = 1 / spacing ** 2;
  const warping = warpingFor(grid, modes);
  warpingModes(grid, mesh.xy, modes).forEach((mode, m) => {
    warping.modes[m].set(mode);
  });
  const amplitudes = Array.from({ length: modes }, (_, l) =>
    Float64Array.of(0.05 + change[layout.entering + l], -0.02 + change[layout.leaving + l]),
  );
  warp(grid, geometry, amplitudes, 0, motion, new Float64Array(n), warping);
  flow.stretch.set(warping.stretch);
  const moved = (from: Float64Array, by: Float64Array, first: number) =>
    from.map((value, i) => {
      let sum = value;
      for (let a = 0; a < layout.shapes; a++) sum += change[first + a] * by[a * n + i];
      return sum;
    });
  const now = moved(velocity, shapes, layout.own);
  const came = moved(upstream, before, layout.before);
  for (let i = 0; i < n; i++) flow.before[i] = came[i] - spacing * warping.entering[i];
  return { flow, warping, velocity: now, along: along + change[layout.along] };
}

const room = sliceRoom(grid);
const drag = 1e3;

/** Π and what drag and the straight bar behind take. */
function potentialAfter(change: Float64Array): number {
  const { flow, velocity: v, along: e } = sliceAfter(change);
  let held = 0;
  v.forEach((value, i) => {
    held += ((drag + coupling[i >> 1]) * value * value) / 2;
  });
  return potential(flow, v, e, room.element) + held;
}

function linkAfter(change: Float64Array): ChainLink {
  const slice = sliceAfter(change);
  const { flow } = slice;
  potential(flow, slice.velocity, slice.along, room.element);
  const hold = new Float64Array(n / 2);
  for (let at = 0; at < mesh.quads.length; at++) {
    const k = at >> 2;
    const first = (flow.strength[k] * flow.rateSquared[k] ** ((flow.exponent[k] - 1) / 2)) / 2;
    hold[mesh.quads[at]] += geometry.area[k] * first;
  }
  const contacts = contactsFor(grid, 1);
  const task: SliceTask = {
    ...{ flow, contacts, turning: new Float64Array(1), friction: [0], shearLimit: [1], pull: 0, speed: 2 },
    ...{
      stiffness: 1,
      fade: 0.01,
      drag,
      coupling,
      target: new Float64Array(n),
      isCold: false,
      tolerance: 1,
      keepsContacts: false,
    },
  };
  const link: ChainLink = {
    ...{ layout, length, shapes, before },
    slope: new Float64Array(layout.size),
    curvature: new Float64Array(layout.size ** 2),
  };
  const touching = touchingOf(task, slice.velocity);
  const solved = { ...slice, task, room, was: velocity, touching, hold, length, isLast: true };
  const linking = linkRoom(layout, n);
  addElements(solved, link, linking);
  addNodes(solved, link, linking);
  return link;
}

const start = new Float64Array(layout.size);
const after = (unknown: number, by: number) => start.map((value, i) => (i === unknown ? value + by : value));
/** The even rate of the slice before is no unknown of this one. */
const unknowns = Array.from({ length: layout.size }, (_, i) => i).filter((i) => i !== layout.block - 1);
const small = 1e-4;

test('its slope is that of the potential', () => {
  const { slope } = linkAfter(start);
  for (const i of unknowns) {
    const wanted = (potentialAfter(after(i, small)) - potentialAfter(after(i, -small))) / (2 * small);
    expect(Math.abs(slope[i] / wanted - 1), `unknown ${i}`).toBeLessThan(1e-5);
  }
});

test('its curvature is that of the slope, column by column', () => {
  const { curvature } = linkAfter(start);
  const size = Math.max(...curvature);
  for (const j of unknowns) {
    const [up, down] = [linkAfter(after(j, small)), linkAfter(after(j, -small))];
    for (const i of unknowns.filter((each) => each >= j)) {
      const wanted = (up.slope[i] - down.slope[i]) / (2 * small);
      expect(Math.abs(curvature[i * layout.size + j] - wanted) / size, `${i}, ${j}`).toBeLessThan(1e-6);
    }
  }
});
