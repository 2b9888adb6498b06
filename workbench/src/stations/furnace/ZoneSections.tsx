import type { FurnaceRecord } from '@bloomrail/engine/stations/furnace/record';
import { boundaryPath } from '../../ink/boundary-path.ts';
import { figure } from '../../ink/numbers.ts';
import { isothermStep, SectionMap } from '../../ink/SectionMap.tsx';
import type { SectionField } from '../../ink/section-map.ts';

type Zone = FurnaceRecord['zones'][number];

/** Sections at the end of each zone, to one scale, with isotherms; the skid side is below. */
export function ZoneSections({
  record: { zones, section },
  width,
}: {
  record: FurnaceRecord;
  width: number;
}) {
  const column = width / Math.max(1, zones.length);
  const xs = Float64Array.from({ length: section.xy.length / 2 }, (_, i) => section.xy[2 * i]);
  const ys = Float64Array.from(xs, (_, i) => section.xy[2 * i + 1]);
  const box = {
    left: Math.min(...xs),
    right: Math.max(...xs),
    bottom: Math.min(...ys),
    top: Math.max(...ys),
  };
  const scale = Math.min(196 / (box.top - box.bottom), (column - 24) / (box.right - box.left));
  const height = scale * (box.top - box.bottom);
  return (
    <svg width={width} height={height + 48} role="img" aria-label={zones.map(inWords).join('; ')}>
      {zones.map((zone, i) => {
        const left = (i + 0.5) * column - (scale * (box.right - box.left)) / 2;
        const place = {
          x: (m: number) => left + scale * (m - box.left),
          y: (m: number) => 6 + scale * (box.top - m),
        };
        const field: SectionField = { x: xs, y: ys, triangles: section.triangles, values: zone.section };
        return (
          <g key={zone.name + zone.leaves}>
            <SectionMap field={field} place={place} edge={boundaryPath(xs, ys, section.triangles, place)} />
            <text className="name mid" x={(i + 0.5) * column} y={height + 24}>
              {figure(zone.leaves, 'min', 0)} min, after {zone.name.toLowerCase()}
            </text>
            <text className="mid" x={(i + 0.5) * column} y={height + 38}>
              {rangeOf(zone)} °C, lines every {isothermStep(field)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

const rangeOf = ({ coldest, hottest }: Zone): string => `${figure(coldest, 'C')} to ${figure(hottest, 'C')}`;

const inWords = (zone: Zone): string => `after ${zone.name} ${rangeOf(zone)} °C`;
