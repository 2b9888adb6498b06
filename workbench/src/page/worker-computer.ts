import type { Answer, Introduction, Order } from '../compute/messages.ts';
import type { Computer } from './bench.ts';

/**
 * Two workers that know the same line. While one is deep in a station that takes long, the next move goes to the
 * other, which answers at once; the page itself never computes and never waits.
 */
export function workerComputer(): Computer {
  const { port1, port2 } = new MessageChannel();
  const workers = [started('a', port1), started('b', port2)];
  const busy = [false, false];
  let last = 0;

  const send = (order: Order) => {
    if (order.kind === 'compute' && busy[last]) {
      workers[last].postMessage({ kind: 'stop' } satisfies Order);
      last = 1 - last;
    }
    busy[last] = order.kind === 'compute';
    workers[last].postMessage(order);
  };

  return {
    send,
    onAnswer: (listener) => {
      for (const [i, worker] of workers.entries()) {
        worker.onmessage = ({ data }: MessageEvent<Answer>) => {
          if (data.contents.some(({ kind }) => kind !== 'visit' && kind !== 'kept' && kind !== 'stops'))
            busy[i] = false;
          listener(data);
        };
      }
    },
    now: () => performance.now(),
    later: (then, ms) => setTimeout(then, ms),
    afterPicture: (then) => requestAnimationFrame(() => setTimeout(then)),
  };
}

function started(name: string, other: MessagePort): Worker {
  const worker = new Worker(new URL('../compute/line-worker.ts', import.meta.url), { type: 'module' });
  worker.postMessage({ kind: 'meet', name, other } satisfies Introduction, [other]);
  return worker;
}
