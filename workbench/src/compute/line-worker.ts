import { runLine } from '@bloomrail/engine/line/run-line';
import { lineComputer } from './computer.ts';
import type { Order } from './messages.ts';

const gate = new MessageChannel();
const compute = lineComputer({
  runLine,
  answer: (run, content) => postMessage({ run, ...content }),
  breathe: () =>
    new Promise((resume) => {
      gate.port1.onmessage = () => resume();
      gate.port2.postMessage(null);
    }),
});

self.onmessage = ({ data }: MessageEvent<Order>) => void compute(data);
