import type { CoolingBedRecord } from '@bloomrail/engine/stations/cooling-bed/record';
import { Frame } from '../../ink/Frame.tsx';
import { barLength } from '../../ink/frame-bars.ts';
import { heatColour } from '../../ink/heat-scale.ts';
import { clock, figure } from '../../ink/numbers.ts';
import { type BentBar, bentBars, chordsDown, exaggeration } from './bed-model.ts';

/** Screen units that the largest bend may take. */
const room = 52;

/** The bed from above: one bar at several moments, walking down the sheet. */
export function BedPlan({ record, width }: { record: CoolingBedRecord; width: number }) {
  const bars = bentBars(record, 9);
  const [left, right] = [16, width - 62];
  const scale = (right - left) / record.coldLength;
  const largest = Math.max(...bars.map(({ rise }) => Math.abs(rise)));
  const factor = exaggeration(largest, room / scale);
  const rises = bars.map(({ rise }) => rise * scale * factor);
  const chords = chordsDown(rises);
  const crowns = chords.map((chord, i) => chord - rises[i]);
  const first = 26 - Math.min(0, ...crowns);
  const height = first + Math.max(...chords, ...crowns) + 26;
  const ends = `Bend ${figure(bars[0].rise, 'mm', 0)} mm at first, ${figure(record.finalRise, 'mm', 0)} mm leaving.`;
  return (
    <>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={`${ends} ${record.reversals} changes of direction.`}
      >
        <rect className="field" x={6} y={6} width={width - 12} height={height - 12} />
        {bars.map((bar, i) => (
          <Bent key={bar.time} bar={bar} y={first + chords[i]} ends={[left, right]} rise={rises[i]} />
        ))}
        <Frame
          left={6}
          top={6}
          width={width - 12}
          height={height - 12}
          zeroX={left}
          zeroY={first}
          bar={barLength(scale, 40) * scale}
        />
      </svg>
      <p className="caption">
        The bed in plan, head of the section outside upward. Length to scale, frame in{' '}
        {figure(barLength(scale, 40), 'm', 0)} m; bend drawn{' '}
        {factor === 1
          ? 'true'
          : factor > 1
            ? `${factor} times as large as length`
            : `at ${factor} of the length's scale`}
        . Clock from the last pass.
      </p>
    </>
  );
}

interface BentProps {
  readonly bar: BentBar;
  readonly y: number;
  readonly ends: readonly [number, number];
  readonly rise: number;
}

function Bent({ bar, y, ends: [left, right], rise }: BentProps) {
  // A parabola with its crown `rise` above the chord has its control point twice as high.
  const path = `M${left} ${y}Q${(left + right) / 2} ${y - 2 * rise} ${right} ${y}`;
  return (
    <g>
      <path className="hairline" strokeDasharray="2 3" d={`M${left} ${y}H${right}`} />
      <path d={path} fill="none" stroke="var(--ink)" strokeWidth={5} />
      <path d={path} fill="none" stroke={heatColour(bar.mean)} strokeWidth={3.4} />
      <text className="axis" x={right + 8} y={y + 4}>
        {clock(bar.time)}
      </text>
    </g>
  );
}
