import type { CoolingBedRecord } from '@bloomrail/engine/stations/cooling-bed/record';
import { scaleLinear, scaleLog } from 'd3-scale';
import { Axes } from '../../ink/Axes.tsx';
import { curve } from '../../ink/curve.ts';
import { Drawing } from '../../ink/Drawing.tsx';
import { heatColour } from '../../ink/heat-scale.ts';
import { figure } from '../../ink/numbers.ts';
import type { Field } from '../../plan/fields.ts';
import { fieldAt, Handle } from '../../sheet/Handle.tsx';
import { riseOf } from './bed-model.ts';

const [top, bottom, left] = [28, 216, 48];

/** Rise over the bar against time on a logarithmic clock, the curve in the colour of the mean temperature. */
export function CamberChart({
  record,
  fields,
  width,
}: {
  record: CoolingBedRecord;
  fields: readonly Field[];
  width: number;
}) {
  const { time, mean, heightCamber, coldLength } = record;
  const minutes = Array.from(time, (seconds) => Math.max(seconds / 60, 0.2));
  const rises = Array.from(heightCamber, (camber) => riseOf(camber, coldLength));
  const field = fieldAt(fields, 'preCamberMm');
  const reach = 1.15 * Math.max(0.05, ...rises.map(Math.abs), Math.abs((field?.value ?? 0) / 1000));
  const x = scaleLog()
    .domain([Math.max(0.2, minutes[0]), minutes[minutes.length - 1]])
    .range([left, width - 2]);
  const y = scaleLinear().domain([-reach, reach]).range([bottom, top]);
  const ticks = [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500].filter(
    (at) => at >= x.domain()[0] && at <= x.domain()[1],
  );
  return (
    <Drawing
      width={width}
      height={bottom + 34}
      label={`The bar leaves with ${figure(record.finalRise, 'mm', 0)} mm of rise.`}
    >
      <Axes
        x={x}
        y={y}
        xTicks={ticks}
        yTicks={y.ticks(5)}
        xName="minutes after the last pass, log axis"
        yName={`Rise over ${figure(coldLength, 'm')} m, in m; up: head outside`}
      />
      <path
        d={curve(minutes, rises, x, y)}
        fill="none"
        stroke="var(--ink)"
        strokeWidth={5}
        strokeLinejoin="round"
      />
      {pieces(minutes.length).map(([from, to]) => (
        <path
          key={from}
          d={curve(minutes.slice(from, to + 1), rises.slice(from, to + 1), x, y)}
          fill="none"
          stroke={heatColour(mean[Math.floor((from + to) / 2)])}
          strokeWidth={3.2}
          strokeLinejoin="round"
        />
      ))}
      <text
        className="value end plate"
        x={width - 8}
        y={y(rises[rises.length - 1]) + (falls(rises) ? 17 : -10)}
      >
        {figure(record.finalRise, 'mm', 0)} mm leaving
      </text>
      {field && (
        <g>
          <Handle
            field={field}
            x={left + 16}
            y={y((field.value ?? 0) / 1000)}
            perPixel={(2000 * reach) / (bottom - top)}
          />
          <text className="set plate" x={left + 34} y={y((field.value ?? 0) / 1000) + 22}>
            pre-camber {figure((field.value ?? 0) / 1000, 'mm', 0)} mm
          </text>
        </g>
      )}
    </Drawing>
  );
}

/** Whether the bar comes down to its last rise: then there is room under the end of the curve. */
const falls = (rises: readonly number[]): boolean =>
  rises[Math.floor(0.9 * rises.length)] > rises[rises.length - 1];

/** Stretches of a curve that take one colour each. */
function pieces(length: number): [number, number][] {
  const step = Math.max(1, Math.ceil(length / 60));
  const stretches: [number, number][] = [];
  for (let from = 0; from < length - 1; from += step)
    stretches.push([from, Math.min(length - 1, from + step)]);
  return stretches;
}
