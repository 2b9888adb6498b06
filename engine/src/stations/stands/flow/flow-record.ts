import { z } from 'zod';
import { group, optionalQuantity, quantities, quantity } from '../../../units/group.ts';

const RollLoad = group({
  name: z.string(),
  force: quantity('kN', 'Separating force', -1e6, 1e6),
  lateral: quantity('kN', 'Force along the roll, on the computed side', -1e6, 1e6),
  torque: quantity('kNm', 'Torque', -1e5, 1e5),
  power: quantity('kW', 'Power', -1e6, 1e6),
  turning: quantity('rpm', 'Turning', -5000, 5000),
  contactArea: quantity('mm2', 'Contact', 0, 1e7),
  contactLength: quantity('mm', 'Longest line of contact', 0, 2000),
  meanPressure: quantity('MPa', 'Mean pressure', -1e4, 1e4),
  highestPressure: quantity('MPa', 'Highest pressure', -1e4, 1e5),
  neutralLine: optionalQuantity('mm', 'Neutral line before the exit plane', 0, 2000),
});

/** Where the power comes from and where it goes; the difference is the model's own error. */
const Power = group({
  rolls: quantity('kW', 'From all rolls', -1e6, 1e6),
  tension: quantity('kW', 'From the pulls', -1e6, 1e6),
  plastic: quantity('kW', 'Into the section', 0, 1e6),
  friction: quantity('kW', 'Into the skin of bar and rolls', -1e6, 1e6),
});

const ElementAreas = group({
  name: z.enum(['bar', 'foot', 'web', 'head']),
  entryArea: quantity('mm2', 'Entry', 0, 1e6),
  exitArea: quantity('mm2', 'Exit', 0, 1e6),
});

const MisfitRecord = group({
  kind: z.enum(['over', 'under']).meta({ title: 'Metal past the groove, or a hollow left in it' }),
  x: quantity('mm', 'Where it is greatest, along the rolls', -2000, 2000),
  y: quantity('mm', 'Where it is greatest, half height', 0, 2000),
  depth: quantity('mm', 'How far', 0, 2000),
  area: quantity('mm2', 'Both halves', 0, 1e6),
});

/** The bar inside the bite at one place, for a picture in space: its skin, and the pressure on each of its points. */
const BiteSection = group({
  distance: quantity('mm', 'Before the exit plane', -2000, 4000),
  x: quantities('mm', 'Skin of the computed part, along the rolls', -2000, 2000),
  y: quantities('mm', 'Skin of the computed part, across the gap', -2000, 2000),
  pressure: quantities('MPa', 'Pressure of the rolls on each point', -1e4, 1e5),
});

/** What metal flow says of a pass, beside what any pass records. */
export const FlowRecord = group({
  steel: z.string(),
  nodes: z.int(),
  slices: z.int(),
  marches: z.int(),
  /** Attempts and marches thrown away: 0 in a sound design. */
  restarts: z.int(),
  rejected: z.int(),
  energyError: quantity('percent', 'Power in less power used, over power in', -100, 100),
  volumeDrift: quantity('percent', 'Drift of the volume, over the elongation', -1000, 1000),
  largestShear: quantity('one', 'Largest axial shear over the shear yield stress', 0, 100),
  entrySpeed: quantity('mPerS', 'Bar, entering', 0, 100),
  exitSpeed: quantity('mPerS', 'Bar, leaving', 0, 100),
  rollSpeed: quantity('mPerS', 'Roll speed that takes what the stand before feeds, as it is set', 0, 100),
  entryTension: quantity('MPa', 'Pull on the bar before the rolls', -100, 200),
  exitTension: quantity('MPa', 'Pull on the bar behind the rolls', -100, 200),
  power: Power,
  bending: quantity('kNm', 'Moment that keeps the bar straight, in the plane of the roll axes', -1e5, 1e5),
  meanStrain: quantity('one', 'Mean strain on leaving', 0, 100),
  largestStrain: quantity('one', 'Largest strain on leaving', 0, 1000),
  rolls: z.array(RollLoad),
  elements: z.array(ElementAreas),
  /** Where the leaving bar and the groove do not fit each other, largest first. */
  misfits: z.array(MisfitRecord),
  /** The same pass by the handbook, side by side. */
  handbook: group({
    force: quantity('kN', 'Force, horizontal rolls', 0, 1e6),
    footForce: quantity('kN', 'Force, foot roll', 0, 1e6),
    headForce: quantity('kN', 'Force, head roll', 0, 1e6),
    torque: quantity('kNm', 'Torque, each roll', -1e5, 1e5),
    elongation: quantity('one', 'Elongation', 0.1, 10),
    width: quantity('mm', 'Width, leaving', 0, 3000),
  }),
  sections: z.array(BiteSection),
});
export type FlowRecord = z.output<typeof FlowRecord>;
