import { sectionProperties } from '@bloomrail/engine/section/properties';
import type { DescalerRecord } from '@bloomrail/engine/stations/descaler/record';
import { Frame } from '../../ink/Frame.tsx';
import { HotSection } from '../../ink/HotSection.tsx';
import { figure } from '../../ink/numbers.ts';
import { boundsOf, placedAt } from '../../ink/outline-path.ts';

const height = 330;

type Face = DescalerRecord['faces'][number];

/** The section under the jets, to scale; every face with its spray and the share it covers. */
export function SprayedSection({ record, width }: { record: DescalerRecord; width: number }) {
  const { leaving, faces } = record;
  const box = boundsOf(leaving.outline);
  const [wide, tall] = [box.right - box.left, box.top - box.bottom];
  const scale = (height - 150) / tall;
  const middle: [number, number] = [width / 2, height / 2];
  const placing = placedAt(scale, [(box.left + box.right) / 2, (box.bottom + box.top) / 2], middle);
  const { area, perimeter } = sectionProperties(leaving.outline);
  const { surface, core } = leaving.places.middle;
  const sentence = faces.map(
    ({ face, covered }) => `${face} face ${figure(covered, 'percent', 0)} % under the jets`,
  );
  return (
    <svg width={width} height={height} role="img" aria-label={sentence.join('; ')}>
      <rect className="field" x={6} y={6} width={width - 12} height={height - 12} />
      {faces.map((face) => (
        <Jets
          key={face.face}
          face={face}
          middle={middle}
          half={[(wide * scale) / 2, (tall * scale) / 2]}
          spray={record.sprayWidth * scale}
        />
      ))}
      <HotSection
        outline={leaving.outline}
        placing={placing}
        surface={surface}
        core={core}
        depth={(2 * area) / perimeter}
        className="outline"
      />
      <Frame
        left={6}
        top={6}
        width={width - 12}
        height={height - 12}
        zeroX={placing.x(box.left)}
        zeroY={placing.y(box.bottom)}
        bar={0.1 * scale}
      />
    </svg>
  );
}

interface JetsProps {
  readonly face: Face;
  readonly middle: readonly [number, number];
  readonly half: readonly [number, number];
  readonly spray: number;
}

/** Jets of one face: as many footprints as its overlap says, fanned from the nozzles. */
function Jets({ face: { face, covered }, middle: [x, y], half: [halfX, halfY], spray }: JetsProps) {
  const upright = face === 'top' || face === 'bottom';
  const way = face === 'top' || face === 'left' ? -1 : 1;
  const reach = 46;
  const length = 2 * (upright ? halfX : halfY) * covered;
  const count = Math.max(1, Math.round(length / Math.max(8, spray)));
  const surface = way * (upright ? halfY : halfX);
  const jets = Array.from({ length: count }, (_, i) => ((i + 0.5) / count - 0.5) * length);
  const turned = (along: number, out: number) =>
    upright ? `${x + along} ${y + out}` : `${x + out} ${y + along}`;
  const [labelX, labelY] = upright
    ? [x, y + surface + way * (reach + 12) + 4]
    : [x + surface + way * (reach + 10), y + 4];
  return (
    <g>
      {jets.map((at) => (
        <path
          key={at}
          className="thin"
          fill="var(--steel)"
          style={{ fill: 'var(--steel)' }}
          d={`M${turned(at, surface + way * reach)}L${turned(at - spray / 2, surface)}L${turned(at + spray / 2, surface)}Z`}
        />
      ))}
      <text className={upright ? 'value mid' : way < 0 ? 'value end' : 'value'} x={labelX} y={labelY}>
        {face} {figure(covered, 'percent', 0)} %
      </text>
    </g>
  );
}
