import type { StraightenersRecord } from '@bloomrail/engine/stations/straighteners/record';
import { boundaryPath } from '../../ink/boundary-path.ts';
import { figure } from '../../ink/numbers.ts';
import { bands, isolines } from '../../ink/section-map.ts';
import { stressColour } from '../../ink/stress-scale.ts';
import { useDark } from '../../page/use-dark.ts';

const step = 25e6;
const [height, left] = [190, 120];

/** Stress along the rail after bending: tension full lines, compression broken, zero heavy. */
export function StressSection({ record, width }: { record: StraightenersRecord; width: number }) {
  const dark = useDark();
  const { nodeX, nodeY, triangles, stress } = record;
  const bottom = Math.min(...nodeY);
  const scale = (height - 12) / (Math.max(...nodeY) - bottom);
  const middle = left + 90;
  const place = { x: (m: number) => middle + scale * m, y: (m: number) => height - 6 - scale * (m - bottom) };
  const field = { x: nodeX, y: nodeY, triangles, values: stress };
  const words = (value: number) =>
    `${value < 0 ? '' : '+'}${figure(value, 'MPa')} ${value < 0 ? 'compression' : 'tension'}`;
  return (
    <svg
      width={width}
      height={height + 4}
      role="img"
      aria-label={`Stress along the rail: crown ${words(record.headStress)}, foot ${words(record.footStress)} MPa.`}
    >
      <text className="name" x={0} y={16}>
        Residual stress
      </text>
      <text x={0} y={30} style={{ fontSize: 9.5 }}>
        along the rail,
      </text>
      <text x={0} y={42} style={{ fontSize: 9.5 }}>
        bending part only
      </text>
      {[...bands(field, step, place)].map(([low, path]) => (
        <path
          key={low}
          d={path}
          fill={stressColour(low + step / 2, dark)}
          stroke={stressColour(low + step / 2, dark)}
          strokeWidth={0.6}
        />
      ))}
      {[...isolines(field, 2 * step, place)].map(([level, path]) => (
        <path
          key={level}
          d={path}
          className="thin"
          strokeWidth={level === 0 ? 1.4 : 0.6}
          strokeDasharray={level < 0 ? '3 2' : undefined}
        />
      ))}
      <path className="edge" d={boundaryPath(nodeX, nodeY, triangles, place)} />
      <Pointer x={place.x(0)} y={16} to={middle + 110} name={words(record.headStress)} place="crown, MPa" />
      <Pointer
        x={place.x(0)}
        y={height - 16}
        to={middle + 110}
        name={words(record.footStress)}
        place="foot centre, MPa"
      />
      <StressKey x={middle + 250} dark={dark} />
    </svg>
  );
}

function Pointer({
  x,
  y,
  to,
  name,
  place,
}: {
  x: number;
  y: number;
  to: number;
  name: string;
  place: string;
}) {
  return (
    <g>
      <circle cx={x} cy={y} r={2} fill="var(--ink)" />
      <path className="thin" d={`M${x} ${y}H${to - 6}`} />
      <text className="value on-paper" x={to} y={y + 2}>
        {name}
      </text>
      <text className="on-paper" x={to} y={y + 14}>
        {place}
      </text>
    </g>
  );
}

function StressKey({ x, dark }: { x: number; dark: boolean }) {
  const stops = Array.from({ length: 12 }, (_, i) => -287.5 + 50 * i + 12.5);
  return (
    <g>
      {stops.map((at, i) => (
        <rect key={at} x={x + 15 * i} y={82} width={15.4} height={9} fill={stressColour(at * 1e6, dark)} />
      ))}
      <rect className="thin" x={x} y={82} width={180} height={9} />
      {[-300, 0, 300].map((at) => (
        <text key={at} className="axis mid" x={x + 90 + 0.3 * at} y={104}>
          {figure(at, 'one', 0)}
          {at === 300 ? ' MPa' : ''}
        </text>
      ))}
      <path className="thin" strokeDasharray="3 2" d={`M${x} 120h24`} />
      <text x={x + 30} y={124}>
        compression
      </text>
      <path className="thin" d={`M${x + 104} 120h24`} />
      <text x={x + 134} y={124}>
        tension
      </text>
    </g>
  );
}
