import type { Finding } from '../../outcome/finding.ts';
import type { FlowProblem } from '../../phenomena/metal-flow/problem.ts';
import { outsideValidity } from '../../steel/law.ts';
import { print } from '../../units/unit.ts';
import { lawOf } from './case-steel.ts';
import { biteFindings, type Pass, slipFindings } from './drive-findings.ts';
import type { FlowCase } from './flow-case.ts';

/** What a roller should know about a solved pass, gravest first. */
export function flowFindings(given: FlowCase, problem: FlowProblem, pass: Pass): Finding[] {
  const findings = [
    ...biteFindings(problem, pass),
    ...slipFindings(pass),
    ...grooveFindings(pass),
    ...bendingFinding(pass, problem),
    ...energyFinding(pass),
    ...doubtFindings(pass),
    ...lawFindings(given, pass),
  ];
  const order = ['outside', 'near', 'note'];
  return findings.sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
}

function grooveFindings({ fill }: Pass): Finding[] {
  if (!fill) return [];
  if (fill.fin > finOfNote)
    return [
      {
        level: 'outside',
        check: 'fin',
        text: `Metal grows beyond the groove's mouth of ${print(fill.mouth, 'mm')}: ${print(fill.fin, 'mm2')} of fin.`,
        advice: 'The bar is too large for this groove: take more draught before it, or open the gap.',
        value: fill.fin,
        limit: 0,
        unit: 'mm2',
      },
    ];
  if (fill.fill >= leastFill) return [];
  return [
    {
      level: 'note',
      check: 'groove-fill',
      text: `The groove is ${print(fill.fill, 'percent')} full.`,
      advice: 'Where the flanks should shape the bar, take less draught before this pass, or close the gap.',
      value: fill.fill,
      limit: leastFill,
      unit: 'percent',
    },
  ];
}

/** m². */
const finOfNote = 1e-6;
/** Fullness below which a groove does little more than a flat pass; common practice, no source. */
const leastFill = 0.8;

/** A bar that wants to bend is held straight here, and guides have to hold it straight in the mill. */
function bendingFinding({ bending, entry, exit }: Pass, { steel }: FlowProblem): Finding[] {
  const stress = steel.strength(0.3, exit.temperature);
  const scale = (depth: number) => (stress * exit.area * depth) / 4;
  const shares = [
    { value: bending.momentX, share: Math.abs(bending.momentX) / scale(entry.height), about: 'up or down' },
    { value: bending.momentY, share: Math.abs(bending.momentY) / scale(entry.width), about: 'to the side' },
  ];
  return shares
    .filter(({ share }) => share > bendingOfNote)
    .map(({ value, about }) => ({
      level: 'note',
      check: 'straight-exit',
      text: `The bar wants to leave bent ${about}; guides have to take ${print(Math.abs(value), 'kNm', 1)}.`,
      advice:
        'Balance the draughts of the parts of the section, or set the guides for it. Here it is held straight.',
      value,
      unit: 'kNm',
    }));
}

/** Share of the section's plastic moment. */
const bendingOfNote = 0.05;

/** Beyond 3 % there is no answer at all. */
function energyFinding({ energy }: Pass): Finding[] {
  const value = Math.abs(energy.error);
  if (value <= energyOfNote) return [];
  return [
    {
      level: 'near',
      check: 'energy-balance',
      text: `${print(value, 'percent')} of the power is not accounted for; a sound answer stays under ${print(energyOfNote, 'percent')}.`,
      advice: 'Ask for more slices or more nodes, and take force and torque as rough until then.',
      value,
      limit: energyOfNote,
      unit: 'percent',
    },
  ];
}

const energyOfNote = 0.01;

function doubtFindings({ quality }: Pass): Finding[] {
  const doubts: [check: string, value: number, limit: number, text: string][] = [
    ['volume', Math.abs(quality.volumeDrift), 0.003, 'Volume drifts through the bite'],
    ['axial-shear', quality.largestShear, 0.9, 'The largest axial shear nears what the steel bears'],
  ];
  const over: Finding[] = doubts
    .filter(([, value, limit]) => value > limit)
    .map(([check, value, limit, text]) => ({
      level: 'note',
      check,
      text: `${text}: ${print(value, 'percent')}, usual is under ${print(limit, 'percent')}.`,
      advice: 'Ask for more slices or more nodes, and compare.',
      value,
      limit,
      unit: 'percent',
    }));
  const troubled = quality.rejected + quality.restarts;
  if (troubled === 0) return over;
  const text = `The computation had to begin again or drop a slice ${troubled} times before it settled.`;
  return [
    ...over,
    { level: 'note', check: 'settling', text, advice: 'Compare with other slices before relying on it.' },
  ];
}

function lawFindings({ steel }: FlowCase, pass: Pass): readonly Finding[] {
  if (steel.law === 'power') return [];
  const law = lawOf(steel);
  if (!law.ok) return [];
  return outsideValidity(law.value, {
    temperature: steel.temperature,
    strain: pass.strain.mean,
    rate: pass.strainRate,
  });
}
