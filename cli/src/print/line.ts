import { type Measure, shareOfLimit } from '@bloomrail/engine/bar/measure';
import type { LineRun } from '@bloomrail/engine/line/run-line';
import type { Visit } from '@bloomrail/engine/line/visit';
import { fromSi, print } from '@bloomrail/engine/units/unit';
import { signs } from './findings.ts';
import { type Column, table } from './table.ts';

/** The line as a table: a row per stop, from furnace to bundle. */
export function lineTable(visits: readonly Visit[]): string {
  return table(columns, visits);
}

const columns: readonly Column<Visit>[] = [
  { head: '', align: 'left', cell: ({ code }) => code },
  { head: 'Station', align: 'left', cell: ({ title }) => title },
  {
    head: 'Clock',
    unit: 'h:min:s',
    align: 'right',
    cell: ({ record }) => clock(record.leaving.places.middle.clock),
  },
  {
    head: 'Section',
    unit: 'cm²',
    align: 'right',
    cell: ({ record }) => (record.leaving.area * 1e4).toFixed(1),
  },
  { head: 'Length', unit: 'm', align: 'right', cell: ({ record }) => record.leaving.length.toFixed(1) },
  {
    head: 'Mean',
    unit: '°C',
    align: 'right',
    cell: ({ record }) => record.leaving.places.middle.mean.toFixed(0),
  },
  {
    head: 'Surface',
    unit: '°C',
    align: 'right',
    cell: ({ record }) => record.leaving.places.middle.surface.toFixed(0),
  },
  { head: 'Force', unit: 'kN', align: 'right', cell: (visit) => load(visit, 'force', 'kN') },
  { head: 'Torque', unit: 'kN·m', align: 'right', cell: (visit) => load(visit, 'torque', 'kNm') },
  { head: 'Power', unit: 'kW', align: 'right', cell: (visit) => load(visit, 'power', 'kW') },
  { head: 'of limit', unit: '%', align: 'right', cell: largestShare },
  { head: 'Findings', align: 'left', cell: marks },
];

/** The largest of a load's parts, as a roller would read it off the gauge. */
function load({ record }: Visit, name: string, unit: 'kN' | 'kNm' | 'kW'): string {
  const values = record.measures.filter((measure) => measure.name === name && measure.unit === unit);
  if (values.length === 0) return '';
  return fromSi(Math.max(...values.map(({ value }) => value)), unit).toFixed(0);
}

function largestShare({ record }: Visit): string {
  const shares = record.measures.filter(isLoad).flatMap((measure) => shareOfLimit(measure) ?? []);
  return shares.length === 0 ? '' : (100 * Math.max(...shares)).toFixed(0);
}

const isLoad = ({ name }: Measure): boolean => ['force', 'torque', 'power'].includes(name);

function marks({ record }: Visit): string {
  return record.findings
    .map(({ level }) => signs[level])
    .sort()
    .join('');
}

/** h:min:s since the furnace door; negative inside the furnace. */
function clock(seconds: number): string {
  const whole = Math.round(Math.abs(seconds));
  const parts = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const text = parts.map((part, i) => (i === 0 ? String(part) : String(part).padStart(2, '0'))).join(':');
  return seconds < 0 && whole > 0 ? `−${text}` : text;
}

/** The figures a technologist asks for first. */
export function summaryText({ summary, balance }: LineRun): string {
  const { outside, near, notes } = summary;
  return [
    `Yield ${print(summary.yield, 'percent')}   bars ${summary.bars}   bar ${print(summary.barLength, 'm')} hot   elongation ${summary.elongation.toFixed(2)}`,
    `Rhythm ${print(summary.rhythm, 's', 0)}, the stands allow ${print(summary.pace, 's', 0)} (${summary.paceStand})   after the last pass ${print(summary.finishing, 'C')}   fuel ${print(summary.fuel, 'GJPerT')}`,
    `Findings: ${outside} outside, ${near} near, ${notes} notes   mass closes to ${balance.massRelative.toExponential(0)}, energy to ${(balance.energyRelative * 100).toFixed(3)} %`,
  ].join('\n');
}
