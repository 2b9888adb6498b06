import type { ScaleContinuousNumeric } from 'd3-scale';
import { figure } from './numbers.ts';

type Scale = ScaleContinuousNumeric<number, number>;

interface Props {
  readonly x: Scale;
  readonly y: Scale;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  readonly xName: string;
  readonly yName: string;
  readonly xText?: (at: number) => string;
}

const plain = (at: number): string =>
  figure(at, 'one', Number.isInteger(at) ? 0 : at >= 0.1 || at <= -0.1 ? 1 : 2);

/** Plain field of a chart: no box, a hairline grid, figures at left and below, names with their units once. */
export function Axes({ x, y, xTicks, yTicks, xName, yName, xText = plain }: Props) {
  const [left, right] = x.range();
  const [bottom, top] = y.range();
  return (
    <g>
      <rect className="field" x={left} y={top} width={right - left} height={bottom - top} />
      {yTicks.map((at) => (
        <g key={at}>
          <path className={at === 0 ? 'ruled' : 'hairline'} d={`M${left} ${y(at)}H${right}`} />
          <text className="axis end" x={left - 6} y={y(at) + 3.5}>
            {plain(at)}
          </text>
        </g>
      ))}
      {xTicks.map((at) => (
        <g key={at}>
          <path className="hairline" d={`M${x(at)} ${top}V${bottom}`} />
          <text className="axis mid" x={x(at)} y={bottom + 13}>
            {xText(at)}
          </text>
        </g>
      ))}
      <text className="axis end" x={right} y={bottom + 26}>
        {xName}
      </text>
      <text className="axis" x={left} y={top - 6}>
        {yName}
      </text>
    </g>
  );
}
