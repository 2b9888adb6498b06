import { bench, describe } from 'vitest';
import { must } from '../outcome/result.ts';
import { analyse, factor, solve } from './ldlt.ts';
import { plainFactor } from './ldlt-plain.ts';
import { mixedStrip } from './strip.fixture.ts';

for (const [across, along] of [
  [16, 64],
  [32, 128],
]) {
  const { pattern, values, signs, coordinates } = mixedStrip(across, along);
  const symbolic = analyse(pattern, coordinates);
  const into = must(factor(symbolic, values, { signs }));
  const rhs = Float64Array.from({ length: pattern.size }, (_, i) => Math.sin(i));
  const x = new Float64Array(pattern.size);

  describe(`mixed strip, ${pattern.size} unknowns`, () => {
    bench('analyse', () => {
      analyse(pattern, coordinates);
    });
    bench('factor', () => {
      factor(symbolic, values, { signs, into });
    });
    bench('solve', () => {
      solve(into, rhs, x);
    });
    bench('factor, plain', () => {
      plainFactor(pattern, values);
    });
  });
}
