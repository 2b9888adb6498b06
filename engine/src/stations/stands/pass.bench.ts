import { bench } from 'vitest';
import trial from '../../../../reference/schedules/60E1-stands.json' with { type: 'json' };
import type { Bar } from '../../bar/bar.ts';
import { must } from '../../outcome/result.ts';
import { sectionProperties } from '../../section/properties.ts';
import { rectangle } from '../../section/rectangle.ts';
import { triangulate } from '../../section/triangulate.ts';
import { density } from '../../steel/expansion.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { Stand } from './equipment.ts';
import { pass } from './pass.ts';
import { PassSettings } from './settings.ts';

const stands = trial.stands.map((stand) => Stand.parse(stand));
const passes = trial.passes.map((each) => PassSettings.parse({ ...each, rhythmS: 120 }));
const grade = gradeNamed('R260');
if (!grade) throw new Error('no R260');

const outline = rectangle(0.28, 0.38, 0.025);
const mesh = must(triangulate(outline, { size: 0.025 }));
const place = { clock: 20, temperature: new Float64Array(mesh.xy.length / 2).fill(1180) };
const mass = sectionProperties(outline).area * 7.5 * density(1180, grade);
const bloom: Bar = {
  grade,
  outline,
  mesh,
  head: place,
  middle: place,
  tail: place,
  mass,
  length: 7.5,
  pieces: [7.5],
  elongation: 1,
  decarburised: 0,
};

/** Aim: 90 ms for the eighteen passes of the trial line, head, middle and tail. */
bench('the trial line, eighteen passes', () => {
  passes.reduce((bar, settings) => {
    const stand = stands.find(({ code }) => code === settings.stand) ?? stands[0];
    return must(pass(bar, settings, stand)).bar;
  }, bloom);
});
