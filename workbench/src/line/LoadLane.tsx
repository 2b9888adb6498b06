import { scaleLinear } from 'd3-scale';
import { figure } from '../ink/numbers.ts';
import { GridLine, LaneName, type LaneProps } from './Lane.tsx';
import { type Loads, loadNames } from './line-model.ts';

const looks = { force: 'solid', torque: 'half', power: 'open' } as const;
const thick = 6;

/** Force, torque and power as shares of their limits; past the limit a bar turns magenta and grows wider. */
export function LoadLane({ stops, layout, left, right, top, bottom }: LaneProps & { bottom: number }) {
  const y = scaleLinear().domain([0, 1]).range([bottom, top]);
  return (
    <g>
      <LaneName top={top} name="Load" notes={['force, torque, power,', '% of limit']} />
      {[0, 0.5].map((at) => (
        <GridLine
          key={at}
          y={y(at)}
          left={left}
          right={right}
          label={String(100 * at)}
          className={at ? 'hairline' : 'ruled'}
        />
      ))}
      {stops.map(({ code, loads, state }, i) => (
        <g key={code} opacity={state === 'old' ? 0.35 : 1}>
          <Bars loads={loads} x={layout.columns[i].middle} y={y} top={top} />
          {loads.largest !== undefined && (
            <text
              className={
                loads.largest > 1 ? 'finding strong mid' : loads.largest > 0.9 ? 'finding mid' : 'mid'
              }
              x={layout.columns[i].middle}
              y={bottom + 13}
            >
              {figure(loads.largest, 'percent', 0)}
            </text>
          )}
        </g>
      ))}
      <GridLine y={y(1)} left={left} right={right} label="100" className="limit" />
      <text x={0} y={bottom + 13} style={{ fontSize: 9.5 }}>
        largest of the three
      </text>
    </g>
  );
}

function Bars({ loads, x, y, top }: { loads: Loads; x: number; y: (share: number) => number; top: number }) {
  const present = loadNames.filter((name) => loads[name] !== undefined);
  return present.map((name, i) => {
    const share = loads[name] ?? 0;
    const at = x + (i - present.length / 2) * (thick + 1);
    const over = Math.min(14, y(1) - y(share));
    return (
      <g key={name}>
        <rect
          className={looks[name]}
          x={at}
          width={thick}
          y={y(Math.min(1, share))}
          height={y(0) - y(Math.min(1, share))}
        />
        {share > 1 && (
          <rect
            className="over"
            x={at - 1}
            width={thick + 2}
            y={top - Math.max(3, over)}
            height={Math.max(3, over)}
          />
        )}
      </g>
    );
  });
}
