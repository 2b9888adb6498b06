import type { MachineRecord } from '@bloomrail/engine/stations/straighteners/record';
import { scaleLinear } from 'd3-scale';
import { between, curve } from '../../ink/curve.ts';
import { figure } from '../../ink/numbers.ts';

interface Props {
  readonly machine: MachineRecord;
  readonly plane: 'height' | 'side';
  readonly width: number;
  readonly left: number;
  readonly x: (metres: number) => number;
}

/** Moment, yielded depth and curvature along the machine, under the rollers that make them. */
export function MachineLanes({ machine, plane, width, left, x }: Props) {
  const { along, moment, curvature, rollers } = machine;
  const reach = 1.15 * Math.max(1.1, ...Array.from(moment, Math.abs));
  const m = scaleLinear().domain([-reach, reach]).range([120, 6]);
  const bend = 1.2 * Math.max(1e-6, ...Array.from(curvature, Math.abs));
  const k = scaleLinear().domain([-bend, bend]).range([330, 236]);
  const deepest = Math.max(...rollers.map(({ plastified }) => plastified));
  const sentence = `Largest moment ${figure(Math.max(...Array.from(moment, Math.abs)), 'one', 2)} of first yield; up to ${figure(deepest, 'percent', 0)} % of the section yields; curvature leaves with ${figure(machine.curvatureOut, 'perKm')} per km.`;
  return (
    <svg width={width} height={344} role="img" aria-label={sentence}>
      <Lane
        name="Moment"
        notes={['in units of', 'first yield']}
        top={6}
        bottom={120}
        left={left}
        right={width}
      />
      <path className="limit" strokeWidth={1.6} d={`M${left} ${m(1)}H${width}M${left} ${m(-1)}H${width}`} />
      <path className="ruled" d={`M${left} ${m(0)}H${width}`} />
      {[1, 0, -1].map((at) => (
        <text key={at} className="axis end" x={left - 6} y={m(at) + 3.5}>
          {figure(at, 'one', 0)}
        </text>
      ))}
      <path className="edge" strokeWidth={1.4} d={curve(along, moment, x, m)} />
      {rollers.map((roller, i) =>
        i > 0 && i < rollers.length - 1 ? (
          <text
            key={roller.number}
            className="value mid plate"
            x={x(roller.position)}
            y={m(roller.moment) + (roller.moment > 0 ? -6 : 14)}
          >
            {figure(roller.moment, 'one', 2)}
          </text>
        ) : null,
      )}
      <Yielded {...{ machine, width, left, x, plane }} top={134} bottom={216} />
      <Lane name="Curvature" notes={['1/km']} top={236} bottom={330} left={left} right={width} />
      <path className="ruled" d={`M${left} ${k(0)}H${width}`} />
      {[bend / 1.2, 0, -bend / 1.2].map((at) => (
        <text key={at} className="axis end" x={left - 6} y={k(at) + 3.5}>
          {figure(at, 'perKm', 1)}
        </text>
      ))}
      <path className="edge" strokeWidth={1.4} d={curve(along, curvature, x, k)} />
      <text className="plate" x={left + 6} y={250}>
        in <tspan fontWeight={700}>{figure(machine.curvatureIn, 'perKm')}</tspan>
      </text>
      <text className="end plate" x={width - 6} y={250}>
        out of this machine <tspan fontWeight={700}>{figure(machine.curvatureOut, 'perKm')}</tspan>, range{' '}
        {figure(machine.curvatureOutLow, 'perKm')} to {figure(machine.curvatureOutHigh, 'perKm')}
      </text>
    </svg>
  );
}

type LaneProps = {
  name: string;
  notes: readonly string[];
  top: number;
  bottom: number;
  left: number;
  right: number;
};

function Lane({ name, notes, top, bottom, left, right }: LaneProps) {
  return (
    <g>
      <rect className="field" x={left} y={top} width={right - left} height={bottom - top} />
      <text className="name" x={0} y={top + 10}>
        {name}
      </text>
      {notes.map((note, i) => (
        <text key={note} x={0} y={top + 23 + 12 * i} style={{ fontSize: 9.5 }}>
          {note}
        </text>
      ))}
    </g>
  );
}

type YieldedProps = Props & { top: number; bottom: number };

/** How deep the section yields from both edges while it passes, the section's height being the lane's. */
function Yielded({ machine, plane, width, left, x, top, bottom }: YieldedProps) {
  const { along, yieldedUpper, yieldedLower, rollers } = machine;
  const depth = bottom - top;
  const zeros = new Float64Array(along.length);
  return (
    <g>
      <Lane
        name="Yielded"
        notes={plane === 'height' ? ['head up', 'foot down'] : ['right side up', 'left side down']}
        {...{ top, bottom, left }}
        right={width}
      />
      <path d={between(along, zeros, yieldedUpper, x, (share) => top + share * depth)} className="half" />
      <path d={between(along, zeros, yieldedLower, x, (share) => bottom - share * depth)} className="half" />
      <path className="edge" d={`M${left} ${top}H${width}M${left} ${bottom}H${width}`} />
      <path className="centre" d={`M${left} ${(top + bottom) / 2}H${width}`} />
      {rollers.map(({ number, plastified, position }) =>
        plastified > 0.005 ? (
          <text key={number} className="value mid plate" x={x(position)} y={(top + bottom) / 2 + 4}>
            {figure(plastified, 'percent', 0)} %
          </text>
        ) : null,
      )}
    </g>
  );
}
