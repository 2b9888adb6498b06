import { bench } from 'vitest';
import { misaka } from './misaka.ts';
import { shida, shidaParts } from './shida.ts';

const [law, other, parts] = [shida(0.71), misaka(0.71), shidaParts(0.71)];

function tenThousand(f: (i: number) => number): number {
  let sum = 0;
  for (let i = 0; i < 10_000; i++) sum += f(i);
  return sum;
}

bench('Shida stress, 10 000 times', () => {
  tenThousand((i) => law.stress(0.1 + i * 1e-5, 1 + i * 1e-3, 900 + i * 0.01));
});
bench('Misaka mean, 10 000 times', () => {
  tenThousand((i) => other.mean(0.1 + i * 1e-5, 1 + i * 1e-3, 900 + i * 0.01));
});
bench('Shida rate factor alone, 10 000 times', () => {
  tenThousand((i) => parts.rate(1 + i * 1e-3, 950));
});
