import { clock, figure } from '../ink/numbers.ts';
import type { TableModel } from '../ink/Table.tsx';
import type { Stop } from './line-model.ts';

/** The line in figures: what the lanes draw, row by row. */
export function lineTable(stops: readonly Stop[]): TableModel {
  return {
    caption: 'The line in figures, middle of the bar',
    heads: [
      'Station',
      'Name',
      'Section, mm²',
      'Length, m',
      'Surface, °C',
      'Mean, °C',
      'Core, °C',
      'Force, %',
      'Torque, %',
      'Power, %',
      'Clock',
      'Findings',
    ],
    rows: stops.map(({ code, title, bar, loads, findings }) => [
      code,
      title,
      ...(bar
        ? [
            figure(bar.area, 'mm2'),
            figure(bar.length, 'm'),
            figure(bar.surface, 'C'),
            figure(bar.mean, 'C'),
            figure(bar.core, 'C'),
          ]
        : ['', '', '', '', '']),
      ...([loads.force, loads.torque, loads.power] as const).map(percent),
      bar ? clock(bar.clock) : '',
      findings.map(({ level, text }) => `${level}: ${text}`).join(' '),
    ]),
  };
}

const percent = (share: number | undefined): string =>
  share === undefined ? '' : figure(share, 'percent', 0);
