import type { Visit } from '@bloomrail/engine/line/visit';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { fromSi } from '@bloomrail/engine/units/unit';
import { type Column, table } from './table.ts';

interface FlowedPass {
  readonly code: string;
  readonly record: PassRecord;
  readonly flow: NonNullable<PassRecord['flow']>;
}

/** Passes that metal flow computed, each beside the handbook; nothing where there is none. */
export function flowTable(visits: readonly Visit[]): string | undefined {
  const passes = visits.flatMap(({ code, record }) => {
    const pass = record as PassRecord;
    return pass.kind === 'pass' && pass.flow ? [{ code, record: pass, flow: pass.flow }] : [];
  });
  return passes.length === 0 ? undefined : `By metal flow, and by the handbook\n${table(columns, passes)}`;
}

const number = (head: string, unit: string, cell: (pass: FlowedPass) => string): Column<FlowedPass> => ({
  head,
  ...(unit ? { unit } : {}),
  align: 'right',
  cell,
});

const kilo = (value: number): string => (value / 1000).toFixed(0);

const columns: readonly Column<FlowedPass>[] = [
  { head: '', align: 'left', cell: ({ code }) => code },
  number('Force', 'kN', ({ record }) => kilo(record.places.middle.force)),
  number('handbook', 'kN', ({ flow }) => kilo(flow.handbook.force)),
  number('Torque', 'kN·m', ({ record }) => kilo(record.places.middle.torque)),
  number('handbook', 'kN·m', ({ flow }) => kilo(flow.handbook.torque)),
  number('Elongation', '', ({ record }) => record.elongation.toFixed(3)),
  number('handbook', '', ({ flow }) => flow.handbook.elongation.toFixed(3)),
  number('Width', 'mm', ({ record }) => fromSi(record.exit.width, 'mm').toFixed(1)),
  number('handbook', 'mm', ({ flow }) => fromSi(flow.handbook.width, 'mm').toFixed(1)),
  number('Fin', 'mm²', ({ record }) => fromSi(record.fin, 'mm2').toFixed(0)),
  number('Filled', '%', ({ record }) => (100 * record.fill).toFixed(1)),
  number('Slip', '%', ({ record }) => (100 * record.forwardSlip).toFixed(1)),
  number('Energy off', '%', ({ flow }) => (100 * flow.energyError).toFixed(2)),
  number('Marches', '', ({ flow }) => String(flow.marches)),
];
