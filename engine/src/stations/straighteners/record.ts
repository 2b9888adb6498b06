import { z } from 'zod';
import { recordShape } from '../../bar/station.ts';
import { group, quantities, quantity } from '../../units/group.ts';

/** One roller and the section that stands at it. */
export const RollerRecord = group({
  number: z.number().int(),
  position: quantity('m', 'Distance from roller 1', 0, 50),
  offset: quantity('mm', 'Offset, pressing on the bar', -60, 60),
  touches: z.boolean(),
  force: quantity('kN', 'Force on the bar', -1e5, 1e5),
  moment: quantity('one', 'Bending moment in units of first yield', -10, 10),
  plastified: quantity('one', 'Share of the height (width) past first yield here', 0, 1),
  /** Change of the sag that leaves for 0.1 mm more offset; the slope that advice is computed from. */
  sensitivity: quantity('mm', 'Flatness on the long base for 0.1 mm more offset', -100, 100),
});
export type RollerRecord = z.output<typeof RollerRecord>;

/** One machine as computed. Rows share `along`. Curvature: head (or right side) longer positive. */
export const MachineRecord = group({
  firstYieldMoment: quantity('kNm', 'Moment at first yield', 0, 1e4),
  firstYieldCurvature: quantity('perKm', 'Curvature at first yield', 0, 1e3),
  rollers: z.array(RollerRecord),
  along: quantities('m', 'Distance from roller 1', 0, 50),
  moment: quantities('one', 'Bending moment in units of first yield', -10, 10),
  curvature: quantities('perKm', 'Curvature', -1e3, 1e3),
  /** Depth past first yield from each edge in units of the section's height (width). */
  yieldedUpper: quantities('one', 'Yielded from the head (right side)', 0, 1),
  yieldedLower: quantities('one', 'Yielded from the foot (left side)', 0, 1),
  curvatureIn: quantity('perKm', 'Curvature coming in', -200, 200),
  curvatureOut: quantity('perKm', 'Curvature leaving', -200, 200),
  curvatureOutLow: quantity('perKm', 'Curvature leaving, lowest over the spread', -200, 200),
  curvatureOutHigh: quantity('perKm', 'Curvature leaving, highest over the spread', -200, 200),
  power: quantity('kW', 'Power into bending', 0, 1e5),
  unstraightenedEnd: quantity('m', 'Length at each end that stays as it came', 0, 50),
  iterations: z.number().int(),
  residual: quantity('um', 'Largest miss of a roller position', 0, 1e3),
});
export type MachineRecord = z.output<typeof MachineRecord>;

/** What happened in the straighteners. Stress is the bending part only: roller contact is not in the model. */
export const StraightenersRecord = group({
  kind: z.literal('straighteners'),
  ...recordShape,
  height: MachineRecord,
  side: MachineRecord,
  /** Sag over a straightedge of the base length, κ L²/8, after both machines; worst over the spread. */
  flatness3m: quantity('mm', 'Vertical, on 3 m', 0, 1e3),
  flatness1m: quantity('mm', 'Vertical, on 1 m', 0, 1e3),
  flatnessSide: quantity('mm', 'Horizontal, on 1.5 m', 0, 1e3),
  heightCurvature: quantity('perKm', 'Curvature after both machines, height plane', -200, 200),
  heightLow: quantity('perKm', 'Height plane, lowest over the spread', -200, 200),
  heightHigh: quantity('perKm', 'Height plane, highest over the spread', -200, 200),
  sideCurvature: quantity('perKm', 'Curvature after both machines, side plane', -200, 200),
  sideLow: quantity('perKm', 'Side plane, lowest over the spread', -200, 200),
  sideHigh: quantity('perKm', 'Side plane, highest over the spread', -200, 200),
  nodeX: quantities('mm', 'Nodes, across', -500, 500),
  nodeY: quantities('mm', 'Nodes, up', -500, 500),
  triangles: z.array(z.number().int()).meta({ title: 'Three nodes per triangle' }),
  stress: quantities('MPa', 'Stress along the rail, bending part only', -2000, 2000),
  footStress: quantity('MPa', 'Centre of the foot underside, bending part only', -2000, 2000),
  headStress: quantity('MPa', 'Crown, bending part only', -2000, 2000),
});
export type StraightenersRecord = z.output<typeof StraightenersRecord>;
