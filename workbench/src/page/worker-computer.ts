import type { Computer } from './bench.ts';

/** The computer that runs in a worker of this page, so that the page itself never waits. */
export function workerComputer(): Computer {
  const worker = new Worker(new URL('../compute/line-worker.ts', import.meta.url), { type: 'module' });
  return {
    send: (order) => worker.postMessage(order),
    onAnswer: (listener) => {
      worker.onmessage = ({ data }) => listener(data);
    },
    now: () => performance.now(),
    afterPicture: (then) => requestAnimationFrame(() => setTimeout(then)),
  };
}
