import { z } from 'zod';
import { recordShape, Temperatures } from '../../bar/station.ts';
import { OutlineFile } from '../../section/outline-file.ts';
import { group, optionalQuantity, quantity } from '../../units/group.ts';
import { FlowRecord } from './flow/flow-record.ts';

const area = (title: string) => quantity('mm2', title, 0, 1e6);
const width = (title: string) => quantity('mm', title, 0, 2000);
const ratio = (title: string) => quantity('one', title, 0, 100);
const force = (title: string) => quantity('kN', title, 0, 1e6);
const torque = (title: string) => quantity('kNm', title, -1e5, 1e5);
const power = (title: string) => quantity('kW', title, -1e6, 1e6);

/** The bar on one side of the stand, in the pose of the pass. */
const Side = group({
  outline: OutlineFile,
  area: area('Section'),
  width: width('Along the rolls'),
  height: width('Across the gap'),
  length: quantity('m', 'Length', 0, 2000),
  speed: quantity('mPerS', 'Speed', 0, 100),
});

/** One roll at the plane where the bar leaves: enough to draw it, and to roll metal between such rolls. */
export const RollRecord = group({
  name: z.enum(['top', 'bottom', 'foot roll', 'head roll']),
  idle: z.boolean(),
  axis: quantity('mm', 'Axis: across the gap for horizontal, along the rolls for vertical', -3000, 3000),
  diameter: width('Largest working diameter'),
  profile: OutlineFile,
});
export type RollRecord = z.output<typeof RollRecord>;

/** The estimate for one part of the section: the whole bar, or foot, web and head. Taken at the middle of the bar. */
export const ElementRecord = group({
  name: z.enum(['bar', 'foot', 'web', 'head']),
  roll: z.enum(['horizontal', 'foot roll', 'head roll']),
  entryArea: area('Entry'),
  exitArea: area('Exit'),
  elongation: ratio('Entry over exit area'),
  entryThickness: width('Mean thickness in'),
  exitThickness: width('Mean thickness out'),
  entryWidth: width('Width in'),
  exitWidth: width('Width out'),
  contactLength: width('Contact length'),
  strainRate: quantity('perS', 'Mean strain rate', 0, 1e4),
  temperature: quantity('C', 'Temperature', -50, 1600),
  flowStress: quantity('MPa', 'Mean flow stress', 0, 2000),
  pressure: quantity('MPa', 'Mean roll pressure', 0, 10000),
  force: force('Roll force'),
});
export type ElementRecord = z.output<typeof ElementRecord>;

/** One place along the bar on its way through the stand. */
export const PlaceRecord = group({
  arriving: Temperatures,
  biting: Temperatures,
  leaving: Temperatures,
  force: force('Force, horizontal rolls'),
  footForce: optionalQuantity('kN', 'Force, foot roll', 0, 1e6),
  headForce: optionalQuantity('kN', 'Force, head roll', 0, 1e6),
  torque: torque('Torque, each roll'),
  power: power('Power, both rolls'),
  stretch: quantity('mm', 'Stand stretch', 0, 200),
});
export type PlaceRecord = z.output<typeof PlaceRecord>;

const ForceOfLaw = group({
  law: z.string(),
  force: force('Force, horizontal rolls'),
  within: z.boolean(),
});
const SpreadOfLaw = group({
  law: z.string(),
  spread: quantity('mm', 'Wider by', -500, 500),
  within: z.boolean(),
});

/** One pass through one stand. Values without a place are taken at the middle of the bar. */
export const PassRecord = group({
  kind: z.literal('pass'),
  ...recordShape,
  code: z.string(),
  stand: z.string(),
  groove: z.string(),
  family: z.enum(['flat', 'box', 'former', 'universal', 'finisher', 'free']),
  turned: quantity('deg', 'Turned before the pass', 0, 180),
  firstEnd: z.enum(['head', 'tail']),
  entry: Side,
  exit: Side,
  rolls: z.array(RollRecord),
  elements: z.array(ElementRecord),
  places: z.strictObject({ head: PlaceRecord, middle: PlaceRecord, tail: PlaceRecord }),
  /** Which of the laws is used, and the factor on it, in sight. */
  forceLaw: z.string(),
  forceFactor: ratio('Factor on the force law'),
  spreadLaw: z.string(),
  spreadFactor: ratio('Factor on the spread law, this groove'),
  forceLaws: z.array(ForceOfLaw),
  spreadLaws: z.array(SpreadOfLaw),
  elongation: ratio('Entry over exit area'),
  mismatch: quantity('one', 'Spread of element elongations', 0, 10),
  contactLength: width('Contact length'),
  biteAngle: quantity('deg', 'Bite angle', 0, 90),
  fill: ratio('Groove filled'),
  fin: area('Metal beyond the groove'),
  rollTurning: quantity('rpm', 'Horizontal rolls', 0, 2000),
  forwardSlip: quantity('one', 'Forward slip', -1, 2),
  interpass: quantity('s', 'Time before the pass', -1e4, 1e4),
  firstIn: quantity('s', 'First end enters, since the furnace door', -1e5, 1e6),
  lastOut: quantity('s', 'Last end leaves, since the furnace door', -1e5, 1e6),
  rollingTime: quantity('s', 'Rolling time', 0, 1e4),
  gap: width('Gap under load'),
  stretch: quantity('mm', 'Stand stretch', 0, 200),
  gapToSet: quantity('mm', 'Gap to set before the bar', -200, 1000),
  rmsPower: power('Motor load over the rhythm'),
  /** Where metal flow computed the pass. */
  flow: FlowRecord.optional(),
  heatCorrection: quantity('K', 'Shift that kept the heat when the mesh was renewed', -100, 100),
});
export type PassRecord = z.output<typeof PassRecord>;
