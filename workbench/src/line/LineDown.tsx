import { scaleLinear } from 'd3-scale';
import { useWidth } from '../page/use-width.ts';
import { type LinePicture, layOut } from './line-layout.ts';
import { StopLinks } from './StopLinks.tsx';
import { StopRow } from './StopRow.tsx';

const rowHeight = 40;
const top = 40;

/** The line of a narrow page: one row per station, the bar running downward. */
export function LineDown({ stops, sentence, from }: LinePicture) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  const bars = stops.flatMap(({ bar }) => (bar ? [bar] : []));
  const hot = bars.filter(({ mean }) => mean > 600);
  const lowest = Math.min(900, ...hot.map(({ surface, core }) => Math.min(surface, core)));
  const celsius = scaleLinear()
    .domain([50 * Math.floor(lowest / 50), 1300])
    .range([0.36 * width, 0.56 * width]);
  const metres = scaleLinear()
    .domain([0, Math.max(10, ...bars.map(({ length }) => length))])
    .range([0.18 * width, 0.3 * width]);
  const load = scaleLinear()
    .domain([0, 1])
    .range([0.61 * width, 0.7 * width]);
  const { scale } = layOut(stops, { left: 0, right: 1e6, height: 36, least: 1, beside: 0 });
  const end = top + stops.length * rowHeight;
  return (
    <div className="stops" ref={ref}>
      <svg width={width} height={end + 24} role="img" aria-label={sentence}>
        {heads(width).map(([name, x]) => (
          <text key={name} className="name" x={x} y={14}>
            {name}
          </text>
        ))}
        {celsius.ticks(4).map((at) => (
          <g key={at}>
            <path className="hairline" d={`M${celsius(at)} ${top - 12}V${end}`} />
            <text className="axis mid" x={celsius(at)} y={end + 14}>
              {at}
            </text>
          </g>
        ))}
        {stops.map((stop, i) => (
          <StopRow
            key={stop.code}
            stop={stop}
            y={top + (i + 0.5) * rowHeight}
            ruled={i > 0 && stops[i - 1].group !== stop.group}
            {...{ width, scale, celsius, metres, load }}
          />
        ))}
        <path className="ruled" d={`M${load(0)} ${top - 12}V${end}`} />
        <path className="limit" d={`M${load(1)} ${top - 12}V${end}`} />
        <text className="axis mid strong" x={load(1)} y={end + 14}>
          100
        </text>
      </svg>
      <StopLinks
        stops={stops}
        from={from}
        boxes={stops.map((_, i) => ({ left: 0, width, top: top + i * rowHeight, height: rowHeight }))}
      />
    </div>
  );
}

const heads = (width: number): [string, number][] => [
  ['Section', 0.09 * width],
  ['Length, m', 0.18 * width],
  ['Surface to core, °C', 0.36 * width],
  ['Load, %', 0.61 * width],
  ['Findings', 0.735 * width],
];
