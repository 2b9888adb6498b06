import { Settings } from '@bloomrail/engine/line/plan';
import { type Field, fieldsOf, type Schema, schemaAt } from './fields.ts';
import { type Json, valueAt } from './plan-file.ts';

/** What can be moved at a station whose settings stand at `path` of the plan, with the mill's own names for the rows. */
export function stationFields(plan: Json, path: string): Field[] {
  const schema = schemaAt(Settings as Schema, path.split('.').slice(1));
  const own = schema ? fieldsOf(schema, valueAt(plan, path), path) : [];
  const shown = own.filter((field) => isThere(field, plan, path));
  return [...shown, ...sharedFields(plan, path)].map((field) => ({ ...field, title: titleOf(field, plan) }));
}

/** Vertical rolls can be moved only where the stand has some; pulls count only where metal flow computes the pass. */
function isThere(field: Field, plan: Json, path: string): boolean {
  if (/\.(entry|exit)TensionMpa$/.test(field.path)) return isByFlow(plan, path);
  if (!/\.(foot|head)RollMm$/.test(field.path)) return true;
  const stands = valueAt(plan, 'mill.stands') as readonly { code: string; kind: string }[] | undefined;
  const code = valueAt(plan, `${path}.stand`);
  return stands?.find((stand) => stand.code === code)?.kind === 'universal';
}

const isByFlow = (plan: Json, path: string): boolean =>
  (valueAt(plan, `${path}.model`) ?? valueAt(plan, 'settings.passModel.model')) === 'flow';

/** The rhythm is said once for the whole line; it is moved at the furnace. */
function sharedFields(plan: Json, path: string): Field[] {
  if (path !== 'settings.furnace') return [];
  const all = fieldsOf(Settings as Schema, valueAt(plan, 'settings'), 'settings');
  return all.filter((field) => field.path === 'settings.rhythmS');
}

function titleOf({ path, title }: Field, plan: Json): string {
  const zone = /^settings\.furnace\.zones\.(\d+)\./.exec(path);
  if (zone) return String(valueAt(plan, `mill.furnace.zones.${zone[1]}.name`) ?? title);
  const roller = /\.(height|side)OffsetsMm\.(\d+)$/.exec(path);
  if (roller)
    return `${roller[1] === 'height' ? 'Height' : 'Side'} plane, roller ${2 * Number(roller[2]) + 2}`;
  return title;
}
