import type { CoolingBedRecord } from '@bloomrail/engine/stations/cooling-bed/record';
import { useWidth } from '../../page/use-width.ts';
import type { Field } from '../../plan/fields.ts';
import { BedPlan } from './BedPlan.tsx';
import { CamberChart } from './CamberChart.tsx';
import { CoolingSections } from './CoolingSections.tsx';

/** The bar on the cooling bed: how it bends while it cools, and its section meanwhile. */
export function BedField({ record, fields }: { record: CoolingBedRecord; fields: readonly Field[] }) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  return (
    <div ref={ref}>
      <BedPlan record={record} width={width} />
      <CamberChart record={record} fields={fields} width={width} />
      <CoolingSections record={record} width={width} />
    </div>
  );
}
