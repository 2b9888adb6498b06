import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import { expect, test } from 'vitest';
import { forceRows, spreadRows } from './pass-laws.ts';

const record = (own: object, ofFlow: boolean) =>
  ({
    ...{ forceLaw: 'Sims', forceFactor: 1, forceLaws: [{ law: 'Sims', force: 2e6, within: true }] },
    ...{ spreadLaw: 'Hill', spreadFactor: 1, spreadLaws: [{ law: 'Hill', spread: 0.005, within: true }] },
    ...{ entry: { width: 0.3 }, exit: { width: 0.304 } },
    places: { middle: { force: 2.2e6, ...own } },
    ...(ofFlow ? { flow: {} } : {}),
  }) as unknown as PassRecord;

test('metal flow stands first and is the one in use where it computed the pass', () => {
  const flat = record({}, true);
  expect(forceRows(flat)).toMatchObject([
    { law: 'metal flow', value: 2.2e6, used: true },
    { law: 'Sims', used: false },
  ]);
  expect(spreadRows(flat)[0]).toMatchObject({ law: 'metal flow', used: true });
  expect(spreadRows(flat)[0].value).toBeCloseTo(0.004, 12);
});

test('between vertical rolls the width of the bar is no spread', () => {
  expect(spreadRows(record({ footForce: 2e6, headForce: 1e6 }, true)).map(({ law }) => law)).toEqual([
    'Hill',
  ]);
});

test('by the handbook its own law is the one in use', () => {
  expect(forceRows(record({}, false))).toMatchObject([{ law: 'Sims', used: true }]);
  expect(spreadRows(record({}, false))).toMatchObject([{ law: 'Hill', used: true }]);
});
