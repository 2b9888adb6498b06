import type { FurnaceRecord } from '@bloomrail/engine/stations/furnace/record';
import { HeatLegend } from '../../ink/HeatLegend.tsx';
import { useWidth } from '../../page/use-width.ts';
import type { Field } from '../../plan/fields.ts';
import { HeatingChart } from './HeatingChart.tsx';
import { ZoneSections } from './ZoneSections.tsx';

/** The bloom's way through the furnace: zones and curves over time, the section at the end of each zone. */
export function FurnaceField({ record, fields }: { record: FurnaceRecord; fields: readonly Field[] }) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  return (
    <div ref={ref}>
      <HeatingChart record={record} fields={fields} width={width} />
      <ZoneSections record={record} width={width} />
      <HeatLegend />
    </div>
  );
}
