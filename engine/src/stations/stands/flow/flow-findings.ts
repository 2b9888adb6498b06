import type { Finding } from '../../../outcome/finding.ts';
import type { FlowSolution } from '../../../phenomena/metal-flow/solution.ts';
import { print } from '../../../units/unit.ts';
import type { Prepared } from '../prepare.ts';
import { fitFindings } from './fits.ts';
import type { FlowFilling } from './flow-filling.ts';
import type { Misfit } from './groove-fit.ts';

/** Beyond these a solved pass is still doubtful. */
const [doubtfulEnergy, yielding] = [0.01, 1];

/** What a roller should know about how metal flow found the pass, gravest first. */
export const flowFindings = (
  { rolls, energy, quality }: FlowSolution,
  prepared: Prepared,
  { misfits }: FlowFilling,
): Finding[] => [
  ...fitFindings(prepared),
  ...placesPast(misfits),
  ...hollowPlaces(misfits, prepared),
  ...sideThrust(rolls),
  ...doubts(energy, quality),
];

const place = ({ x, y }: Misfit): string => `at ${print(x, 'mm')} along the rolls, ${print(y, 'mm')} high`;

/** Metal past the groove smaller than this is no fin yet, m². */
const leastFin = 5e-6;

function placesPast(misfits: readonly Misfit[]): Finding[] {
  const past = misfits.filter(({ kind, area }) => kind === 'over' && area > leastFin).slice(0, 2);
  return past.map((each) => ({
    level: 'note',
    check: 'fin-place',
    text: `Metal stands ${print(each.depth, 'mm')} past the groove ${place(each)}: ${print(each.area, 'mm2')}.`,
    advice: 'Take more draught on that part before this pass, or move the wall or the bar to the other side.',
    value: each.depth,
    unit: 'mm',
  }));
}

/** A finisher must be full everywhere, another groove where the next pass counts on it: m. */
const hollowOf = { finisher: 5e-4, other: 3e-3 };

function hollowPlaces(misfits: readonly Misfit[], { groove }: Prepared): Finding[] {
  const least = groove.family === 'finisher' ? hollowOf.finisher : hollowOf.other;
  const hollow = misfits.filter(({ kind, depth }) => kind === 'under' && depth > least).slice(0, 2);
  return hollow.map((each) => ({
    level: 'note',
    check: 'hollow-place',
    text: `The groove stays ${print(each.depth, 'mm')} from the bar ${place(each)}: ${print(each.area, 'mm2')}.`,
    advice: 'Leave more metal on that part before this pass, or bring the roll nearer.',
    value: each.depth,
    unit: 'mm',
  }));
}

/** Share of the separating force that collars and thrust bearings take as a matter of course. Assumed, no source. */
const usualThrust = 0.1;

const sideThrust = (rolls: FlowSolution['rolls']): Finding[] =>
  rolls
    .filter(({ force, lateral }) => Math.abs(lateral) > usualThrust * Math.abs(force))
    .map(({ name, lateral }) => ({
      level: 'note',
      check: 'side-thrust',
      text: `Roll ${name} is pushed along its axis with ${print(Math.abs(lateral), 'kN')}.`,
      advice: 'Check collars and thrust bearings for it, or lean the flanks of both sides more alike.',
      value: Math.abs(lateral),
      unit: 'kN',
    }));

function doubts(energy: FlowSolution['energy'], quality: FlowSolution['quality']): Finding[] {
  const tried = quality.restarts + quality.rejected;
  const noted: (readonly [is: boolean, check: string, text: string, advice: string])[] = [
    [
      Math.abs(energy.error) > doubtfulEnergy,
      'flow-energy',
      `Power of the rolls and power used differ by ${print(energy.error, 'percent')} in the metal flow.`,
      'Take its loads with that much care, or ask for more nodes and slices.',
    ],
    [
      tried > 0,
      'unsound-design',
      `The metal flow settled only after ${quality.restarts} new beginnings and ${quality.rejected} rejected marches.`,
      'The pass asks much at one place: look for a bar wider than its groove, a groove too deep, or a fin.',
    ],
    [
      quality.largestShear > yielding,
      'axial-shear',
      `Friction asks ${print(quality.largestShear, 'one')} of the shear yield stress at one place of the section.`,
      'Pressures beside it are uncertain; the rest of the pass is not.',
    ],
  ];
  return noted
    .filter(([is]) => is)
    .map(([, check, text, advice]) => ({ level: 'note', check, text, advice }));
}
