import { z } from 'zod';
import { group, optionalQuantity, quantity } from '../../units/group.ts';
import { Groove } from './groove/groove.ts';

/** Which laws stand for this stand's loads and sections, and by how much the mill's readings differ from them. */
export const StandModel = group(
  {
    forceLaw: z.string().min(1),
    spreadLaw: z.string().min(1),
    flowStressLaw: z.string().min(1),
    force: quantity('one', 'Measured over computed force', 0.3, 3),
    torque: quantity('one', 'Measured over computed torque', 0.3, 3),
    spread: quantity('one', 'Measured over computed spread, bar', 0, 4),
    footSpread: quantity('one', 'Measured over computed spread, foot tips', 0, 4),
    headSpread: quantity('one', 'Measured over computed spread, head', 0, 4),
    flowStress: optionalQuantity('one', 'Measured over computed flow stress, metal flow', 0.3, 3),
    retainedStrain: optionalQuantity('one', 'Share of strain kept from the pass before, metal flow', 0, 1),
    calibrated: z.boolean().meta({ title: 'Factors come from readings of this mill' }),
  },
  'Laws and factors of the estimate.',
);
export type StandModel = z.output<typeof StandModel>;

/** A header over the roller table in front of the stand. */
const Spray = group({
  length: quantity('m', 'Wetted length', 0, 10),
  coefficient: quantity('wPerM2K', 'Heat transfer under water', 0, 20000),
  temperature: quantity('C', 'Water temperature', 0, 60),
});

/** A stand with the rolls that are in it. Diameters are over the collars (barrel, web faces in a universal stand). */
export const Stand = group(
  {
    code: z.string().min(1),
    title: z.string(),
    kind: z.enum(['two-high', 'universal', 'edger']),
    drive: z.enum(['reversing', 'continuous']),
    rollDiameter: quantity('mm', 'Horizontal rolls, diameter now', 300, 1800),
    rollDiameterNew: quantity('mm', 'Horizontal rolls, diameter new', 300, 1800),
    rollDiameterLeast: quantity('mm', 'Horizontal rolls, diameter at scrap', 300, 1800),
    verticalDiameter: optionalQuantity('mm', 'Vertical rolls, diameter now', 200, 1500),
    verticalDiameterNew: optionalQuantity('mm', 'Vertical rolls, diameter new', 200, 1500),
    verticalDiameterLeast: optionalQuantity('mm', 'Vertical rolls, diameter at scrap', 200, 1500),
    barrel: quantity('mm', 'Barrel length', 100, 4000),
    forceLimit: quantity('kN', 'Force limit, horizontal rolls', 100, 50000),
    verticalForceLimit: optionalQuantity('kN', 'Force limit, each vertical roll', 100, 20000),
    torqueLimit: quantity('kNm', 'Torque limit, each roll', 1, 10000),
    power: quantity('kW', 'Motor rating, both rolls', 10, 30000),
    overload: quantity('one', 'Power allowed for one pass, over rating', 1, 4),
    stiffness: quantity('MNPerMm', 'Mill modulus, horizontal rolls', 0.2, 30),
    verticalStiffness: optionalQuantity('MNPerMm', 'Mill modulus, vertical rolls', 0.2, 30),
    friction: quantity('one', 'Friction in the bite', 0.1, 0.8),
    rollSurface: z.enum(['smooth', 'rough', 'ragged']),
    rollTemperature: quantity('C', 'Roll surface before the bite', 10, 400),
    contactCoefficient: quantity('wPerM2K', 'Heat transfer bar to roll', 1000, 200000),
    spray: Spray,
    model: StandModel,
    grooves: z.array(Groove).min(1),
  },
  'A stand: frame, drive, rolls and the grooves cut in them.',
);
export type Stand = z.output<typeof Stand>;
