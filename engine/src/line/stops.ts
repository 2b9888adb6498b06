import type { Bar } from '../bar/bar.ts';
import { massOfBloom } from '../bar/charge.ts';
import type { StationRecord } from '../bar/station.ts';
import type { Finding } from '../outcome/finding.ts';
import type { Result } from '../outcome/result.ts';
import { coolingBed } from '../stations/cooling-bed/cooling-bed.ts';
import { descaler } from '../stations/descaler/descaler.ts';
import { furnace } from '../stations/furnace/furnace.ts';
import { saws } from '../stations/saws/saws.ts';
import type { Stand } from '../stations/stands/equipment.ts';
import { pass } from '../stations/stands/pass.ts';
import { straighteners } from '../stations/straighteners/straighteners.ts';
import { yard } from '../stations/yard/yard.ts';
import { isLastOn } from './campaign.ts';
import type { Plan } from './plan.ts';
import type { Visit } from './visit.ts';

/** One stop of the bar, ready to be made: what it depends on beside the bar, and the work itself. */
export interface Stop {
  readonly code: string;
  readonly title: string;
  readonly group: Visit['group'];
  /** Where this stop's settings stand in the plan file: the start of the paths that its findings name. */
  readonly path: string;
  /** Everything beside the bar that the answer depends on; equal inputs and the same bar give the same answer. */
  readonly inputs: unknown;
  readonly work: (bar: Bar) => Result<{ readonly bar: Bar; readonly record: StationRecord }>;
}

/** The line of a plan, from the furnace to the wagon, in the order the bar meets its stops. */
export function stopsOf(plan: Plan): Stop[] {
  const { settings, mill, order } = plan;
  const { rhythm } = settings;
  const heating = { ...settings.furnace, rhythm };
  const bed = { ...settings.coolingBed, rhythm };
  const straightening = { ...settings.straighteners, straightness: order.straightness };
  const bloomMass = massOfBloom(plan.bloom);
  const cutting = { ...settings.yard, rails: order.rails, bloomMass };
  return [
    stop('RF', 'Reheating furnace', 'heat', 'settings.furnace', [heating, mill.furnace], (bar) =>
      furnace(bar, heating, mill.furnace),
    ),
    stop('DS', 'Descaler', 'heat', 'settings.descaler', [settings.descaler, mill.descaler], (bar) =>
      descaler(bar, settings.descaler, mill.descaler),
    ),
    ...settings.passes.map((_, i) => passStop(plan, i)),
    stop('HS', 'Hot saw', 'cold', 'settings.saws', [settings.saws, mill.saws], (bar) =>
      saws(bar, settings.saws, mill.saws),
    ),
    stop('CB', 'Cooling bed', 'cold', 'settings.coolingBed', [bed, mill.coolingBed], (bar) =>
      coolingBed(bar, bed, mill.coolingBed),
    ),
    stop(
      'ST',
      'Straighteners',
      'cold',
      'settings.straighteners',
      [straightening, mill.straighteners],
      (bar) => straighteners(bar, straightening, mill.straighteners),
    ),
    stop('CT', 'Cutting and bundling', 'cold', 'settings.yard', [cutting, mill.yard], (bar) =>
      yard(bar, cutting, mill.yard),
    ),
  ];
}

const stop = (
  code: string,
  title: string,
  group: Visit['group'],
  path: string,
  inputs: unknown,
  work: Stop['work'],
): Stop => ({ code, title, group, path, inputs, work });

function passStop(plan: Plan, i: number): Stop {
  const { settings, mill } = plan;
  const passSettings = { ...settings.passModel, ...settings.passes[i], rhythm: settings.rhythm };
  const stand = mill.stands.find(({ code }) => code === passSettings.stand);
  if (!stand) throw new Error(`plan without stand ${passSettings.stand}: it was not read by readPlan`);
  const { grooves, ...frame } = stand;
  const groove = grooves.filter(({ name }) => name === passSettings.groove);
  const inputs = [passSettings, frame, groove, isLastOn(plan, passSettings)];
  const path = `settings.passes.${i}`;
  return stop(passSettings.code, passSettings.title, groupOf(stand, groove[0]?.family), path, inputs, (bar) =>
    pass(bar, passSettings, stand),
  );
}

function groupOf({ kind }: Stand, family: string | undefined): Visit['group'] {
  if (kind !== 'two-high') return 'universal';
  return family === 'flat' || family === 'box' ? 'breakdown' : 'forming';
}

/** Findings name a setting of their own station; in the plan it stands under the station's path. */
export const inPlan = (findings: readonly Finding[], path: string): Finding[] =>
  findings.map((finding) =>
    finding.setting === undefined || /^(settings|mill|bloom|order)\b/.test(finding.setting)
      ? finding
      : { ...finding, setting: `${path}.${finding.setting}` },
  );
