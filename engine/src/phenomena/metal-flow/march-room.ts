import { type AxialShear, axialShearFor } from './axial-shear.ts';
import type { Bite } from './bite.ts';
import { type HeatRoom, heatRoom } from './bite-heat.ts';
import { type LinkRoom, linkRoom } from './chain/link.ts';
import { type Contacts, contactsFor, type Outlines, outlinesFor } from './contact.ts';
import { type ElementGeometry, geometryFor } from './element-geometry.ts';
import { type Relax, relaxer } from './meshing/smoothing.ts';
import { type SliceRoom, sliceRoom } from './slice.ts';
import type { SliceTask } from './slice-problem.ts';
import { viscousFor } from './viscous.ts';
import { type Warping, warpingFor } from './warping.ts';

/** Everything that marches through one bite share: storage, filled anew by every slice. */
export interface MarchRoom {
  readonly geometry: ElementGeometry;
  readonly task: SliceTask;
  readonly contacts: Contacts;
  readonly outlines: Outlines;
  readonly slice: SliceRoom;
  readonly shear: AxialShear;
  readonly heat: HeatRoom;
  readonly friction: Float64Array;
  readonly halfway: Float64Array;
  readonly relax: Relax;
  readonly warping: Warping;
  /** None where sections stay plane. */
  readonly linking: LinkRoom | undefined;
}

export function marchRoom({ grid, rolls, problem, scales, modes, layout }: Bite): MarchRoom {
  const geometry = geometryFor(grid);
  const contacts = contactsFor(grid, rolls.length);
  const task: SliceTask = {
    flow: viscousFor(grid, geometry),
    contacts,
    turning: new Float64Array(rolls.length),
    friction: Float64Array.from(problem.rolls, ({ friction }) => friction),
    shearLimit: Float64Array.from(problem.rolls, ({ shearLimit = 1 }) => shearLimit),
    pull: 0,
    speed: 0,
    stiffness: 1e5 * scales.viscosity,
    fade: 0.01 * scales.speed,
    drag: 1e-5 * scales.viscosity,
    coupling: new Float64Array(grid.nodes),
    target: new Float64Array(2 * grid.nodes),
    isCold: true,
    tolerance: 1,
    keepsContacts: false,
  };
  task.flow.bulk = 1e4 * scales.viscosity;
  task.flow.floor = (0.005 * scales.rate) ** 2;
  return {
    geometry,
    task,
    contacts,
    outlines: outlinesFor(rolls),
    slice: sliceRoom(grid),
    shear: axialShearFor(grid),
    heat: heatRoom(grid),
    friction: new Float64Array(grid.nodes),
    halfway: new Float64Array(2 * grid.nodes),
    relax: relaxer(grid.mesh),
    warping: warpingFor(grid, modes.length),
    linking: layout && linkRoom(layout, 2 * grid.nodes),
  };
}
