import type { MachineRecord } from '@bloomrail/engine/stations/straighteners/record';
import { curveNatural, line } from 'd3-shape';
import { Drawing } from '../../ink/Drawing.tsx';
import { figure } from '../../ink/numbers.ts';
import type { Field } from '../../plan/fields.ts';
import { fieldAt, Handle } from '../../sheet/Handle.tsx';

type Roller = MachineRecord['rollers'][number];

interface Props {
  readonly machine: MachineRecord;
  readonly plane: 'height' | 'side';
  readonly fields: readonly Field[];
  readonly width: number;
  readonly x: (metres: number) => number;
}

const middle = 92;
const bar = 6;

/** Rollers in elevation: spacing to scale, offsets enlarged and said so, each with its figure and its handle. */
export function Rollers({ machine, plane, fields, width, x }: Props) {
  const { rollers } = machine;
  const pitch = x(rollers[1].position) - x(rollers[0].position);
  const radius = Math.min(34, 0.42 * pitch);
  const largest = Math.max(1e-3, ...rollers.map(({ offset }) => Math.abs(offset)));
  const times = Math.max(
    1,
    Math.round(16 / (largest * (pitch / (rollers[1].position - rollers[0].position)))),
  );
  const perMetre = 16 / largest;
  const even = (roller: Roller) => roller.number % 2 === 0;
  const contact = (roller: Roller) => middle + (even(roller) ? roller.offset * perMetre - bar : bar);
  const path = line<Roller>(
    (roller) => x(roller.position),
    (roller) => contact(roller) + (even(roller) ? bar : -bar),
  ).curve(curveNatural);
  return (
    <Drawing width={width} height={190} label={inWords(rollers)}>
      <text className="name" x={0} y={20}>
        Rollers
      </text>
      <text x={0} y={34} style={{ fontSize: 9.5 }}>
        offsets, mm,
      </text>
      <text x={0} y={47} style={{ fontSize: 9.5 }}>
        {times} times as large
      </text>
      <path d={path(rollers) ?? ''} fill="none" stroke="var(--ink)" strokeWidth={2 * bar + 1.6} />
      <path d={path(rollers) ?? ''} fill="none" stroke="var(--steel)" strokeWidth={2 * bar - 1} />
      {rollers.map((roller) => {
        const y = contact(roller) + (even(roller) ? -radius : radius);
        const field = fieldOf(fields, plane, roller.number, rollers.length);
        return (
          <g key={roller.number}>
            <circle
              className="outline"
              cx={x(roller.position)}
              cy={y}
              r={radius}
              style={{ fill: 'var(--steel)', strokeDasharray: roller.touches ? undefined : '4 3' }}
            />
            <text className="mid" x={x(roller.position)} y={y - 6}>
              {roller.number}
            </text>
            {field ? (
              <>
                <text className="live mid" x={x(roller.position)} y={y + 12} style={{ fontSize: 12 }}>
                  {figure(roller.offset, 'mm')}
                </text>
                <Handle field={field} x={x(roller.position) + radius + 9} y={y} perPixel={-1000 / perMetre} />
              </>
            ) : null}
          </g>
        );
      })}
    </Drawing>
  );
}

/** Even rollers are set; in the height plane the last odd one too. */
function fieldOf(fields: readonly Field[], plane: 'height' | 'side', number: number, count: number) {
  if (number % 2 === 0) return fieldAt(fields, `${plane}OffsetsMm.${number / 2 - 1}`);
  return plane === 'height' && number === count ? fieldAt(fields, 'heightLastMm') : undefined;
}

function inWords(rollers: readonly Roller[]): string {
  const set = rollers.filter(({ number }) => number % 2 === 0);
  return `${rollers.length} rollers; offsets ${set.map(({ offset }) => figure(offset, 'mm')).join(', ')} mm`;
}
