import { units } from '@bloomrail/engine/units/unit';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { useBench } from '../page/bench-context.ts';
import type { Field, NumberField } from '../plan/fields.ts';
import { inField, settled, stepped } from './stepping.ts';

interface Props {
  readonly field: NumberField;
  readonly x: number;
  readonly y: number;
  /** Change of the value, in the field's unit, for one pixel up (vertical) or to the right (horizontal). */
  readonly perPixel: number;
  readonly horizontal?: boolean;
}

/** A setting where it acts: a blue square to drag, or to move with the arrow keys. One control with the table's row. */
export function Handle({ field, x, y, perPixel, horizontal = false }: Props) {
  const move = useBench((bench) => bench.move);
  const hold = useRef<{ at: number; value: number; joins: boolean }>(undefined);
  const keys = useRef(false);
  const along = (event: PointerEvent) => (horizontal ? event.clientX : -event.clientY);
  if (field.value === undefined) return null;
  const value = field.value;

  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    hold.current = { at: along(event), value, joins: false };
  };
  const onPointerMove = (event: PointerEvent) => {
    const held = hold.current;
    if (!held) return;
    const to = settled(held.value + (along(event) - held.at) * perPixel, field);
    if (to === field.value) return;
    move(field.path, field.title, to, held.joins);
    held.joins = true;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    if (!way) return;
    event.preventDefault();
    event.stopPropagation();
    move(field.path, field.title, stepped(field, way, event), keys.current);
    keys.current = true;
  };

  return (
    <g
      role="slider"
      tabIndex={0}
      aria-label={field.title}
      aria-orientation={horizontal ? 'horizontal' : 'vertical'}
      aria-valuenow={value}
      aria-valuemin={field.min}
      aria-valuemax={field.max}
      aria-valuetext={`${inField(value, field)} ${units[field.unit].label}`}
      style={{ cursor: horizontal ? 'ew-resize' : 'ns-resize', touchAction: 'none' }}
      {...{ onPointerDown, onPointerMove, onKeyDown }}
      onPointerUp={() => {
        hold.current = undefined;
      }}
      onBlur={() => {
        keys.current = false;
      }}
    >
      <rect x={x - 14} y={y - 14} width={28} height={28} fill="transparent" />
      <rect
        x={x - 5}
        y={y - 5}
        width={10}
        height={10}
        fill="var(--field)"
        stroke="var(--set)"
        strokeWidth={1.6}
      />
      <path fill="var(--set)" d={horizontal ? sideways(x, y) : upright(x, y)} />
    </g>
  );
}

const upright = (x: number, y: number) => `M${x} ${y - 12}l4 5h-8zM${x} ${y + 12}l4 -5h-8z`;
const sideways = (x: number, y: number) => `M${x - 12} ${y}l5 4v-8zM${x + 12} ${y}l-5 4v-8z`;

/** The number field at the end of a path, if this station has one. */
export function fieldAt(fields: readonly Field[], ending: string): NumberField | undefined {
  const found = fields.find(({ path }) => path.endsWith(ending));
  return found?.kind === 'number' ? found : undefined;
}
