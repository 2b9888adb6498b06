import type { FurnaceRecord } from '@bloomrail/engine/stations/furnace/record';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { Axes } from '../../ink/Axes.tsx';
import { between, curve } from '../../ink/curve.ts';
import { Drawing } from '../../ink/Drawing.tsx';
import { HeatGradient } from '../../ink/HeatGradient.tsx';
import { heatColour } from '../../ink/heat-scale.ts';
import { figure } from '../../ink/numbers.ts';
import { capital } from '../../ink/words.ts';
import type { Field } from '../../plan/fields.ts';
import { fieldAt, Handle } from '../../sheet/Handle.tsx';

type Scale = ScaleLinear<number, number>;

const left = 40;
const [top, bottom] = [70, 390];

/** Zone temperatures in blue, coldest to hottest point as a band in its own colours, mean, skid side. */
export function HeatingChart({
  record,
  fields,
  width,
}: {
  record: FurnaceRecord;
  fields: readonly Field[];
  width: number;
}) {
  const { curves, zones } = record;
  const end = curves.time[curves.time.length - 1];
  const x = scaleLinear()
    .domain([0, end / 60])
    .range([left, width - 2]);
  const y = scaleLinear().domain([0, 1400]).range([bottom, top]);
  const minutes = (seconds: number) => x(seconds / 60);
  const clip = useId();
  const sentence = `Over ${figure(end, 'min', 0)} min the bloom is heated to ${figure(curves.mean[curves.mean.length - 1], 'C')} °C mean.`;
  return (
    <Drawing width={width} height={bottom + 34} label={sentence}>
      <Axes
        x={x}
        y={y}
        xTicks={x.ticks(8)}
        yTicks={[0, 200, 400, 600, 800, 1000, 1200, 1400]}
        xName="minutes in the furnace"
        yName=""
      />
      <HeatGradient id={clip} y={y} />
      <path
        d={between(curves.time, curves.coldest, curves.hottest, minutes, y)}
        fill={`url(#${clip})`}
        stroke="var(--ink)"
        strokeWidth={0.9}
      />
      <path d={curve(curves.time, curves.bottom, minutes, y)} className="before" />
      <path
        d={curve(curves.time, curves.mean, minutes, y)}
        fill="none"
        stroke="var(--field)"
        strokeWidth={3}
      />
      <path d={curve(curves.time, curves.mean, minutes, y)} className="edge" strokeWidth={1.2} />
      {zones.map((zone, i) => (
        <Zone
          key={`${zone.name} ${zone.leaves}`}
          {...{ zone, x, y }}
          field={fieldAt(fields, `zones.${i}.temperatureC`)}
          last={i === zones.length - 1}
        />
      ))}
      <CurveNames curves={curves} x={x} y={y} />
    </Drawing>
  );
}

type ZoneProps = {
  zone: FurnaceRecord['zones'][number];
  field: ReturnType<typeof fieldAt>;
  x: Scale;
  y: Scale;
  last: boolean;
};

/** One zone: its stretch of furnace with the blooms in it, its temperature as a blue line that can be moved. */
function Zone({ zone, field, x, y, last }: ZoneProps) {
  const [from, to] = [x(zone.enters / 60), x(zone.leaves / 60)];
  const set = field?.value ?? zone.gas;
  return (
    <g>
      <text className="name" x={from + 1} y={22}>
        {to - from > 90 ? capital(zone.name) : ''}
      </text>
      <text className="set end" x={to - 5} y={22}>
        {figure(set, 'C')} °C
      </text>
      <rect
        x={from}
        y={29}
        width={to - from}
        height={24}
        fill={heatColour(zone.gas)}
        stroke="var(--ink)"
        strokeWidth={0.9}
      />
      <path className="thin" d={bloomsBetween(from + 4, to - 4)} />
      <path d={`M${from} ${y(set)}H${to}`} stroke="var(--field)" strokeWidth={5} fill="none" />
      <path className="setting" d={`M${from} ${y(set)}H${to}`} strokeWidth={1.6} />
      {!last && <path className="centre" d={`M${to} ${top}V${bottom}`} />}
      {field && <Handle field={field} x={(from + to) / 2} y={y(set)} perPixel={1400 / (bottom - top)} />}
    </g>
  );
}

function CurveNames({ curves, x, y }: { curves: FurnaceRecord['curves']; x: Scale; y: Scale }) {
  const i = Math.floor(0.3 * curves.time.length);
  const [atX, hottest, coldest] = [x(curves.time[i] / 60), y(curves.hottest[i]), y(curves.coldest[i])];
  return (
    <g>
      <path className="thin" d={`M${atX} ${hottest}l-22 -18M${atX} ${coldest}l22 18`} />
      <text className="name end plate" x={atX - 24} y={hottest - 19}>
        hottest point
      </text>
      <text className="name plate" x={atX + 24} y={coldest + 26}>
        coldest point
      </text>
    </g>
  );
}

/** Blooms as they lie across the furnace: a sketch, its pitch is not the furnace's. */
function bloomsBetween(from: number, to: number): string {
  let path = '';
  for (let x = from; x + 6 <= to; x += 11) path += `M${x} 35h6v12h-6z`;
  return path;
}
