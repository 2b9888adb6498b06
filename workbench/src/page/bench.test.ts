import { expect, test } from 'vitest';
import type { Answer, Order } from '../compute/messages.ts';
import { createBench } from './bench.ts';

/** A bench whose computer is the test itself. */
function bench() {
  const orders: Order[] = [];
  let tell: (answer: Answer) => void = () => {};
  let clock = 0;
  const timers: (() => void)[] = [];
  const store = createBench({
    send: (order) => orders.push(order),
    onAnswer: (listener) => {
      tell = listener;
    },
    now: () => clock,
    later: (then) => timers.push(then),
    afterPicture: (then) => then(),
  });
  const wait = (ms: number) => {
    clock += ms;
  };
  const ring = () => timers.splice(0).forEach((then) => void then());
  return { store, orders, tell: (answer: Answer) => tell(answer), wait, ring };
}

const stops = [{ code: 'U2', title: 'U2', group: 'universal' as const, path: 'settings.passes.0' }];
const path = 'settings.passes.0.gapMm';
const visit = (stamp: string) =>
  ({ kind: 'visit', index: 0, stamp, visit: { code: 'U2' } as never }) as const;

test('a move orders the line anew, and its own station says how long the answer took', () => {
  const { store, orders, tell, wait } = bench();
  store.getState().open({ settings: { passes: [{ gapMm: 24 }] } });
  tell({ run: 1, contents: [{ kind: 'stops', stops }, visit('a1'), { kind: 'done', summary: {} as never }] });
  store.getState().move(path, 'Gap', 24.5);
  wait(40);
  tell({ run: 2, contents: [visit('a2')] });
  expect(orders.length).toBe(2);
  expect(store.getState().quick).toEqual({ code: 'U2', ms: 40 });
});

test('undo orders the plan as it was', () => {
  const { store, orders } = bench();
  const plan = { settings: { passes: [{ gapMm: 24 }] } };
  store.getState().open(plan);
  store.getState().move(path, 'Gap', 24.5);
  store.getState().undo();
  expect(orders[2]).toEqual({ kind: 'compute', run: 3, plan });
  store.getState().redo();
  expect(store.getState().history.undone).toEqual([]);
});

test('a move to the same value orders nothing', () => {
  const { store, orders } = bench();
  store.getState().open({ settings: { passes: [{ gapMm: 24 }] } });
  store.getState().move(path, 'Gap', 24);
  expect(orders.length).toBe(1);
});

test('the moved station is shown at once, those after it a few at a time', () => {
  const { store, tell, ring } = bench();
  const two = [...stops, { ...stops[0], code: 'U3', path: 'settings.passes.1' }];
  const states = () => store.getState().progress.stations.map(({ stamp }) => stamp);
  store.getState().open({ settings: { passes: [{ gapMm: 24 }] } });
  tell({ run: 1, contents: [{ kind: 'stops', stops: two }, visit('a1'), { ...visit('a2'), index: 1 }] });
  ring();
  store.getState().move(path, 'Gap', 24.5);
  tell({ run: 2, contents: [visit('a3')] });
  expect(states()).toEqual(['a3', 'a2']);
  tell({ run: 2, contents: [{ ...visit('a4'), index: 1 }] });
  expect(states()).toEqual(['a3', 'a2']);
  ring();
  expect(states()).toEqual(['a3', 'a4']);
});

test('moves made at another time are on the plan again, and can all be taken back', () => {
  const { store, orders } = bench();
  const plan = { settings: { passes: [{ gapMm: 24 }] } };
  const kept = { path, title: 'Gap', from: 24, to: 24.5 };
  store.getState().open(plan, { done: [kept], undone: [] });
  expect(orders[0]).toMatchObject({ plan: { settings: { passes: [{ gapMm: 24.5 }] } } });
  store.getState().undoAll();
  expect(orders[1]).toMatchObject({ plan });
  expect(store.getState().history.undone).toEqual([kept]);
});
