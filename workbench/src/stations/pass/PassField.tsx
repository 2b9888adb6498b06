import { sectionProperties } from '@bloomrail/engine/section/properties';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { memo, useId, useMemo } from 'react';
import { Drawing } from '../../ink/Drawing.tsx';
import { Frame } from '../../ink/Frame.tsx';
import { Hatching } from '../../ink/Hatching.tsx';
import { HeatLegend } from '../../ink/HeatLegend.tsx';
import { HotSection } from '../../ink/HotSection.tsx';
import { figure } from '../../ink/numbers.ts';
import { useWidth } from '../../page/use-width.ts';
import type { Field } from '../../plan/fields.ts';
import { GapDimension, RollPosition } from './Dimensions.tsx';
import { type PassPicture, passPicture, type RollPicture } from './pass-model.ts';

/** The bar in the stand, to scale: rolls hatched, entering outline broken, leaving bar in its heat. */
export function PassField({ record, fields }: { record: PassRecord; fields: readonly Field[] }) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  const picture = useMemo(() => passPicture(record, width), [record, width]);
  return (
    <div ref={ref}>
      <PassDrawing record={record} fields={fields} picture={picture} />
      <p className="caption">
        Bar leaving, in its heat; broken outline: bar entering. Frame graduated in{' '}
        {figure(picture.bar, 'mm', 0)} mm.
        {record.turned > 0 && ` The bar was turned by ${figure(record.turned, 'deg', 0)}° before the pass.`}
      </p>
      <HeatLegend />
    </div>
  );
}

interface Props {
  readonly record: PassRecord;
  readonly fields: readonly Field[];
  readonly picture: PassPicture;
}

function PassDrawing({ record, fields, picture }: Props) {
  const { width, height, placing, bar } = picture;
  const window = windowOf(picture);
  return (
    <Drawing width={width} height={height} label={inWords(record)}>
      <Stand record={record} picture={picture} />
      <GapDimension fields={fields} record={record} picture={picture} />
      <RollPosition fields={fields} picture={picture} ending="footRollMm" />
      <RollPosition fields={fields} picture={picture} ending="headRollMm" />
      <Frame {...window} zeroX={placing.x(0)} zeroY={placing.y(0)} bar={bar * placing.scale} />
    </Drawing>
  );
}

/** Rolls and bar as computed: drawn anew with a new answer, not with every step of a setting. */
const Stand = memo(function Stand({ record, picture }: Omit<Props, 'fields'>) {
  const id = useId();
  const { placing } = picture;
  const window = windowOf(picture);
  const { surface, core } = record.leaving.places.middle;
  const { area, perimeter } = sectionProperties(record.exit.outline);
  return (
    <>
      <clipPath id={`${id}window`}>
        <rect x={window.left} y={window.top} width={window.width} height={window.height} />
      </clipPath>
      <rect className="field" x={window.left} y={window.top} width={window.width} height={window.height} />
      <Hatching id={`${id}hatch`} />
      <Hatching id={`${id}back`} turned />
      <g clipPath={`url(#${id}window)`}>
        {picture.rolls.map((roll) => (
          <g key={roll.name}>
            <path className="steel" d={roll.path} />
            <path
              d={roll.path}
              fill={`url(#${id}${roll.name.includes('roll') ? 'back' : 'hatch'})`}
              className="roll"
            />
          </g>
        ))}
        <path className="centre" d={`M${window.left} ${placing.y(0)}h${window.width}`} />
        <HotSection
          outline={record.exit.outline}
          placing={placing}
          surface={surface}
          core={core}
          depth={(2 * area) / perimeter}
          className="outline"
        />
        <path className="before" d={picture.entry} />
      </g>
      {picture.rolls.map((roll) => (
        <RollName key={roll.name} roll={roll} turning={record.rollTurning} />
      ))}
    </>
  );
});

const windowOf = ({ width, height }: PassPicture) => ({
  left: 6,
  top: 6,
  width: width - 12,
  height: height - 12,
});

function inWords({ code, entry, exit }: PassRecord): string {
  const size = ({ width, height }: PassRecord['entry']) =>
    `${figure(width, 'mm')} by ${figure(height, 'mm')}`;
  return `Pass ${code}: the bar enters ${size(entry)} mm and leaves ${size(exit)} mm, ${figure(exit.area / entry.area, 'percent')} % of its section.`;
}

function RollName({
  roll: { name, idle, diameter, label },
  turning,
}: {
  roll: RollPicture;
  turning: number;
}) {
  const title = {
    top: 'Top roll',
    bottom: 'Bottom roll',
    'foot roll': 'Foot roll',
    'head roll': 'Head roll',
  }[name];
  const speed = idle ? 'idle' : `${figure(turning, 'rpm', 0)} rpm`;
  const [x, y] = label;
  return (
    <g>
      <rect className="field" x={x - 56} y={y - 14} width={112} height={31} />
      <text className="name mid" x={x} y={y}>
        {title}
      </text>
      <text className="mid" x={x} y={y + 13}>
        Ø {figure(diameter, 'mm', 0)}, {speed}
      </text>
    </g>
  );
}
