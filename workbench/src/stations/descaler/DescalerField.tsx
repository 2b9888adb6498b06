import type { DescalerRecord } from '@bloomrail/engine/stations/descaler/record';
import { useWidth } from '../../page/use-width.ts';
import { QuenchChart } from './QuenchChart.tsx';
import { SprayedSection } from './SprayedSection.tsx';

/** The bar between the jets, and what the water does to its skin. */
export function DescalerField({ record }: { record: DescalerRecord }) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  return (
    <div ref={ref}>
      <SprayedSection record={record} width={width} />
      <p className="caption">
        Bar leaving, with the jets of each face. Frame graduated in 100 mm from the corner of the bar. The
        figure beside a face is its share under the jets.
      </p>
      <QuenchChart record={record} width={width} />
    </div>
  );
}
