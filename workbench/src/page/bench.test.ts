import { expect, test } from 'vitest';
import type { Answer, Order } from '../compute/messages.ts';
import { createBench } from './bench.ts';

/** A bench whose computer is the test itself. */
function bench() {
  const orders: Order[] = [];
  let tell: (answer: Answer) => void = () => {};
  let clock = 0;
  const store = createBench({
    send: (order) => orders.push(order),
    onAnswer: (listener) => {
      tell = listener;
    },
    now: () => clock,
    afterPicture: (then) => then(),
  });
  const wait = (ms: number) => {
    clock += ms;
  };
  return { store, orders, tell: (answer: Answer) => tell(answer), wait };
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
