import { clock } from '../ink/numbers.ts';
import { LaneName, type LaneProps } from './Lane.tsx';

/** When the middle of the bar leaves each station, counted from the furnace door. */
export function ClockLane({ stops, layout, left, right, top }: LaneProps) {
  return (
    <g>
      <LaneName top={top + 2} name="Clock" notes={['from the furnace door']} />
      <path className="ruled" d={`M${left} ${top - 8}H${right}`} />
      {stops.map(({ code, bar }, i) =>
        bar ? (
          <g key={code}>
            <path className="thin" d={`M${layout.columns[i].middle} ${top - 8}v5`} />
            <text className="mid axis" x={layout.columns[i].middle} y={top + 9}>
              {clock(bar.clock)}
            </text>
          </g>
        ) : null,
      )}
    </g>
  );
}
