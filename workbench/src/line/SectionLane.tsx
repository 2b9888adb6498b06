import { sectionProperties } from '@bloomrail/engine/section/properties';
import { HotSection } from '../ink/HotSection.tsx';
import { heatColour } from '../ink/heat-scale.ts';
import { placedAt } from '../ink/outline-path.ts';
import { LaneName, type LaneProps } from './Lane.tsx';
import { type BarHere, groupNames, runsOf, type Stop } from './line-model.ts';

const middle = 78;
const codes = 138;

/** Sections in travel order to one scale, threaded on the bar; their groups above, their codes below. */
export function SectionLane(props: LaneProps) {
  const { stops, layout } = props;
  return (
    <g>
      <Groups {...props} />
      <LaneName top={middle - 8} name="Section" notes={['one scale']} />
      {stops.some(({ bar }) => bar) && <ScaleBar scale={layout.scale} y={middle + 24} />}
      <Thread {...props} />
      {stops.map((stop, i) => (
        <g key={stop.code}>
          <SectionOf stop={stop} x={layout.columns[i].middle} scale={layout.scale} />
          <text
            className={stop.failed ? 'finding strong mid' : stop.state === 'now' ? 'name mid' : 'mid quiet'}
            x={layout.columns[i].middle}
            y={codes}
            style={{ fontSize: 12 }}
          >
            {stop.code}
          </text>
          <Direction stop={stop} x={layout.columns[i].middle} y={codes + 13} />
        </g>
      ))}
    </g>
  );
}

function Groups({ stops, layout }: LaneProps) {
  return runsOf(stops).map(({ group, from, to }) => {
    const [a, b] = [layout.columns[from].left + 3, layout.columns[to].left + layout.columns[to].width - 3];
    return (
      <g key={`${group} ${from}`}>
        <path className="thin" d={`M${a} 26V20H${b}V26`} />
        <text className="name mid" x={(a + b) / 2} y={13}>
          {b - a > 8 * groupNames[group].length ? groupNames[group] : ''}
        </text>
      </g>
    );
  });
}

function SectionOf({ stop, x, scale }: { stop: Stop; x: number; scale: number }) {
  if (!stop.bar) return <rect className="before" x={x - 9} y={middle - 9} width={18} height={18} />;
  const { bar } = stop;
  const opacity = stop.state === 'old' ? 0.35 : 1;
  return (
    <g opacity={opacity}>
      <HotSection
        outline={bar.outline}
        placing={placedAt(scale, centreOf(bar), [x, middle])}
        surface={bar.surface}
        core={bar.core}
        depth={depthOf(bar)}
      />
    </g>
  );
}

const centreOf = ({ bounds }: BarHere): [number, number] => [
  (bounds.left + bounds.right) / 2,
  (bounds.bottom + bounds.top) / 2,
];

/** m from the surface to the core of any section: half the side of a square, half the thickness of a plate. */
export const depthOf = ({ outline }: BarHere): number => {
  const { area, perimeter } = sectionProperties(outline);
  return (2 * area) / perimeter;
};

/** The bar itself between the stations: a thin rod in the colour of the mean temperature. */
function Thread({ stops, layout }: LaneProps) {
  return stops.slice(1).map(({ bar, code }, i) => {
    const [from, to] = [layout.columns[i].middle, layout.columns[i + 1].middle];
    if (!bar) return <path key={code} className="before" d={`M${from} ${middle}H${to}`} />;
    return (
      <rect
        key={code}
        x={from}
        y={middle - 2}
        width={to - from}
        height={4}
        fill={heatColour(bar.mean)}
        stroke="var(--ink)"
        strokeWidth={0.5}
      />
    );
  });
}

/** Which end of the bar goes first through a pass: the head runs right, the tail left. */
function Direction({ stop: { first }, x, y }: { stop: Stop; x: number; y: number }) {
  if (!first) return null;
  const way = first === 'head' ? 1 : -1;
  return (
    <g stroke="var(--ink)" fill="var(--ink)">
      <path d={`M${x - 8 * way} ${y}H${x + 3 * way}`} />
      <path stroke="none" d={`M${x + 8 * way} ${y}l${-7 * way} -2.6v5.2z`} />
    </g>
  );
}

function ScaleBar({ scale, y }: { scale: number; y: number }) {
  const length = 0.2 * scale;
  return (
    <g>
      <path className="thin" d={`M0 ${y - 3}v6M0 ${y}H${length}M${length} ${y - 3}v6`} />
      <text x={length + 8} y={y + 3.5} style={{ fontSize: 9.5 }}>
        200 mm
      </text>
    </g>
  );
}
