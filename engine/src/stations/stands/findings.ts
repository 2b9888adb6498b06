import { type Measure, shareOfLimit } from '../../bar/measure.ts';
import type { Finding } from '../../outcome/finding.ts';
import { outsideValidity } from '../../steel/law.ts';
import { print } from '../../units/unit.ts';
import type { FlowFilling } from './flow/flow-filling.ts';
import { flowFindings } from './flow/flow-findings.ts';
import type { Happened } from './happened.ts';

/** What a person should know about the pass, worst first. */
export function findingsOf(
  happened: Happened,
  measures: readonly Measure[],
  filling?: FlowFilling,
): Finding[] {
  const { flow, prepared } = happened;
  return [
    ...measures.flatMap((measure) => againstLimit(measure)),
    ...noContact(happened),
    ...speedMismatch(happened),
    ...sizeMismatch(happened),
    ...lawNotes(happened),
    ...(flow && filling ? flowFindings(flow.solution, prepared, filling) : []),
  ];
}

/** Near when over nine tenths of the limit, or when the laws' doubt reaches it. */
function againstLimit(measure: Measure): Finding[] {
  const share = shareOfLimit(measure);
  if (share === undefined) return [];
  const { limit, high, limitIs } = measure;
  const reaches = limitIs !== 'least' && high !== undefined && limit !== undefined && high > limit;
  // A fill or a diameter close above its least is as it should be.
  const close = limitIs !== 'least' && (share > 0.9 || reaches);
  if (share <= 1 && !close) return [];
  const { advice, setting } = adviceFor(measure);
  return [
    {
      level: share > 1 ? 'outside' : 'near',
      check: measure.name.replaceAll(' ', '-'),
      text: sentence(measure),
      advice,
      value: measure.value,
      ...(limit === undefined ? {} : { limit }),
      unit: measure.unit,
      ...(setting ? { setting } : {}),
    },
  ];
}

function sentence({ name, part, unit, value, limit = 0, limitIs }: Measure): string {
  const what = `${name[0].toUpperCase()}${name.slice(1)}${part ? `, ${part},` : ''}`;
  return `${what} ${print(value, unit)}, ${limitIs === 'least' ? 'at least' : 'limit'} ${print(limit, unit)}.`;
}

interface Advice {
  readonly advice: string;
  readonly setting?: string;
}

function adviceFor({ name, part, value, limit = value }: Measure): Advice {
  const share = Math.ceil(Math.abs(1 - limit / value) * 100);
  if (name === 'force' && part !== 'horizontal rolls') {
    const setting = part === 'foot roll' ? 'footRollMm' : 'headRollMm';
    return { advice: `Open the ${part} until about ${share} % less is asked of it.`, setting };
  }
  const advices: Readonly<Record<string, Advice>> = {
    force: {
      advice: `Open the gap for about ${share} % less draught, and close an earlier pass by as much.`,
      setting: 'gapMm',
    },
    torque: {
      advice: `Open the gap for about ${share} % less draught, and close an earlier pass by as much.`,
      setting: 'gapMm',
    },
    power: { advice: `Run about ${share} % slower, or open the gap.`, setting: 'speedMPerS' },
    'motor load': {
      advice: 'Lengthen the rhythm, or share the draught with another stand.',
      setting: 'rhythmS',
    },
    'bite angle': {
      advice: 'Take less draught here, slow down for the bite, or have the rolls ragged.',
      setting: 'gapMm',
    },
    fin: {
      advice: 'The bar is too large for this groove: take more draught before it, or open the gap.',
      setting: 'gapMm',
    },
    'groove fill': {
      advice: 'The bar is too small for this groove: take less draught before it, or close the gap.',
      setting: 'gapMm',
    },
    'element mismatch': {
      advice: 'Foot, web and head do not elongate alike: move metal between them by gap and vertical rolls.',
      setting: 'gapMm',
    },
    'roll diameter': { advice: 'Change the rolls; no setting helps.' },
  };
  return advices[name] ?? { advice: 'No single setting helps.' };
}

function noContact({ course: { elongation }, settings }: Happened): Finding[] {
  if (elongation > 1 + 1e-6) return [];
  return [
    {
      level: 'outside',
      check: 'no-contact',
      text: `The rolls do not reach the bar at a gap of ${print(settings.gap, 'mm')}.`,
      advice: 'Close the gap, or leave the pass out.',
      setting: 'gapMm',
    },
  ];
}

/** A stand that shares the bar with the one before must run as that one feeds it. */
function speedMismatch({ settings, course: { rollSpeed: speed }, stand }: Happened): Finding[] {
  const off = Math.abs(settings.speed / speed - 1);
  if (stand.drive !== 'continuous' || off < 0.02) return [];
  return [
    {
      level: off > 0.1 ? 'outside' : 'near',
      check: 'shared-speed',
      text: `The stand before feeds ${print(speed, 'mPerS')}, set are ${print(settings.speed, 'mPerS')}.`,
      advice: `Set ${print(speed, 'mPerS')}: the bar is in both stands at once.`,
      value: settings.speed,
      limit: speed,
      unit: 'mPerS',
      setting: 'speedMPerS',
    },
  ];
}

/** K; the trial lines stay under a third of it. */
const leastCorrection = 2;

/** The heat that the new mesh did not find by itself is shown when it is not small. */
function sizeMismatch({ corrections }: Happened): Finding[] {
  const worst = Math.max(...corrections.map(Math.abs));
  if (worst < leastCorrection) return [];
  return [
    {
      level: 'note',
      check: 'heat-correction',
      text: `Temperatures were shifted by ${print(worst, 'K')} to keep the heat when the section was redrawn.`,
      advice: 'The section changes much here; take skin temperatures with care.',
      value: worst,
      unit: 'K',
    },
  ];
}

/** The chosen laws outside their authors' ranges, each law and input once. */
function lawNotes({ visits, prepared: { flowStress } }: Happened): Finding[] {
  const notes = visits[1].loads.elements
    .filter(({ force }) => force > 0)
    .flatMap(({ strain, rate, pass }) =>
      outsideValidity(flowStress, { strain, rate, temperature: pass.temperature }),
    );
  return notes.filter(
    ({ text }, i) => notes.findIndex((other) => other.text.slice(0, 40) === text.slice(0, 40)) === i,
  );
}
