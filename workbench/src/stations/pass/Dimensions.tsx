import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import type { Field } from '../../plan/fields.ts';
import { fieldAt, Handle } from '../../sheet/Handle.tsx';
import { inField } from '../../sheet/stepping.ts';
import type { PassPicture } from './pass-model.ts';

interface Props {
  readonly fields: readonly Field[];
  readonly picture: PassPicture;
}

/** The gap as a blue dimension with its handle: drag it, or focus it and use the arrow keys. */
export function GapDimension({ fields, picture }: Props & { record: PassRecord }) {
  const field = fieldAt(fields, 'gapMm');
  if (field?.value === undefined) return null;
  const { x, ...gap } = picture.gap;
  // A gap wider than the window keeps its handle at the window's edge.
  const upper = Math.max(gap.upper, 84);
  const lower = Math.min(gap.lower, picture.height - 60);
  const inside = upper === gap.upper;
  const arm = 46;
  const handleY = upper - arm - 12;
  const labelLeft = x < picture.width / 2 - 30 || x > picture.width - 140;
  const text = `gap ${inField(field.value, field)} mm`;
  const plate = 8.6 * text.length + 12;
  return (
    <g>
      <path className="setting" d={`M${x} ${upper}v${-arm}M${x} ${lower}v${arm}`} />
      {inside && <Arrow x={x} y={upper} way={1} />}
      {inside && <Arrow x={x} y={lower} way={-1} />}
      <rect
        x={labelLeft ? x - 14 - plate : x + 14}
        y={handleY - 11}
        width={plate}
        height={22}
        fill="var(--setbg)"
        stroke="none"
      />
      <text className={labelLeft ? 'live end' : 'live'} x={labelLeft ? x - 20 : x + 20} y={handleY + 5}>
        {text}
      </text>
      {/* Both rolls close on the bar, so a roll moves by half of what the gap changes. */}
      <Handle field={field} x={x} y={handleY} perPixel={2000 / picture.placing.scale} />
    </g>
  );
}

const Arrow = ({ x, y, way }: { x: number; y: number; way: 1 | -1 }) => (
  <path d={`M${x} ${y}l-2.7 ${-10 * way}h5.4z`} fill="var(--set)" />
);

/** Position of a vertical roll's face on the axis of the pass, where it is set and not left as drawn. */
export function RollPosition({ fields, picture, ending }: Props & { ending: 'footRollMm' | 'headRollMm' }) {
  const field = fieldAt(fields, ending);
  if (field?.value === undefined) return null;
  // A roll set far off keeps its handle at the window's edge.
  const x = Math.min(picture.width - 24, Math.max(24, picture.placing.x(field.value / 1000)));
  const y = picture.height - 86;
  const left = x > picture.width - 100 || (ending === 'footRollMm' && x > 100);
  return (
    <g>
      <path className="setting" d={`M${x} ${picture.placing.y(0)}V${y - 14}`} strokeDasharray="2 3" />
      <Handle field={field} x={x} y={y} perPixel={1000 / picture.placing.scale} horizontal />
      <text className={left ? 'set end plate' : 'set plate'} x={left ? x - 16 : x + 16} y={y + 4}>
        {inField(field.value, field)} mm
      </text>
    </g>
  );
}
