import { bench } from 'vitest';
import type { Bar } from '../../bar/bar.ts';
import { must } from '../../outcome/result.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { sectionProperties } from '../../section/properties.ts';
import { scaled, turned } from '../../section/transform.ts';
import { triangulate } from '../../section/triangulate.ts';
import { density, hotFactor } from '../../steel/expansion.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { coolingBed } from './cooling-bed.ts';

const bar = hotBar();
const settings = {
  pose: 'on-side',
  pitch: 0.26,
  rhythm: 120,
  runOut: 40,
  transfer: 20,
  air: 20,
  preCamber: 0,
  leaveBelow: 80,
  support: 'free',
} as const;
const equipment = {
  travel: 20,
  barLength: 110,
  friction: 0.3,
  emissivity: 0.8,
  camberLimit: 4e-3,
  camberDoubt: 1e-3,
};

// Hold to 0.5 s warm for about 320 nodes: view factors a quarter, steps of conduction a half, camber a tenth.
bench('a 60E1 from 950 to 80 °C with its camber', () => {
  must(coolingBed(bar, settings, equipment));
});

function hotBar(): Bar {
  const [grade, profile] = [gradeNamed('R260'), profileNamed('60E1')];
  if (!grade || !profile) throw new Error('60E1 in R260 expected in the library');
  const outline = scaled(turned(must(outlineOf(profile)), -Math.PI / 2), hotFactor(grade, 950));
  const mesh = must(triangulate(outline, { size: 0.0065, smallest: 0.0026 }));
  const place = { clock: 900, temperature: new Float64Array(mesh.xy.length / 2).fill(950) };
  const mass = density(950, grade) * sectionProperties(outline).area * 100;
  const frame = { grade, outline, mesh, mass, length: 100, pieces: [100], elongation: 13, decarburised: 0 };
  return { ...frame, head: place, middle: place, tail: place };
}
