import { memo, useId } from 'react';
import { Diamond } from '../ink/Diamond.tsx';
import { heatColour } from '../ink/heat-scale.ts';
import { foremost, groupNames, runsOf, type Stop } from '../line/line-model.ts';
import { lineInWords } from '../line/line-words.ts';
import { StopLinks } from '../line/StopLinks.tsx';
import { useWidth } from '../page/use-width.ts';

const height = 50;

/** The line folded to one heat-coloured band, with a bracket around the present station. */
export const Strip = memo(function Strip({ stops, here }: { stops: readonly Stop[]; here: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(1400);
  const step = width / Math.max(1, stops.length);
  return (
    <div className="stops" ref={ref}>
      <svg width={width} height={height} role="img" aria-label={lineInWords(stops)}>
        <Band stops={stops} width={width} step={step} />
        {runsOf(stops).map(({ group, from }) => (
          <g key={group + from}>
            <text x={from * step + (from ? 5 : 0)} y={9} style={{ fontSize: 9.5 }}>
              {groupNames[group]}
            </text>
            {from > 0 && <path className="ruled" d={`M${from * step} 12V46`} />}
          </g>
        ))}
        {stops.map((stop, i) => (
          <Code key={stop.code} stop={stop} x={(i + 0.5) * step} here={stop.code === here} step={step} />
        ))}
      </svg>
      <StopLinks
        stops={stops}
        here={here}
        boxes={stops.map((_, i) => ({ left: i * step, width: step, top: 12, height: height - 12 }))}
      />
    </div>
  );
});

function Band({ stops, width, step }: { stops: readonly Stop[]; width: number; step: number }) {
  const id = useId();
  return (
    <>
      <linearGradient id={id} gradientUnits="userSpaceOnUse" x1={0} x2={width} y1={0} y2={0}>
        {stops.map(({ code, bar }, i) => (
          <stop
            key={code}
            offset={((i + 0.5) * step) / width}
            stopColor={bar ? heatColour(bar.mean) : 'var(--field)'}
          />
        ))}
      </linearGradient>
      <rect
        x={0.5}
        y={14.5}
        width={Math.max(0, width - 1)}
        height={8}
        fill={`url(#${id})`}
        stroke="var(--ink)"
      />
    </>
  );
}

function Code({ stop, x, here, step }: { stop: Stop; x: number; here: boolean; step: number }) {
  const first = foremost(stop.findings);
  const half = Math.min(28, step / 2 - 1);
  return (
    <g opacity={stop.state === 'now' || stop.failed || here ? 1 : 0.6}>
      {here && <path className="outline" strokeWidth={2} d={`M${x - half} 25V11H${x + half}V25`} />}
      <text
        className={stop.failed ? 'finding strong mid' : here ? 'value mid' : 'mid'}
        x={x}
        y={39}
        style={{ fontSize: here ? 14 : 10.5 }}
      >
        {stop.code}
      </text>
      {first && first.finding.level !== 'note' && step > 34 && (
        <Diamond level={first.finding.level} x={x + (here ? 19 : 15)} y={35} size={4.5} />
      )}
    </g>
  );
}
