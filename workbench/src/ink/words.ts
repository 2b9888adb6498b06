import { figure } from './numbers.ts';

/** First letter large, as a name at the head of a row. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A count with its noun: '1 rail', '12 rails', '1 248 wagons'. */
export const counted = (count: number, noun: string): string =>
  `${figure(count, 'one', 0)} ${noun}${count === 1 ? '' : 's'}`;
