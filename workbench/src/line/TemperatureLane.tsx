import { area, line } from 'd3-shape';
import { useId } from 'react';
import { HeatGradient } from '../ink/HeatGradient.tsx';
import { figure } from '../ink/numbers.ts';
import { GridLine, LaneName, type LaneProps } from './Lane.tsx';
import type { BarHere } from './line-model.ts';
import { labelled, type Stretch, temperatureStretches } from './line-scales.ts';

interface Point {
  readonly x: number;
  readonly bar: BarHere;
}

/** Surface to core as a band coloured by its own height on the axis, the mean as a line. */
export function TemperatureLane({ stops, layout, left, right, top, bottom }: LaneProps & { bottom: number }) {
  const points = stops.flatMap(({ bar }, i) => (bar ? [{ x: layout.columns[i].middle, bar }] : []));
  const stretches = temperatureStretches(
    points.map(({ bar }) => bar),
    top,
    bottom,
  );
  return (
    <g>
      <LaneName top={top + 2} name="Temperature, °C" notes={['surface to core,', 'the line is the mean']} />
      {stretches.map((stretch) => (
        <g key={stretch.top}>
          {stretch.ticks.map((at) => (
            <GridLine key={at} y={stretch.y(at)} left={left} right={right} label={figure(at, 'C')} />
          ))}
          <Band points={points} stretch={stretch} left={left} right={right} />
        </g>
      ))}
      {stretches.length > 1 && <Split at={stretches[0].bottom} left={left} />}
      {labelled(stops).map((i) => {
        const { bar } = stops[i];
        return bar ? (
          <MeanLabel key={i} x={layout.columns[i].middle} bar={bar} stretches={stretches} right={right} />
        ) : null;
      })}
    </g>
  );
}

function Band({
  points,
  stretch,
  left,
  right,
}: {
  points: Point[];
  stretch: Stretch;
  left: number;
  right: number;
}) {
  const id = useId();
  const { y } = stretch;
  const band = area<Point>()
    .x(({ x }) => x)
    .y0(({ bar }) => y(bar.surface))
    .y1(({ bar }) => y(bar.core));
  const mean = line<Point>()
    .x(({ x }) => x)
    .y(({ bar }) => y(bar.mean));
  return (
    <g clipPath={`url(#${id}clip)`}>
      <clipPath id={`${id}clip`}>
        <rect x={left} y={stretch.top} width={right - left} height={stretch.bottom - stretch.top + 2} />
      </clipPath>
      <HeatGradient id={id} y={y} />
      <path d={band(points) ?? ''} fill={`url(#${id})`} className="" stroke="var(--ink)" strokeWidth={0.8} />
      <path d={mean(points) ?? ''} className="edge" strokeWidth={1.3} />
    </g>
  );
}

function Split({ at, left }: { at: number; left: number }) {
  return (
    <g>
      <text x={0} y={at + 10} style={{ fontSize: 9.5 }}>
        axis split here
      </text>
      <path className="thin" d={`M${left - 4} ${at + 3}l3 3l-4 2l3 3`} />
    </g>
  );
}

function MeanLabel({
  x,
  bar,
  stretches,
  right,
}: {
  x: number;
  bar: BarHere;
  stretches: Stretch[];
  right: number;
}) {
  const cold = stretches.length > 1 && bar.mean < stretches[0].y.domain()[0];
  const { y } = stretches[cold ? 1 : 0];
  const above = cold ? y(bar.mean) - 5 : Math.min(y(bar.surface), y(bar.core), y(bar.mean)) - 6;
  return (
    <g>
      <circle cx={x} cy={y(bar.mean)} r={2.4} fill="var(--ink)" />
      <text className="value mid on-paper" x={Math.min(x, right - 14)} y={above}>
        {figure(bar.mean, 'C')}
      </text>
    </g>
  );
}
