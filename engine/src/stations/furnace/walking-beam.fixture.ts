import type { Bar } from '../../bar/bar.ts';
import { charge } from '../../bar/charge.ts';
import { must } from '../../outcome/result.ts';
import { FurnaceEquipment } from './equipment.ts';
import { FurnaceSettings } from './settings.ts';

/** An invented four-zone walking-beam furnace that heats a bloom 280 × 380 in four hours. */
export const walkingBeam = FurnaceEquipment.parse({
  pitchMm: 400,
  zones: [
    { name: 'Preheat', lengthM: 12, exchange: 0.45, convectionWPerM2K: 20 },
    { name: 'Heating 1', lengthM: 10, exchange: 0.65, convectionWPerM2K: 25 },
    { name: 'Heating 2', lengthM: 9, exchange: 0.75, convectionWPerM2K: 30 },
    { name: 'Soaking', lengthM: 7.4, exchange: 0.75, convectionWPerM2K: 25 },
  ],
  faces: { top: 1, bottom: 0.85, left: 1, right: 1 },
  scaleAgainstAir: 0.6,
  efficiencyPercent: 60,
  efficiencyLowPercent: 50,
  efficiencyHighPercent: 70,
  limits: {
    uniformityK: 30,
    skidMarkK: 30,
    coldGradientK: 200,
    coldBelowC: 600,
    burningC: 1280,
    scaleLossPercent: 1.2,
    decarburisedMm: 1.8,
    fuelGjPerT: 1.9,
  },
});

export const fourHours = FurnaceSettings.parse({
  rhythmS: 150,
  zones: [{ temperatureC: 900 }, { temperatureC: 1060 }, { temperatureC: 1250 }, { temperatureC: 1230 }],
  dropOutLowC: 1180,
  dropOutHighC: 1240,
});

/** A bloom of R260 from the yard, or as warm as said. */
export const bloom = (charging = 20): Bar =>
  must(
    charge(
      { height: 0.38, width: 0.28, cornerRadius: 0.02, length: 9, charging },
      {
        name: 'R260',
        standard: 'EN 13674-1',
        composition: { C: 0.71, Si: 0.33, Mn: 1.0, P: 0.015, S: 0.012, Cr: 0.05, V: 0.01 },
      },
    ),
  );
