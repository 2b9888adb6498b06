import type { LineLayout } from './line-layout.ts';
import type { Stop } from './line-model.ts';

/** What every lane under the sections gets: the stations, where they stand, and the lane's own place. */
export interface LaneProps {
  readonly stops: readonly Stop[];
  readonly layout: LineLayout;
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

/** Name of a lane at left, once, with a note of one or two lines under it. */
export function LaneName({
  top,
  name,
  notes = [],
}: {
  top: number;
  name: string;
  notes?: readonly string[];
}) {
  return (
    <g>
      <text className="name" x={0} y={top + 4}>
        {name}
      </text>
      {notes.map((note, i) => (
        <text key={note} x={0} y={top + 18 + 13 * i} style={{ fontSize: 9.5 }}>
          {note}
        </text>
      ))}
    </g>
  );
}

/** One horizontal grid line with its figure. */
export function GridLine(props: {
  y: number;
  left: number;
  right: number;
  label: string;
  className?: string;
}) {
  const { y, left, right, label, className = 'hairline' } = props;
  return (
    <g>
      <path className={className} d={`M${left}H${right}`.replace('H', ` ${y}H`)} />
      <text className={className === 'limit' ? 'axis end strong' : 'axis end'} x={left - 6} y={y + 3.5}>
        {label}
      </text>
    </g>
  );
}
