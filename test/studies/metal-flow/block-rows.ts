import { evenMesh } from '@bloomrail/engine/phenomena/metal-flow/even-mesh.fixture';
import { pressed, stuckPressure } from '@bloomrail/engine/phenomena/metal-flow/pressed-block.fixture';
import { roughPlatens } from '@bloomrail/engine/phenomena/rolling/slip-line';
import { between, percentOver, type Row } from './rows.ts';

/** One slice alone: blocks whose answer is known exactly, or by slip lines. */
export const blockRows = (): Row[] => [...freeRows(), ...[1, 2, 3.6, 6.72, 10].flatMap(platenRows)];

function freeRows(): Row[] {
  const mesh = evenMesh({ width: 0.8, height: 1, columns: 5, rows: 6, distortion: 0.3 });
  const plain = pressed(mesh, { exponent: 0.15 });
  // Mises: p² + pt + t² = 1 at t = −p/4.
  const pressure = 1 / Math.sqrt(1 - 1 / 4 + 1 / 16);
  const pushed = pressed(mesh, { exponent: 0.001, pull: -pressure / 4 });
  const name = 'block without friction on a distorted mesh';
  return [
    between(
      `${name}: rate along the bar over that of the height`,
      plain.along,
      [0.4995, 0.5005],
      '',
      'exact',
      4,
    ),
    between(`${name}: spread exponent`, plain.spread, [0.4995, 0.5005], '', 'exact', 4),
    between(
      `${name}, pushed from behind with p/4: spread exponent`,
      pushed.spread,
      [0.711, 0.717],
      '',
      'exact: (p − t)/(2p + t) = 0.714',
      3,
    ),
    between(
      `${name}, pushed from behind with p/4: pressure over flow stress`,
      pushed.pressure,
      [0.99 * pressure, 1.01 * pressure],
      '',
      'exact: 1.109',
      3,
    ),
  ];
}

/** Pressure between rough plates in plane strain with 8 and 16 elements per half height, and what they tend to. */
function platenRows(ratio: number): Row[] {
  // The computed fields end at 8; from there on 3/4 + w/4h, which is within 1 % from 3 on (from memory).
  const exact = ratio > 8 ? 3 / 4 + ratio / 4 : roughPlatens(ratio);
  const off = (rows: number) =>
    percentOver(
      stuckPressure(evenMesh({ width: ratio, height: 1, columns: Math.round(ratio * rows), rows })),
      exact,
    );
  const [coarse, fine] = [off(8), off(16)];
  const row = (how: string, value: number, most: number) =>
    between(`rough plates w/h ${ratio}, ${how}: pressure`, value, [-most, most], '%', 'slip lines, Hill');
  return [
    row('8 elements per half height', coarse, 3),
    row('16 elements per half height', fine, 3),
    row('both carried on to elements without size', 2 * fine - coarse, 1),
  ];
}
