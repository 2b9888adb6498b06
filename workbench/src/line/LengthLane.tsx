import { heatColour } from '../ink/heat-scale.ts';
import { figure } from '../ink/numbers.ts';
import { GridLine, LaneName, type LaneProps } from './Lane.tsx';
import type { BarHere } from './line-model.ts';
import { lengthScale } from './line-scales.ts';

/** Length of the bar at each station. The mark hangs from the head; its width is the section, its area the volume. */
export function LengthLane({ stops, layout, left, right, top, bottom }: LaneProps & { bottom: number }) {
  const y = lengthScale(stops, top, bottom);
  const largest = Math.max(1e-6, ...stops.map(({ bar }) => bar?.area ?? 0));
  const widths = stops.map(({ bar }) => Math.max(2, (40 * (bar?.area ?? 0)) / largest));
  const edges = layout.columns.map(({ middle }, i) => middle - widths[i] / 2);
  return (
    <g>
      <LaneName top={top + 2} name="Length, m" notes={['mark area is volume,', 'top is the head']} />
      {y.ticks(4).map((at) => (
        <GridLine
          key={at}
          y={y(at)}
          left={left}
          right={right}
          label={String(at)}
          className={at ? 'hairline' : 'ruled'}
        />
      ))}
      {stops.map(({ code, bar, state }, i) =>
        bar ? (
          <g key={code} opacity={state === 'old' ? 0.35 : 1}>
            <Mark
              bar={bar}
              x={layout.columns[i].middle}
              y={y}
              width={widths[i]}
              room={(edges[i + 1] ?? right) - edges[i] - widths[i]}
            />
          </g>
        ) : null,
      )}
    </g>
  );
}

/** `room` is what lies between the mark and the next one. */
type MarkProps = { bar: BarHere; x: number; y: (metres: number) => number; width: number; room: number };

function Mark({ bar, x, y, width, room }: MarkProps) {
  const foot = y(bar.length);
  const label = room < 34 ? { x, y: foot + 12, end: 'mid' } : { x: x + width / 2 + 4, y: foot, end: '' };
  return (
    <g>
      {pieceEnds(bar).map(([from, to]) => (
        <rect
          key={from}
          x={x - width / 2}
          width={width}
          y={y(from) + (from ? 1 : 0)}
          height={Math.max(1, y(to) - y(from) - (from ? 1 : 0))}
          fill={heatColour(bar.mean)}
          stroke="var(--ink)"
          strokeWidth={0.7}
        />
      ))}
      <text className={label.end} x={label.x} y={label.y}>
        {figure(bar.length, 'm')}
      </text>
    </g>
  );
}

/** Where each piece of a divided bar begins and ends, m from the head. */
function pieceEnds({ length, pieces }: BarHere): [number, number][] {
  if (pieces.length < 2) return [[0, length]];
  let at = 0;
  return pieces.map((piece) => {
    at += piece;
    return [at - piece, at];
  });
}
