import type { Measure } from '../../bar/measure.ts';
import type { Finding } from '../../outcome/finding.ts';
import { print } from '../../units/unit.ts';
import type { CoolingBedEquipment } from './equipment.ts';
import type { CoolingBedRecord } from './record.ts';
import type { CoolingBedSettings } from './settings.ts';

/** What the record holds beside the frame that all stations share. */
export type BedFacts = Omit<CoolingBedRecord, 'kind' | 'leaving' | 'balance' | 'measures' | 'findings'>;

const law = 'fibres with transformation plasticity';

/** What stands against a limit on the bed; `longest` is the longest hot piece, m. */
export function measuresOf(
  facts: BedFacts,
  longest: number,
  { camberLimit, camberDoubt, barLength }: CoolingBedEquipment,
): Measure[] {
  const size = Math.abs(facts.finalHeightCamber);
  const common = { part: '', sure: 'computed' as const };
  return [
    {
      ...common,
      name: 'camber leaving',
      part: 'height plane',
      unit: 'perKm',
      value: size,
      low: Math.max(0, size - camberDoubt),
      high: size + camberDoubt,
      limit: camberLimit,
      law,
    },
    {
      ...common,
      name: 'camber leaving',
      part: 'side plane',
      unit: 'perKm',
      value: Math.abs(facts.finalSideCamber),
      limit: camberLimit,
      law,
    },
    {
      ...common,
      name: 'time on the bed',
      unit: 'min',
      value: facts.bedTimeNeeded,
      limit: facts.bedTimeGiven,
      law: 'conduction with change to pearlite',
    },
    {
      ...common,
      name: 'bar length',
      unit: 'm',
      value: longest,
      limit: barLength,
      law: 'length of the longest piece',
    },
    {
      ...common,
      name: 'pearlite at 245 °C',
      unit: 'percent',
      value: facts.pearliteLeast,
      limit: leastPearlite,
      limitIs: 'least',
      law: 'Avrami with additivity',
    },
  ];
}

/** Below it a rail may hold martensite; with plain air cooling all is pearlite (common practice, no source). */
const leastPearlite = 0.99;

/** What the crew should know. `correction`: K added when the section was meshed anew. */
export function findingsOf(
  facts: BedFacts,
  settings: CoolingBedSettings,
  equipment: CoolingBedEquipment,
  longest: number,
  correction: number,
): Finding[] {
  return [
    camberFinding(facts, settings, equipment),
    bedTimeFinding(facts, settings, equipment),
    lengthFinding(longest, equipment),
    martensiteFinding(facts),
    earlyChangeFinding(facts),
    calibrationFinding(equipment),
    correction > 0.5 ? meshFinding(correction) : undefined,
  ].filter((each) => each !== undefined);
}

function camberFinding(
  facts: BedFacts,
  settings: CoolingBedSettings,
  { camberLimit, camberDoubt }: CoolingBedEquipment,
): Finding | undefined {
  const size = Math.abs(facts.finalHeightCamber);
  const worst = size + camberDoubt;
  if (worst <= camberLimit) return undefined;
  const shape = facts.finalHeightCamber < 0 ? 'head hollow' : 'head outside';
  const advice =
    settings.support === 'free'
      ? `Set the pre-camber to ${print(facts.preRiseForStraight, 'mm')}: the middle of the range moves to straight.`
      : `A pre-camber near ${print(facts.preRiseForStraight, 'mm')} straightens a bar that slides freely; friction takes part of it.`;
  return {
    level: size > camberLimit ? 'outside' : 'near',
    check: 'bed-camber',
    text: `Camber ${print(size, 'perKm')} leaving the bed, ${shape}, ${print(camberLimit, 'perKm')} is the limit; range to ${print(worst, 'perKm')}.`,
    advice,
    value: size,
    limit: camberLimit,
    unit: 'perKm',
    setting: 'settings.coolingBed.preCamberMm',
  };
}

function bedTimeFinding(
  { bedTimeNeeded, bedTimeGiven, barsOnBed }: BedFacts,
  settings: CoolingBedSettings,
  { travel }: CoolingBedEquipment,
): Finding | undefined {
  if (bedTimeNeeded <= 0.9 * bedTimeGiven) return undefined;
  const pace = bedTimeNeeded / barsOnBed;
  const pitch = (travel * settings.rhythm) / bedTimeNeeded;
  return {
    level: bedTimeNeeded > bedTimeGiven ? 'outside' : 'near',
    check: 'bed-time',
    text: `The bar needs ${print(bedTimeNeeded, 'min', 0)} on the bed, at this pace it gets ${print(bedTimeGiven, 'min', 0)}.`,
    advice: `Roll a bar every ${print(pace, 's', 0)} or slower, or set the spacing below ${print(pitch, 'mm', 0)}, which slows cooling.`,
    value: bedTimeNeeded,
    limit: bedTimeGiven,
    unit: 'min',
    setting: 'settings.coolingBed.pitchMm',
  };
}

function lengthFinding(longest: number, { barLength }: CoolingBedEquipment): Finding | undefined {
  if (longest <= barLength) return undefined;
  return {
    level: 'outside',
    check: 'bar-longer-than-bed',
    text: `The bar is ${print(longest, 'm')} long, the bed takes ${print(barLength, 'm')}.`,
    advice: 'Divide the bar at the hot saw; no setting of the bed helps.',
    value: longest,
    limit: barLength,
    unit: 'm',
    stop: true,
    setting: 'settings.saws.coldLengthsM',
  };
}

function martensiteFinding({ pearliteLeast, fastestCooling }: BedFacts): Finding | undefined {
  if (pearliteLeast >= leastPearlite) return undefined;
  return {
    level: 'outside',
    check: 'martensite',
    text: `Only ${print(pearliteLeast, 'percent')} are pearlite where 245 °C is passed; the rest may become martensite.`,
    advice: `Cool slower between 700 and 500 °C: the fastest point falls ${fastestCooling.toFixed(1)} K/s there.`,
    value: pearliteLeast,
    limit: leastPearlite,
    unit: 'percent',
    stop: true,
    setting: 'settings.coolingBed.pitchMm',
  };
}

/** Share that has already changed when the bar reaches the bed, beyond which its bends there are no longer all seen. */
const earlyChange = 0.05;

function earlyChangeFinding({ time, onBedAt, pearliteMean }: BedFacts): Finding | undefined {
  const share = pearliteMean[time.indexOf(onBedAt)];
  if (share <= earlyChange) return undefined;
  return {
    level: 'note',
    check: 'changed-before-bed',
    text: `${print(share, 'percent')} of the section are pearlite before the bar lies on the bed.`,
    advice: 'The camber counts from the bed on; shorten the run-out or finish hotter.',
    value: share,
    limit: earlyChange,
    unit: 'percent',
    setting: 'settings.coolingBed.runOutS',
  };
}

function calibrationFinding({ camberDoubt }: CoolingBedEquipment): Finding | undefined {
  if (camberDoubt < 0.5e-3) return undefined;
  return {
    level: 'note',
    check: 'camber-calibration',
    text: `Camber is computed with remembered strengths and swelling of the steel: ±${print(camberDoubt, 'perKm')}.`,
    advice:
      'Measure the rise of one bar at 5, 10 and 20 minutes and when cold, then narrow the doubt in the mill data.',
    value: camberDoubt,
    unit: 'perKm',
  };
}

const meshFinding = (correction: number): Finding => ({
  level: 'note',
  check: 'mesh-change',
  text: `The section was meshed anew for the bed; ${correction.toFixed(2)} K keep its heat.`,
  advice: 'No setting helps; the change is smaller than the doubt of a pyrometer.',
  value: correction,
  unit: 'K',
});
