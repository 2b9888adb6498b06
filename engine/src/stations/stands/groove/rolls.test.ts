import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import { edgesOfPath, nearestOn } from '../../../section/edges.ts';
import { Groove } from './groove.ts';
import { type Roll, rollsOf } from './rolls.ts';

/** Own trial design, no mill's drawing: parameters of 18 grooves and the rolls' contours as points. */
const schedule = JSON.parse(
  readFileSync(new URL('../../../../../reference/schedules/60E1.json', import.meta.url), 'utf8'),
);
const names = { top: 'top', left: 'foot roll', right: 'head roll' } as const;
interface Row {
  readonly code: string;
  readonly groove: { readonly gapMm?: number };
  readonly rollDiameterMm: number;
  readonly rolls: readonly { side: keyof typeof names; axisMm: number; yxMm: [number, number][] }[];
}
const passes: Row[] = schedule.passes;

const rollsAt = (row: Row, opened = 0) => {
  const groove = Groove.parse(row.groove);
  const nominal = 'gap' in groove ? groove.gap : 0.0167145;
  const diameters = { horizontal: row.rollDiameterMm / 1e3, vertical: 0.75 };
  return must(rollsOf(groove, { gap: nominal + opened }, diameters));
};

const farthest = (roll: Roll, points: readonly [number, number][]) => {
  const edges = edgesOfPath(roll.profile);
  // points below the axis belong to the mirrored half, which their drawing flattens
  const above = points.filter(([y]) => y >= 0);
  return Math.max(...above.map(([y, x]) => nearestOn(edges, x / 1e3, y / 1e3).distance * 1e3));
};

test.each(passes.map((row) => [row.code, row] as const))(
  '%s is the groove of its drawing to 0.05 mm',
  (_, row) => {
    const { rolls } = rollsAt(row);
    for (const { side, axisMm, yxMm } of row.rolls) {
      const roll = rolls.find(({ name }) => name === names[side]);
      if (!roll) throw new Error(`no ${side} roll`);
      expect(farthest(roll, yxMm)).toBeLessThan(0.05);
      // two decimals of a millimetre in the drawing, 0.1 where its head roll is drawn flat across the axis
      expect(Math.abs(roll.axis * 1e3 - axisMm)).toBeLessThan(side === 'right' ? 0.15 : 0.01);
    }
  },
);

test('opening the gap lifts the top roll by half of it and leaves its shape', () => {
  const [shut, open] = [rollsAt(passes[9]), rollsAt(passes[9], 0.004)];
  open.top.vertices.forEach(({ x, y, bulge }, i) => {
    expect(x).toBe(shut.top.vertices[i].x);
    expect(y).toBeCloseTo(shut.top.vertices[i].y + 0.002, 12);
    expect(bulge).toBe(shut.top.vertices[i].bulge);
  });
  expect(open.rolls[0].axis).toBeCloseTo(shut.rolls[0].axis + 0.002, 12);
});

test('the bottom roll is the mirror of the top roll', () => {
  for (const row of passes) {
    const { rolls } = rollsAt(row);
    expect(rolls[1].profile.vertices.map(({ y }) => -y)).toEqual(rolls[0].profile.vertices.map(({ y }) => y));
    expect(rolls[1].axis).toBe(-rolls[0].axis);
  }
});
