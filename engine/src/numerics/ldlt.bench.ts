import { bench, describe } from 'vitest';
import { must } from '../outcome/result.ts';
import { analyse, factor, solve } from './ldlt.ts';
import { plainFactor } from './ldlt-plain.ts';
import { planeMesh } from './quasi-definite.fixture.ts';
import { mixedStrip } from './strip.fixture.ts';

const systems = {
  'plane mesh of 200 nodes': planeMesh(10, 20),
  'plane mesh of 300 nodes': planeMesh(15, 20),
  'plane mesh of 500 nodes': planeMesh(20, 25),
  'plane mesh of 700 nodes': planeMesh(20, 35),
  'mixed strip of 1024 nodes': mixedStrip(16, 64),
  'mixed strip of 4096 nodes': mixedStrip(32, 128),
};

for (const [name, { pattern, values, signs, coordinates }] of Object.entries(systems)) {
  const symbolic = analyse(pattern, coordinates);
  const rhs = Float64Array.from({ length: 3 * pattern.size }, (_, i) => Math.sin(i));
  const x = new Float64Array(rhs.length);
  const one = rhs.subarray(0, pattern.size);

  describe(`${name}, ${pattern.size} unknowns`, () => {
    bench('analyse', () => {
      analyse(pattern, coordinates);
    });
    bench('factor up-looking, without fronts', () => {
      plainFactor(pattern, values);
    });
    for (const kernel of ['simd', 'plain'] as const) {
      const into = must(factor(symbolic, values, { signs, kernel }));
      bench(`factor, ${kernel}`, () => {
        factor(symbolic, values, { signs, into });
      });
      bench(`solve, ${kernel}`, () => {
        solve(into, one, x);
      });
      bench(`solve for three, ${kernel}`, () => {
        solve(into, rhs, x);
      });
    }
  });
}
