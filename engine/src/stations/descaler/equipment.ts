import type { z } from 'zod';
import { group, quantity } from '../../units/group.ts';

export const NozzleRow = group({
  top: quantity('one', 'Nozzles above', 0, 60),
  bottom: quantity('one', 'Nozzles below', 0, 60),
  left: quantity('one', 'Nozzles on the left', 0, 60),
  right: quantity('one', 'Nozzles on the right', 0, 60),
});
export type NozzleRow = z.output<typeof NozzleRow>;

export const DescalerLimits = group({
  impact: quantity('MPa', 'Impact pressure, at least', 0.05, 3),
  coverage: quantity('percent', 'Share of each face under the jets, at least', 10, 100),
  meanDrop: quantity('K', 'Mean temperature drop, at most', 1, 200),
  pumpFlow: quantity('lPerMin', 'Pump flow, at most', 100, 100_000),
});
export type DescalerLimits = z.output<typeof DescalerLimits>;

/** Rings of flat-jet nozzles around the bar, and the pump behind them. */
export const DescalerEquipment = group(
  {
    rings: quantity('one', 'Nozzle rings, one behind the other', 1, 4),
    nozzles: NozzleRow,
    /** Distance of neighbouring nozzles in a row; a row is centred on its face. */
    nozzlePitch: quantity('mm', 'Pitch of the nozzles', 10, 500),
    /** Water through one nozzle at `ratedPressure`; it goes with the root of the pressure. */
    nozzleFlow: quantity('lPerMin', 'Flow of one nozzle at its rated pressure', 5, 500),
    ratedPressure: quantity('bar', 'Rated pressure of the nozzle', 20, 600),
    standOff: quantity('mm', 'Stand-off, nozzle to steel', 30, 600),
    sprayAngle: quantity('deg', 'Spray angle, across the bar', 5, 90),
    sprayDepthAngle: quantity('deg', 'Spray angle, along the bar', 0.5, 15),
    leadAngle: quantity('deg', 'Lead angle against the travel', 0, 45),
    /** Share of the jet force that reaches the steel within the footprint; 0.5 to 0.7 (from memory, unconfirmed). */
    impactEfficiency: quantity('one', 'Impact efficiency', 0.1, 1),
    jetHeatTransfer: quantity('wPerM2K', 'Heat transfer in the footprint', 1000, 100_000),
    /** Water that runs along the bar outside the footprint. */
    wetLength: quantity('m', 'Length of bar wetted around the jets', 0, 10),
    wetFlux: quantity('one', 'Water on the wetted faces, kg/m²s', 0, 100),
    waterTemperature: quantity('C', 'Water temperature', 1, 80),
    ambient: quantity('C', 'Air in the hall', -40, 60),
    /** Share of the scale under the jets that comes off when the impact is reached. */
    removal: quantity('percent', 'Scale removed where the impact is reached', 10, 100),
    limits: DescalerLimits,
  },
  'The descaler as built',
);
export type DescalerEquipment = z.output<typeof DescalerEquipment>;
