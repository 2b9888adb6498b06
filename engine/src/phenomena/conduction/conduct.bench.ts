import { bench } from 'vitest';
import { must } from '../../outcome/result.ts';
import { austenite } from '../../steel/austenite.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { pearlite } from '../../steel/pearlite.ts';
import { pearliteKinetics } from '../../steel/transformation.ts';
import { freeSurface, naturalConvection } from '../radiation/free-surface.ts';
import { radiosity } from '../radiation/radiosity.ts';
import { viewFactors } from '../radiation/view-factors.ts';
import { conduct, conductFor } from './conduct.ts';
import { conductor } from './conductor.ts';
import { plateMesh } from './plate-mesh.fixture.ts';

const grade = gradeNamed('R260');
if (!grade) throw new Error('R260 is missing from the library');
const law = heatingLaw(grade);
const even = (count: number, T: number) => new Float64Array(count).fill(T);

const bar = conductor(plateMesh(0.15, 0.15, 13, 14)); // 210 nodes
const air = { massPerMetre: 170, law, surface: freeSurface(0.8, 25, 2) };
const hot = Float64Array.from(even(210, 1100), (T, i) => T - 0.3 * i);

bench('8 s in air, 210 nodes, 4 fixed steps', () => {
  must(conductFor(bar, air, { temperature: hot }, 8, 4));
});

bench('preparing a conductor of 210 nodes', () => {
  conductor(bar.mesh);
});

const rail = conductor(plateMesh(0.07, 0.15, 17, 27)); // 504 nodes, 88 edges
const change = { product: pearlite, kinetics: pearliteKinetics() };

bench('view factors of 88 edges in a row', () => {
  viewFactors(rail.mesh, { pitch: 0.26, floor: -0.1 });
});

const surface = [
  radiosity(viewFactors(rail.mesh, { pitch: 0.26 }), { emissivity: 0.8, ambient: 25 }),
  naturalConvection(rail.skin, 25),
];

bench('a rail on the cooling bed, 504 nodes, 2.5 h', () => {
  must(
    conduct(
      rail,
      { massPerMetre: 60, law: austenite, change, surface },
      { temperature: even(504, 950) },
      9000,
    ),
  );
});
