import { z } from 'zod';
import { CoolingBedSettings } from '../stations/cooling-bed/settings.ts';
import { DescalerSettings } from '../stations/descaler/settings.ts';
import { FurnaceSettings } from '../stations/furnace/settings.ts';
import { SawSettings } from '../stations/saws/settings.ts';
import { PassModel, PassSettings } from '../stations/stands/settings.ts';
import { StraightenersSettings } from '../stations/straighteners/settings.ts';
import { YardSettings } from '../stations/yard/settings.ts';
import { group, quantity, without } from '../units/group.ts';
import { Mill } from './mill.ts';
import { Bloom, Order } from './order.ts';

/** What the crews can change today. The rhythm is said once for the whole line. */
export const Settings = group(
  {
    rhythm: quantity('s', 'Rhythm: one bar every', 20, 1800),
    furnace: without(FurnaceSettings, 'rhythm'),
    descaler: DescalerSettings,
    passModel: PassModel.optional().meta({ title: 'What computes the passes that do not say it themselves' }),
    passes: z.array(without(PassSettings, 'rhythm')).min(1).max(40),
    saws: SawSettings,
    coolingBed: without(CoolingBedSettings, 'rhythm'),
    straighteners: without(StraightenersSettings, 'straightness'),
    yard: YardSettings,
  },
  'Settings of every station',
);
export type Settings = z.output<typeof Settings>;

/** Everything the line needs to know, in one file. Its JSON Schema is reference/schemas/plan.schema.json. */
export const Plan = group(
  {
    format: z.literal('bloomrail plan 1').meta({ title: 'Format and version of this file' }),
    name: z.string().max(120).meta({ title: 'Name of the plan' }),
    about: z.string().max(2000).meta({ title: 'What it is for' }),
    order: Order,
    bloom: Bloom,
    mill: Mill,
    settings: Settings,
  },
  'A rolling plan: order, bloom, mill and settings',
);
export type Plan = z.output<typeof Plan>;
export type PlanFile = z.input<typeof Plan>;

/** The plan as it stands in a file. */
export const writePlan = (plan: Plan): PlanFile => z.encode(Plan, plan) as PlanFile;
