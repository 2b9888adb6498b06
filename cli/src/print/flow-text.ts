import type { FlowRecord, RollLoadsRecord, SliceRecord } from '@bloomrail/engine/line/flow-case/record';
import { fromSi, print, type Unit, units } from '@bloomrail/engine/units/unit';
import { cautions } from '@bloomrail/sheets/cautions';
import { signs } from './findings.ts';
import { type Column, table } from './table.ts';

/** A pass by the metal-flow model: loads of each roll, what became of the bar, how sound the answer is, findings. */
export function flowText(record: FlowRecord): string {
  const { title, steel, rolls, slices } = record;
  return [
    `${title}\n${steel}`,
    table(rollColumns, rolls),
    barLines(record),
    soundness(record),
    ...(slices ? [table(sliceColumns, slices)] : []),
    findingLines(record),
    `Held straight, rolls rigid. Friction and flow stress are assumed, not calibrated at a mill.\n${cautions.join(' ')}`,
  ].join('\n\n');
}

function column<Row>(
  head: string,
  unit: Unit,
  value: (row: Row) => number | undefined,
  decimals: number = units[unit].decimals,
): Column<Row> {
  const cell = (row: Row) => {
    const found = value(row);
    return found === undefined ? '' : signed(fromSi(found, unit).toFixed(decimals));
  };
  return { head, unit: units[unit].label, align: 'right', cell };
}

/** A minus sign that is one, and none before a zero. */
const signed = (figure: string): string => figure.replace('-', /[1-9]/.test(figure) ? '−' : '');

const rollColumns: readonly Column<RollLoadsRecord>[] = [
  { head: 'Roll', align: 'left', cell: ({ name, idle }) => (idle ? `${name}, idle` : name) },
  column('Force', 'kN', ({ force }) => force),
  column('Lateral', 'kN', ({ lateral }) => lateral),
  // Small passes need the tenths.
  column('Torque', 'kNm', ({ torque }) => torque, 1),
  column('Power', 'kW', ({ power }) => power),
  column('Turns', 'rpm', ({ turning }) => turning),
  column('Contact', 'mm2', ({ contactArea }) => contactArea),
  column('Length', 'mm', ({ contactLength }) => contactLength),
  column('Mean', 'MPa', ({ meanPressure }) => meanPressure),
  column('Highest', 'MPa', ({ highestPressure }) => highestPressure),
  column('Bite', 'deg', ({ biteAngle }) => biteAngle),
  column('Ahead', 'percent', ({ ahead }) => ahead, 0),
  column('Neutral', 'mm', ({ neutralLine }) => neutralLine),
];

function barLines({
  entry,
  exit,
  elongation,
  widthGain,
  forwardSlip,
  fill,
  temperature,
  strain,
  strainRate,
}: FlowRecord): string {
  const groove = fill
    ? `   groove ${print(fill.fill, 'percent')} full, mouth ${print(fill.mouth, 'mm')}, fin ${print(fill.fin, 'mm2')}`
    : '';
  return [
    `Section ${print(entry.area, 'mm2')} to ${print(exit.area, 'mm2')}   elongation ${elongation.toFixed(3)}`,
    `Width ${print(entry.width, 'mm')} to ${print(exit.width, 'mm')}, ${widthGain < 0 ? 'narrower' : 'wider'} by ${print(Math.abs(widthGain), 'mm')}   height ${print(entry.height, 'mm')} to ${print(exit.height, 'mm')}${groove}`,
    `Speed ${print(entry.speed, 'mPerS')} to ${print(exit.speed, 'mPerS')}   forward slip ${print(forwardSlip, 'percent')}`,
    `Temperature ${print(entry.temperature, 'C')} to ${print(exit.temperature, 'C')}, at the exit ${print(temperature.least, 'C')} to ${print(temperature.most, 'C')}`,
    `Strain ${strain.mean.toFixed(2)}, largest ${strain.most.toFixed(2)}   strain rate ${print(strainRate, 'perS', 1)}`,
  ].join('\n');
}

function soundness({ energy, quality }: FlowRecord): string {
  return [
    `Power: rolls ${print(energy.rolls, 'kW')}, pulls ${print(energy.tension, 'kW')}; deformation ${print(energy.plastic, 'kW')}, slip ${print(energy.friction, 'kW')}; not accounted for ${print(energy.error, 'percent', 2)}`,
    `Solved on ${quality.nodes} nodes in ${quality.slices} slices, ${quality.marches} marches; volume drifts ${print(quality.volumeDrift, 'percent', 2)}, axial shear up to ${print(quality.largestShear, 'percent', 0)} of what the steel bears`,
  ].join('\n');
}

const sliceColumns: readonly Column<SliceRecord>[] = [
  column('Before exit', 'mm', ({ distance }) => distance),
  column('Section', 'mm2', ({ area }) => area),
  column('Width', 'mm', ({ width }) => width),
  column('Height', 'mm', ({ height }) => height),
  column('Speed', 'mPerS', ({ speed }) => speed),
  column('Pull', 'kN', ({ pull }) => pull),
  column('Rate', 'perS', ({ strainRate }) => strainRate),
  column('Flow stress', 'MPa', ({ flowStress }) => flowStress),
  column('Shear', 'percent', ({ shear }) => shear),
];

function findingLines({ findings }: FlowRecord): string {
  if (findings.length === 0) return 'No finding on this pass.';
  const lines = findings.map(
    ({ level, text, advice }) =>
      `${`${signs[level]} ${level}`.padEnd(10)} ${text}\n${' '.repeat(11)}${advice}`,
  );
  return lines.join('\n');
}
