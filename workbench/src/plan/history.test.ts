import { expect, test } from 'vitest';
import { moved, opened, redo, undo } from './history.ts';
import { type Json, valueAt, withValueAt } from './plan-file.ts';

const plan: Json = { name: 'A', settings: { passes: [{ gapMm: 200 }, { gapMm: 24.4 }] } };
const path = 'settings.passes.1.gapMm';

test('a move changes one value and leaves the rest of the plan the same object', () => {
  const next = withValueAt(plan, path, 25) as { settings: { passes: Json[] } };
  expect(valueAt(next, path)).toBe(25);
  expect(valueAt(plan, path)).toBe(24.4);
  expect(next.settings.passes[0]).toBe((plan.settings as { passes: Json[] }).passes[0]);
});

test('a path that leads nowhere has no value', () => {
  expect(valueAt(plan, 'settings.passes.9.gapMm')).toBeUndefined();
  expect(valueAt(plan, 'name.gapMm')).toBeUndefined();
});

test('every move can be taken back and made again', () => {
  const twice = moved(moved(opened(plan), path, 'Gap', 25), path, 'Gap', 26);
  expect(valueAt(undo(twice).plan, path)).toBe(25);
  expect(undo(undo(twice)).plan).toEqual(plan);
  expect(redo(undo(twice)).plan).toEqual(twice.plan);
  expect(undo(opened(plan)).plan).toBe(plan);
});

test('moving on from an undone state drops what was undone', () => {
  const other = moved(undo(moved(opened(plan), path, 'Gap', 25)), path, 'Gap', 23);
  expect(other.undone).toEqual([]);
  expect(redo(other)).toBe(other);
});

test('the same value again is no move', () => {
  const start = opened(plan);
  expect(moved(start, path, 'Gap', 24.4)).toBe(start);
});

test('a drag or a held arrow key is one move, taken back in one step', () => {
  const dragged = [24.5, 24.6, 24.7].reduce(
    (history, gap, i) => moved(history, path, 'Gap', gap, i > 0),
    moved(opened(plan), 'name', 'Name', 'B'),
  );
  expect(dragged.done.map(({ from, to }) => [from, to])).toEqual([
    ['A', 'B'],
    [24.4, 24.7],
  ]);
  expect(valueAt(undo(dragged).plan, path)).toBe(24.4);
});
