import type { StraightenersRecord } from '@bloomrail/engine/stations/straighteners/record';
import { useState } from 'react';
import { useWidth } from '../../page/use-width.ts';
import type { Field } from '../../plan/fields.ts';
import { MachineLanes } from './MachineLanes.tsx';
import { Rollers } from './Rollers.tsx';
import { StressSection } from './StressSection.tsx';

/** Both planes of straightening: rollers with their offsets, and the lanes that hang under them. */
export function StraightenersField({
  record,
  fields,
}: {
  record: StraightenersRecord;
  fields: readonly Field[];
}) {
  const { ref, width } = useWidth<HTMLDivElement>(860);
  const [plane, setPlane] = useState<'height' | 'side'>('height');
  const machine = record[plane];
  const last = machine.along[machine.along.length - 1];
  const [left, right] = [96, width - 4];
  const x = (metres: number) => left + 34 + ((right - left - 92) * metres) / last;
  return (
    <div ref={ref}>
      <p className="views" style={{ display: 'flex', gap: 16, marginBottom: 4 }}>
        {(['height', 'side'] as const).map((name) => (
          <button
            key={name}
            type="button"
            className={name === plane ? '' : 'act'}
            aria-pressed={name === plane}
            onClick={() => setPlane(name)}
          >
            {name === plane ? <b>{titles[name]}</b> : titles[name]}
          </button>
        ))}
      </p>
      <Rollers machine={machine} plane={plane} fields={fields} width={width} x={x} />
      <MachineLanes machine={machine} width={width} x={x} left={left} plane={plane} />
      <StressSection record={record} width={width} />
    </div>
  );
}

const titles = { height: 'Height plane', side: 'Side plane' };
