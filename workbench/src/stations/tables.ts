import type { StationRecord, Temperatures } from '@bloomrail/engine/bar/station';
import { recordSchemas } from '@bloomrail/engine/line/records';
import { isQuantity, type Shape } from '@bloomrail/engine/units/group';
import { units } from '@bloomrail/engine/units/unit';
import { clock, figure } from '../ink/numbers.ts';
import type { TableModel } from '../ink/Table.tsx';

/** The figures behind a station's drawing: every quantity of its record with its unit, then the bar as it leaves. */
export function tableOf(record: StationRecord): TableModel {
  const shape = (recordSchemas[record.kind] as unknown as { shape: Shape }).shape;
  const values = record as unknown as Record<string, unknown>;
  const own = Object.entries(shape).flatMap(([key, entry]) => {
    const value = values[key];
    if (!isQuantity(entry) || typeof value !== 'number') return [];
    return [[entry.title, figure(value, entry.unit), units[entry.unit].label]];
  });
  return {
    caption: 'Figures of this station',
    heads: ['Quantity', 'Value', 'Unit'],
    rows: [...own, ...leavingRows(record)],
  };
}

function leavingRows({ leaving }: StationRecord): string[][] {
  const places = Object.entries(leaving.places) as [string, Temperatures][];
  return places.flatMap(([place, at]) => [
    [`Mean leaving, ${place}`, figure(at.mean, 'C'), '°C'],
    [`Surface leaving, ${place}`, figure(at.surface, 'C'), '°C'],
    [`Core leaving, ${place}`, figure(at.core, 'C'), '°C'],
    [`Clock leaving, ${place}`, clock(at.clock), ''],
  ]);
}
