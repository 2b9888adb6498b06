import { DescalerEquipment } from './equipment.ts';
import { DescalerSettings } from './settings.ts';

/** An invented single-ring descaler at 220 bar that covers a bloom 280 × 380. */
export const ring = DescalerEquipment.parse({
  rings: 1,
  nozzles: { top: 4, bottom: 4, left: 5, right: 5 },
  nozzlePitchMm: 80,
  nozzleFlowLPerMin: 72,
  ratedPressureBar: 200,
  standOffMm: 130,
  sprayAngleDeg: 38,
  sprayDepthAngleDeg: 1.5,
  leadAngleDeg: 15,
  impactEfficiency: 0.6,
  jetHeatTransferWPerM2K: 30_000,
  wetLengthM: 1,
  wetFlux: 8,
  waterTemperatureC: 25,
  ambientC: 25,
  removalPercent: 95,
  limits: { impactMpa: 0.3, coveragePercent: 98, meanDropK: 20, pumpFlowLPerMin: 2000 },
});

export const atSpeed = DescalerSettings.parse({ transferS: 15, speedMPerS: 1, pressureBar: 220, runOutS: 3 });
