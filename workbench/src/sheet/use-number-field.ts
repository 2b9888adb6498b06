import { type FocusEvent, type KeyboardEvent, useRef, useState } from 'react';
import { useBench } from '../page/bench-context.ts';
import type { NumberField } from '../plan/fields.ts';
import { outOfRange, understand } from '../plan/number-input.ts';
import { inField, stepped } from './stepping.ts';

/** Text, keys and complaints of one number field; a value that fits becomes a move of the plan. */
export function useNumberField(field: NumberField) {
  const move = useBench((bench) => bench.move);
  const [text, setText] = useState<string>();
  const joins = useRef(false);
  const written = field.value === undefined ? '' : inField(field.value, field);
  const complaint = text === undefined ? undefined : complaintAbout(text, field);

  const commit = () => {
    if (text === undefined || complaint !== undefined) return;
    const understood = understand(text, field.unit);
    if (understood.ok) move(field.path, field.title, understood.value);
    setText(undefined);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') return commit();
    if (event.key === 'Escape') {
      setText(undefined);
      return event.currentTarget.blur();
    }
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (way === undefined || field.value === undefined) return;
    event.preventDefault();
    setText(undefined);
    move(field.path, field.title, stepped(field, way, event), joins.current);
    joins.current = true;
  };

  const onBlur = (_: FocusEvent) => {
    commit();
    joins.current = false;
  };

  return {
    complaint,
    understood: text !== undefined && complaint === undefined ? reading(text, field, written) : undefined,
    input: { value: text ?? written, onChange: setText, onKeyDown, onBlur },
  };
}

function complaintAbout(text: string, field: NumberField): string | undefined {
  const understood = understand(text, field.unit);
  return understood.ok ? outOfRange(understood.value, field) : understood.why;
}

/** What was understood, said only where it is not what was typed. */
function reading(text: string, field: NumberField, written: string): string | undefined {
  const understood = understand(text, field.unit);
  if (!understood.ok || text === written || text.trim() === String(understood.value)) return undefined;
  return `= ${inField(understood.value, field)}`;
}
