import { bench, describe } from 'vitest';
import { must } from '../outcome/result.ts';
import { carriedOver } from './locate.ts';
import { outlineOf, profileNamed } from './profile-library.ts';
import { sectionProperties } from './properties.ts';
import { torsionConstant } from './torsion.ts';
import { triangulate } from './triangulate.ts';

const profile = profileNamed('60E1');
if (!profile) throw new Error('60E1 is missing');
const rail = must(outlineOf(profile));
const [coarse, fine] = [0.008, 0.0055].map((size) => must(triangulate(rail, { size })));
const field = Float64Array.from({ length: coarse.xy.length / 2 }, (_, i) => i);

describe('a 60E1 section', () => {
  for (const size of [0.012, 0.008, 0.0055]) {
    const nodes = must(triangulate(rail, { size })).xy.length / 2;
    bench(`mesh of ${nodes} nodes`, () => {
      must(triangulate(rail, { size }));
    });
  }
  bench('exact properties', () => {
    sectionProperties(rail);
  });
  bench('outline from its dimensions', () => {
    must(outlineOf(profile));
  });
  bench('torsion constant', () => {
    must(torsionConstant(rail));
  });
  bench('a field carried over to a finer mesh', () => {
    carriedOver(coarse, field, fine);
  });
});
