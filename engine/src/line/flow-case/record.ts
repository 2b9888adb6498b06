import { z } from 'zod';
import { FindingFile } from '../../outcome/finding.ts';
import { OutlineFile } from '../../section/outline-file.ts';
import { group, optionalQuantity, quantity } from '../../units/group.ts';
import { sides } from './case-roll.ts';
import { FlowCase } from './flow-case.ts';

const force = (title: string) => quantity('kN', title, -1e6, 1e6);
const moment = (title: string) => quantity('kNm', title, -1e5, 1e5);
const power = (title: string) => quantity('kW', title, -1e6, 1e6);
const length = (title: string) => quantity('mm', title, -1e4, 1e4);
const area = (title: string) => quantity('mm2', title, 0, 1e7);
const pressure = (title: string) => quantity('MPa', title, -1e5, 1e5);
const temperature = (title: string) => quantity('C', title, -100, 2000);
const share = (title: string) => quantity('percent', title, -1e4, 1e4);
const ratio = (title: string) => quantity('one', title, -100, 100);
const count = (title: string) => z.int().min(0).meta({ title, unit: '' });

/** The bar on one side of the bite. */
const Side = group({
  outline: OutlineFile,
  area: area('Section'),
  width: length('Along the rolls'),
  height: length('Across the gap'),
  speed: quantity('mPerS', 'Speed', 0, 100),
  temperature: temperature('Mean temperature'),
});

/** Loads of one roll, of the whole section. */
export const RollLoadsRecord = group({
  name: z.string(),
  side: z.enum(sides),
  idle: z.boolean(),
  profile: OutlineFile,
  touched: z
    .array(OutlineFile)
    .meta({ title: 'Stretches of skin that it touches at the exit, images included' }),
  force: force('Separating force'),
  lateral: force('Force along the axis'),
  torque: moment('Torque'),
  power: power('Power into the bar'),
  turning: quantity('rpm', 'Turns', -1e4, 1e4),
  contactArea: area('Contact area'),
  contactLength: length('Longest line of contact'),
  meanPressure: pressure('Mean pressure'),
  highestPressure: pressure('Highest pressure'),
  biteAngle: optionalQuantity('deg', 'Angle at which it first touches', 0, 90),
  ahead: optionalQuantity('percent', 'Pressure under which the bar runs ahead of the roll', 0, 100),
  neutralLine: optionalQuantity('mm', 'Neutral line before the exit plane', -1e3, 1e4),
});
export type RollLoadsRecord = z.output<typeof RollLoadsRecord>;

/** How full a groove between a top and a bottom roll is, from collar to collar. */
export const FillRecord = group({
  mouth: length('Width from collar to collar'),
  fill: share('Steel in the groove, of its opening'),
  fin: area('Metal beyond the mouth'),
});

const TouchRecord = group({
  roll: z.string(),
  x: length('Along the rolls'),
  y: length('Across the gap'),
  pressure: pressure('Pressure'),
  slip: quantity('mPerS', 'Bar less roll, along the bar', -100, 100),
});

/** A section in the bite; rates and contact are those of the slice that ends here, absent at the first section. */
export const SliceRecord = group({
  distance: length('Before the exit plane'),
  outline: OutlineFile,
  area: area('Section'),
  width: length('Along the rolls'),
  height: length('Across the gap'),
  speed: quantity('mPerS', 'Speed', 0, 100),
  pull: force('Axial force in the bar'),
  temperature: temperature('Mean temperature'),
  slowest: optionalQuantity('mPerS', 'Speed of the part that lags most', 0, 100),
  fastest: optionalQuantity('mPerS', 'Speed of the part that runs ahead most', 0, 100),
  strainRate: optionalQuantity('perS', 'Mean strain rate', 0, 1e5),
  flowStress: optionalQuantity('MPa', 'Mean flow stress', 0, 1e5),
  shear: optionalQuantity('percent', 'Largest axial shear, of the shear yield stress', 0, 1e4),
  contact: z.array(TouchRecord).optional(),
});

export type SliceRecord = z.output<typeof SliceRecord>;

/** One pass by the metal-flow model. Forces, torques and areas are of the whole section, per roll. */
export const FlowRecord = group({
  kind: z.literal('flow-pass'),
  title: z.string(),
  steel: z.string(),
  symmetry: FlowCase.shape.symmetry,
  entry: Side,
  exit: Side,
  elongation: ratio('Entry over exit area'),
  widthGain: length('Wider by'),
  forwardSlip: share('Forward slip, at the working radius'),
  fill: FillRecord.optional(),
  rolls: z.array(RollLoadsRecord),
  temperature: group({ least: temperature('Coldest at the exit'), most: temperature('Hottest at the exit') }),
  strain: group({ mean: ratio('Mean strain, gained and remembered'), most: ratio('Largest strain') }),
  strainRate: quantity('perS', 'Mean strain rate in the bite', 0, 1e5),
  bending: group({
    momentX: moment('About the roll axes of top and bottom'),
    momentY: moment('About the axes of left and right rolls'),
  }),
  energy: group({
    rolls: power('From the rolls'),
    tension: power('From the pulls'),
    plastic: power('Into deformation'),
    friction: power('Into slip'),
    error: share('Not accounted for'),
  }),
  quality: group({
    nodes: count('Nodes'),
    slices: count('Slices'),
    marches: count('Marches through the bite'),
    rejected: count('Slices thrown away for a spike'),
    restarts: count('Begun again with other slices'),
    flowChange: ratio('Last change of the flow, relative'),
    pullChange: ratio('Last change of the pull, of the flow stress'),
    areaChange: ratio('Last change of the exit section, relative'),
    warpingChange: ratio('What the warping of the sections still asks for, over the speed of the rolls'),
    volumeDrift: share('Drift of volume'),
    largestShear: share('Largest axial shear, of the shear yield stress'),
  }),
  slices: z.array(SliceRecord).optional(),
  findings: z.array(FindingFile),
});
export type FlowRecord = z.output<typeof FlowRecord>;

/** The record as it stands in a file. Every digit is kept. */
export const writeFlowRecord = (record: FlowRecord): unknown => z.encode(FlowRecord, record);
