import { Presets, SingleBar } from 'cli-progress';
import type { Output } from './print/output.ts';

export interface Progress {
  readonly step: (what: string) => void;
  readonly end: () => void;
}

/** A bar for people, nothing for pipes. */
export function progressOf(output: Output, total: number): Progress {
  if (!output.watched) return { step: () => {}, end: () => {} };
  const format = '{bar} {value} of {total}  {what}';
  const bar = new SingleBar(
    { format, stream: process.stderr, clearOnComplete: true, hideCursor: true },
    Presets.shades_grey,
  );
  bar.start(total, 0, { what: 'furnace' });
  return { step: (what) => bar.increment(1, { what }), end: () => bar.stop() };
}
