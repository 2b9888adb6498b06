import type { DescalerRecord } from '@bloomrail/engine/stations/descaler/record';
import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { Axes } from '../../ink/Axes.tsx';
import { between, curve } from '../../ink/curve.ts';
import { HeatGradient } from '../../ink/HeatGradient.tsx';
import { figure } from '../../ink/numbers.ts';

const [top, bottom] = [24, 210];
const left = 40;

/** Skin, mean and core of the middle of the bar from the furnace door to the end of the run-out. */
export function QuenchChart({
  record: { curves, places },
  width,
}: {
  record: DescalerRecord;
  width: number;
}) {
  const id = useId();
  const last = curves.time.length - 1;
  const x = scaleLinear()
    .domain([0, curves.time[last]])
    .range([left, width - 2]);
  const lowest = Math.min(...curves.surface, places.middle.surfaceLowest);
  const highest = Math.max(...curves.core, ...curves.surface);
  const y = scaleLinear().domain([lowest, highest]).nice(6).range([bottom, top]);
  const { surfaceLowest, meanBefore, meanAfter } = places.middle;
  const sentence = `The skin falls to ${figure(surfaceLowest, 'C')} °C under the jets; the mean goes from ${figure(meanBefore, 'C')} to ${figure(meanAfter, 'C')} °C.`;
  return (
    <svg width={width} height={bottom + 32} role="img" aria-label={sentence}>
      <Axes
        x={x}
        y={y}
        xTicks={x.ticks(8)}
        yTicks={y.ticks(6)}
        xName="seconds since the furnace door"
        yName="°C, middle of the bar"
      />
      <HeatGradient id={id} y={y} />
      <path
        d={between(curves.time, curves.surface, curves.core, x, y)}
        fill={`url(#${id})`}
        stroke="var(--ink)"
        strokeWidth={0.9}
      />
      <path className="edge" d={curve(curves.time, curves.mean, x, y)} />
      <circle cx={x(places.middle.arrives)} cy={y(surfaceLowest)} r={2.6} fill="var(--ink)" />
      <text className="value plate end" x={x(places.middle.arrives) - 8} y={y(surfaceLowest) + 4}>
        coldest skin {figure(surfaceLowest, 'C')}
      </text>
      <text className="value plate end" x={width - 8} y={y(curves.surface[last]) + 14}>
        skin {figure(curves.surface[last], 'C')}
      </text>
      <text className="value plate end" x={width - 8} y={y(curves.core[last]) + 14}>
        core {figure(curves.core[last], 'C')}
      </text>
    </svg>
  );
}
