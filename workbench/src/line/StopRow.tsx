import type { ScaleLinear } from 'd3-scale';
import { Diamond } from '../ink/Diamond.tsx';
import { HotSection } from '../ink/HotSection.tsx';
import { heatColour } from '../ink/heat-scale.ts';
import { figure } from '../ink/numbers.ts';
import { placedAt } from '../ink/outline-path.ts';
import { inLines } from './in-lines.ts';
import { type BarHere, foremost, loadNames, type Stop } from './line-model.ts';
import { depthOf } from './SectionLane.tsx';

type Scale = ScaleLinear<number, number>;

interface Props {
  readonly stop: Stop;
  readonly y: number;
  readonly ruled: boolean;
  readonly width: number;
  readonly scale: number;
  readonly celsius: Scale;
  readonly metres: Scale;
  readonly load: Scale;
}

/** One station of the downward line: code, section, length, temperature, loads, foremost finding. */
export function StopRow({ stop, y, ruled, width, scale, celsius, metres, load }: Props) {
  return (
    <g opacity={stop.state === 'old' ? 0.35 : 1}>
      {ruled && <path className="ruled" d={`M0 ${y - 20}H${width}`} />}
      <text className="name" x={0} y={y - 3} style={{ fontSize: 14 }}>
        {stop.code}
      </text>
      {inLines(stop.title, 16, 2).map((text, i) => (
        <text key={text} x={0} y={y + 8 + 10 * i} style={{ fontSize: 9.5 }}>
          {text}
        </text>
      ))}
      {stop.bar && <Here bar={stop.bar} x={0.12 * width} {...{ y, scale, celsius, metres }} />}
      {loadNames.map((name, i) => {
        const share = stop.loads[name];
        if (share === undefined) return null;
        const look = share > 1 ? 'over' : (['solid', 'half', 'open'] as const)[i];
        return (
          <rect
            key={name}
            className={look}
            x={load(0)}
            y={y - 9 + 6 * i}
            height={4.5}
            width={load(Math.min(1.25, share)) - load(0)}
          />
        );
      })}
      <Words stop={stop} x={0.735 * width} y={y} room={0.265 * width} />
    </g>
  );
}

type HereProps = { bar: BarHere; x: number } & Pick<Props, 'y' | 'scale' | 'celsius' | 'metres'>;

function Here({ bar, x, y, scale, celsius, metres }: HereProps) {
  const { bounds, surface, core, mean, length } = bar;
  const [low, high] = [Math.min(surface, core), Math.max(surface, core)];
  const inside = mean >= celsius.domain()[0];
  return (
    <>
      <rect
        x={x - 2}
        y={y - 20}
        width={4}
        height={40}
        fill={heatColour(mean)}
        stroke="var(--ink)"
        strokeWidth={0.4}
      />
      <HotSection
        outline={bar.outline}
        placing={placedAt(
          scale,
          [(bounds.left + bounds.right) / 2, (bounds.bottom + bounds.top) / 2],
          [x, y],
        )}
        surface={surface}
        core={core}
        depth={depthOf(bar)}
      />
      <rect
        x={metres(0)}
        y={y - 2}
        height={4}
        width={metres(length) - metres(0)}
        fill={heatColour(mean)}
        stroke="var(--ink)"
        strokeWidth={0.7}
      />
      <text x={metres(length) + 5} y={y + 3.5}>
        {figure(length, 'm')}
      </text>
      {inside ? (
        <>
          <rect
            x={celsius(low)}
            y={y - 5}
            height={10}
            width={celsius(high) - celsius(low)}
            fill={heatColour(mean)}
            stroke="var(--ink)"
            strokeWidth={0.8}
          />
          <path d={`M${celsius(mean)} ${y - 5}v10`} className="limit" />
        </>
      ) : (
        <text x={celsius.range()[0]} y={y + 3.5}>
          at {figure(mean, 'C')} °C
        </text>
      )}
    </>
  );
}

function Words({ stop, x, y, room }: { stop: Stop; x: number; y: number; room: number }) {
  const first = foremost(stop.findings);
  if (!first || stop.state !== 'now') return null;
  const tail = first.others ? ` and ${first.others} more` : '';
  const lines = inLines(first.finding.text.replace(/\.$/, '') + tail, Math.floor((room - 18) / 5.9), 3);
  return (
    <>
      <Diamond level={first.finding.level} x={x + 6} y={y} />
      {lines.map((text, i) => (
        <text
          key={text}
          className={first.finding.level === 'note' ? '' : 'finding'}
          x={x + 18}
          y={y + 3.5 + (i - (lines.length - 1) / 2) * 12}
        >
          {text}
        </text>
      ))}
    </>
  );
}
