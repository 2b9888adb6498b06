import { useWidth } from '../page/use-width.ts';
import { ClockLane } from './ClockLane.tsx';
import { FindingsLane } from './FindingsLane.tsx';
import { LengthLane } from './LengthLane.tsx';
import { LoadLane } from './LoadLane.tsx';
import { type LinePicture, layOut } from './line-layout.ts';
import { SectionLane } from './SectionLane.tsx';
import { StopLinks } from './StopLinks.tsx';
import { TemperatureLane } from './TemperatureLane.tsx';

const left = 140;
const height = 712;

/** The line of a wide page: sections in travel order to one scale, and the lanes that hang under them. */
export function LineAcross({ stops, sentence, from }: LinePicture) {
  const { ref, width } = useWidth<HTMLDivElement>(1400);
  const layout = layOut(stops, { left, right: width, height: 74, least: 42, beside: 12 });
  const lane = { stops, layout, left, right: width };
  return (
    <div className="stops" ref={ref}>
      <svg width={width} height={height} role="img" aria-label={sentence}>
        <SectionLane {...lane} top={0} />
        <LengthLane {...lane} top={172} bottom={276} />
        <TemperatureLane {...lane} top={306} bottom={450} />
        <LoadLane {...lane} top={478} bottom={542} />
        <FindingsLane {...lane} top={580} rows={6} />
        <ClockLane {...lane} top={692} />
      </svg>
      <StopLinks
        stops={stops}
        from={from}
        boxes={layout.columns.map((column) => ({
          left: column.left,
          width: column.width,
          top: 24,
          height: 686,
        }))}
      />
    </div>
  );
}
