import { z } from 'zod';
import type { Finding } from '../outcome/finding.ts';
import type { FurnaceRecord } from '../stations/furnace/record.ts';
import type { PassRecord } from '../stations/stands/record.ts';
import type { YardRecord } from '../stations/yard/record.ts';
import { group, quantity } from '../units/group.ts';
import { isPass, timeTaken } from './campaign.ts';
import type { Plan } from './plan.ts';
import type { Visit } from './visit.ts';

/** The line in a few figures. */
export const Summary = group({
  yield: quantity('percent', 'Delivered of the blooms charged', 0, 100),
  rhythm: quantity('s', 'Rhythm set', 0, 1e5),
  pace: quantity('s', 'Shortest rhythm that the stands allow', 0, 1e5),
  bars: quantity('one', 'Bars for the order', 0, 1e6),
  fuel: quantity('GJPerT', 'Fuel', 0, 50),
  elongation: quantity('one', 'Total elongation', 0, 100),
  finishing: quantity('C', 'Mean temperature after the last pass, middle', -50, 1600),
  barLength: quantity('m', 'Bar after the last pass, hot', 0, 1000),
  outside: quantity('one', 'Findings outside a limit', 0, 1e5),
  near: quantity('one', 'Findings near a limit', 0, 1e5),
  notes: quantity('one', 'Notes', 0, 1e5),
  paceStand: z.string().meta({ title: 'Stand that sets the pace' }),
});
export type Summary = z.output<typeof Summary>;

export function summarise(plan: Plan, visits: readonly Visit[]): Summary {
  const furnace = recordOf<FurnaceRecord>(visits, 'furnace');
  const yard = recordOf<YardRecord>(visits, 'yard');
  const passes = passesOf(visits);
  const last = passes[passes.length - 1];
  const findings = visits.flatMap(({ record }) => record.findings);
  const busy = occupation(plan, passes);
  return {
    yield: yard.yield,
    rhythm: plan.settings.rhythm,
    pace: Math.max(...busy),
    paceStand: plan.mill.stands[busy.indexOf(Math.max(...busy))].code,
    bars: yard.bars,
    fuel: furnace.fuel,
    elongation: passes.reduce((product, { elongation }) => product * elongation, 1),
    finishing: last.leaving.places.middle.mean,
    barLength: last.leaving.length,
    outside: count(findings, 'outside'),
    near: count(findings, 'near'),
    notes: count(findings, 'note'),
  };
}

/** s for which each stand is taken by one bar. */
const occupation = ({ mill }: Plan, passes: readonly PassRecord[]): number[] =>
  mill.stands.map(({ code }) => timeTaken(passes.filter(({ stand }) => stand === code)));

export const passesOf = (visits: readonly Visit[]): PassRecord[] =>
  visits.map(({ record }) => record).filter(isPass);

function recordOf<R>(visits: readonly Visit[], kind: string): R {
  const visit = visits.find(({ record }) => record.kind === kind);
  if (!visit) throw new Error(`a line without ${kind}`);
  return visit.record as R;
}

const count = (findings: readonly Finding[], level: Finding['level']): number =>
  findings.filter((finding) => finding.level === level).length;
