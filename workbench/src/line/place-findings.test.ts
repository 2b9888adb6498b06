import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeFindings } from './place-findings.ts';

const wish = fc.record({
  x: fc.integer({ min: 150, max: 1400 }),
  widths: fc.tuple(fc.integer({ min: 200, max: 900 }), fc.integer({ min: 60, max: 320 })),
});

test('with up to 30 findings on the line no words meet other words or a leader', () => {
  fc.assert(
    fc.property(fc.array(wish, { maxLength: 30 }), fc.integer({ min: 1, max: 8 }), (wishes, rows) => {
      const placed = placeFindings(wishes, rows, [140, 1420]).flatMap((place, i) => {
        if (!place) return [];
        const { x, widths } = wishes[i];
        const width = widths[place.text];
        const [from, to] = place.side === 'right' ? [x, x + width] : [x - width, x];
        return [{ row: place.row, x, from, to }];
      });
      for (const [i, a] of placed.entries()) {
        expect(a.from).toBeGreaterThanOrEqual(118);
        expect(a.to).toBeLessThanOrEqual(1442);
        for (const b of placed.slice(i + 1)) {
          if (a.row === b.row) expect(a.to <= b.from || b.to <= a.from).toBe(true);
          const [upper, lower] = a.row < b.row ? [a, b] : [b, a];
          if (a.row !== b.row) expect(lower.x <= upper.from || lower.x >= upper.to).toBe(true);
        }
      }
    }),
  );
});

test('a single finding stands in the first row, its words toward the middle of the page', () => {
  expect(placeFindings([{ x: 300, widths: [100] }], 5, [140, 1420])).toEqual([
    { row: 0, side: 'right', text: 0 },
  ]);
  expect(placeFindings([{ x: 1300, widths: [100] }], 5, [140, 1420])).toEqual([
    { row: 0, side: 'left', text: 0 },
  ]);
});

test('eight findings on neighbouring stations find room in eight rows, the last of the line uppermost', () => {
  const wishes = Array.from({ length: 8 }, (_, i) => ({ x: 200 + 40 * i, widths: [300] }));
  expect(placeFindings(wishes, 8, [140, 1420]).map((place) => place?.row)).toEqual([7, 6, 5, 4, 3, 2, 1, 0]);
});

test('a finding without room is left to the strip and the table', () => {
  const wishes = [
    { x: 500, widths: [200] },
    { x: 505, widths: [2000] },
  ];
  expect(placeFindings(wishes, 3, [140, 1420])[1]).toBeUndefined();
});

test('a finding is written out in full where there is room, and never at the cost of another one', () => {
  const alone = placeFindings([{ x: 300, widths: [700, 200] }], 5, [140, 1420]);
  expect(alone[0]?.text).toBe(0);
  const crowded = placeFindings(
    [
      { x: 300, widths: [900, 200] },
      { x: 600, widths: [200] },
    ],
    1,
    [140, 1420],
  );
  expect(crowded.map((place) => place?.text)).toEqual([1, 0]);
});
