import type { StraightenersRecord } from '@bloomrail/engine/stations/straighteners/record';
import { useWidth } from '../../page/use-width.ts';
import type { Field } from '../../plan/fields.ts';
import { MachineLanes } from './MachineLanes.tsx';
import { Rollers } from './Rollers.tsx';
import { StressSection } from './StressSection.tsx';

/** Both planes of straightening: rollers with their offsets, and the lanes that hang under them. */
export function StraightenersField({
  record,
  fields,
  view,
}: {
  record: StraightenersRecord;
  fields: readonly Field[];
  view: number;
}) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  const plane = view === 1 ? 'side' : 'height';
  const machine = record[plane];
  const last = machine.along[machine.along.length - 1];
  const [left, right] = [96, width - 4];
  const x = (metres: number) => left + 34 + ((right - left - 92) * metres) / last;
  return (
    <div ref={ref}>
      <Rollers machine={machine} plane={plane} fields={fields} width={width} x={x} />
      <MachineLanes machine={machine} width={width} x={x} left={left} plane={plane} />
      <StressSection record={record} width={width} />
    </div>
  );
}
