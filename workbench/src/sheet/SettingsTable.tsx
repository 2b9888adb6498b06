import { units } from '@bloomrail/engine/units/unit';
import { memo, useId } from 'react';
import { useBench } from '../page/bench-context.ts';
import type { ChoiceField, Field, NumberField } from '../plan/fields.ts';
import type { Json } from '../plan/plan-file.ts';
import { inField } from './stepping.ts';
import { useNumberField } from './use-number-field.ts';

interface Props {
  readonly fields: readonly Field[];
  /** What a moved value was when the last full result was computed, by path. */
  readonly was: ReadonlyMap<string, Json>;
}

/** Everything that can be moved at this station; the same values stand as handles on the drawing. */
export const SettingsTable = memo(function SettingsTable({ fields, was }: Props) {
  if (fields.length === 0) return null;
  return (
    <section aria-keyshortcuts="s" tabIndex={-1}>
      <h2>
        Settings <small>blue values can be moved, here or on the drawing</small>
      </h2>
      <div className="settings">
        {fields.map((field) =>
          field.kind === 'number' ? (
            <NumberRow key={field.path} field={field} was={was.get(field.path)} />
          ) : (
            <ChoiceRow key={field.path} field={field} was={was.get(field.path)} />
          ),
        )}
      </div>
    </section>
  );
});

function NumberRow({ field, was }: { field: NumberField; was: Json | undefined }) {
  const id = useId();
  const { complaint, understood, input } = useNumberField(field);
  const { label } = units[field.unit];
  return (
    <div className={was === undefined ? '' : 'moved'}>
      <label htmlFor={id}>{field.title}</label>
      <input
        id={id}
        className="number"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        role="spinbutton"
        aria-valuenow={field.value ?? 0}
        aria-valuemin={field.min}
        aria-valuemax={field.max}
        aria-valuetext={valueText(field, was)}
        aria-invalid={complaint !== undefined}
        aria-describedby={`${id}about`}
        data-path={field.path}
        value={input.value}
        placeholder={unset(field)}
        onChange={(event) => input.onChange(event.target.value)}
        onKeyDown={input.onKeyDown}
        onBlur={input.onBlur}
      />
      <span className="unit">{label}</span>
      <span className="about" id={`${id}about`}>
        <span>{understood ?? `${trim(field.min)} to ${trim(field.max)}`}</span>
        {was !== undefined && <span className="was">was {wasInWords(field, was)}</span>}
      </span>
      {complaint && (
        <span className="complaint" role="alert">
          {complaint}
        </span>
      )}
    </div>
  );
}

const trim = (value: number): string => String(value).replace('-', '−');

const unset = ({ leftOut }: NumberField): string => leftOut ?? 'left out';

const wasInWords = (field: NumberField, was: Json): string =>
  typeof was === 'number' ? inField(was, field) : unset(field);

function valueText(field: NumberField, was: Json | undefined): string {
  const now =
    field.value === undefined ? unset(field) : `${inField(field.value, field)} ${units[field.unit].label}`;
  return was === undefined ? now : `${now}, was ${wasInWords(field, was)}`;
}

const inWords = (value: Json): string => (value === true ? 'on' : value === false ? 'off' : String(value));

function ChoiceRow({ field, was }: { field: ChoiceField; was: Json | undefined }) {
  const id = useId();
  const move = useBench((bench) => bench.move);
  return (
    <div className={was === undefined ? '' : 'moved'}>
      <label htmlFor={id}>{field.title}</label>
      <select
        id={id}
        className="choice"
        data-path={field.path}
        value={field.options.indexOf(field.value)}
        onChange={(event) => move(field.path, field.title, field.options[Number(event.target.value)])}
      >
        {field.options.map((option, i) => (
          <option key={inWords(option)} value={i}>
            {inWords(option)}
          </option>
        ))}
      </select>
      <span className="about">
        <span />
        {was !== undefined && <span className="was">was {inWords(was)}</span>}
      </span>
    </div>
  );
}
