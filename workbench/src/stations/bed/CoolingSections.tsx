import type { CoolingBedRecord } from '@bloomrail/engine/stations/cooling-bed/record';
import { boundaryPath } from '../../ink/boundary-path.ts';
import { HeatLegend } from '../../ink/HeatLegend.tsx';
import { clock, figure } from '../../ink/numbers.ts';
import { isothermStep, SectionMap } from '../../ink/SectionMap.tsx';

/** The rail's section at several moments of cooling, upright, with isotherms. */
export function CoolingSections({ record, width }: { record: CoolingBedRecord; width: number }) {
  const { nodeX, nodeY, triangles, pictures } = record;
  const shown = pictures.slice(0, 6);
  const column = width / Math.max(1, shown.length);
  const wide = Math.max(...nodeX) - Math.min(...nodeX);
  const tall = Math.max(...nodeY) - Math.min(...nodeY);
  const scale = Math.min(150 / tall, (column - 20) / wide);
  const height = tall * scale;
  const middle = (Math.max(...nodeX) + Math.min(...nodeX)) / 2;
  return (
    <>
      <svg
        width={width}
        height={height + 44}
        role="img"
        aria-label={`The section at ${shown.length} moments of cooling.`}
      >
        {shown.map((picture, i) => {
          const centre = (i + 0.5) * column;
          const place = {
            x: (m: number) => centre + scale * (m - middle),
            y: (m: number) => 4 + scale * (Math.max(...nodeY) - m),
          };
          const field = { x: nodeX, y: nodeY, triangles, values: picture.temperature };
          return (
            <g key={picture.time}>
              <SectionMap field={field} place={place} edge={boundaryPath(nodeX, nodeY, triangles, place)} />
              <text className="name mid" x={centre} y={height + 20}>
                {clock(picture.time)}
              </text>
              <text className="mid" x={centre} y={height + 34}>
                {figure(Math.min(...picture.temperature), 'C')} to{' '}
                {figure(Math.max(...picture.temperature), 'C')} °C, lines every {isothermStep(field)}
              </text>
            </g>
          );
        })}
      </svg>
      <HeatLegend />
    </>
  );
}
