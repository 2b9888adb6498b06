import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { freeSurface } from '../../phenomena/radiation/free-surface.ts';
import { scaledSteel } from '../../phenomena/radiation/grey.ts';
import type { Outline } from '../../section/outline.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { rectangle } from '../../section/rectangle.ts';
import { triangulate } from '../../section/triangulate.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { sectionOf, waited } from './approach.ts';

const [grade, profile] = [gradeNamed('R260'), profileNamed('60E1')];
if (!grade || !profile) throw new Error('no R260, no 60E1');
const law = heatingLaw(grade);

/** 20 s in the open from 1000 °C: as the stands have it, and as if no part of the skin saw another. */
function cooled(outline: Outline, size: number, massPerMetre: number) {
  const mesh = must(triangulate(outline, { size }));
  const hollow = sectionOf(mesh, law, massPerMetre);
  const plain = { ...hollow, open: freeSurface(scaledSteel, 25, 1) };
  const from = new Float64Array(mesh.xy.length / 2).fill(1000);
  const after = (section: typeof hollow) => must(waited(section, from, 20, undefined));
  return { mesh, hollow: after(hollow), plain: after(plain) };
}

test('the web of a rail stays warmer than one that radiates as if it saw neither head nor foot', () => {
  const { mesh, hollow, plain } = cooled(must(outlineOf(profile)), 0.009, 60.2);
  for (let i = 0; i < hollow.temperature.length; i++) {
    const [x, y] = [mesh.xy[2 * i], mesh.xy[2 * i + 1]];
    if (Math.abs(x) < 0.012 && y > 0.06 && y < 0.1)
      expect(hollow.temperature[i] - plain.temperature[i]).toBeGreaterThan(5);
  }
  expect(hollow.gained.radiation / plain.gained.radiation).toBeLessThan(0.95);
  expect(hollow.gained.radiation / plain.gained.radiation).toBeGreaterThan(0.6);
});

test('a bloom has no hollows and cools as before', () => {
  const { hollow, plain } = cooled(rectangle(0.28, 0.38, 0.025), 0.04, 800);
  for (let i = 0; i < plain.temperature.length; i++)
    expect(hollow.temperature[i]).toBeCloseTo(plain.temperature[i], 9);
});
