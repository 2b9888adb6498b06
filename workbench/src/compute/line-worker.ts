import { runLine } from '@bloomrail/engine/line/run-line';
import { lineComputer } from './computer.ts';
import type { Introduction, Order } from './messages.ts';

/** Waits for the introduction, then takes orders. */
self.onmessage = ({ data: { name, other } }: MessageEvent<Introduction>) => {
  const gate = new MessageChannel();
  const computer = lineComputer({
    runLine,
    name,
    answer: (answer) => postMessage(answer),
    breathe: () =>
      new Promise((resume) => {
        gate.port1.onmessage = () => resume();
        gate.port2.postMessage(null);
      }),
    bequeath: (legacy) => other.postMessage(legacy),
  });
  other.onmessage = ({ data }) => computer.inherit(data);
  self.onmessage = ({ data }: MessageEvent<Order>) => void computer.take(data);
};
