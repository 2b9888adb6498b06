import { bench } from 'vitest';
import { must } from '../../outcome/result.ts';
import { coldSection } from '../../phenomena/bending/cold-section.ts';
import { fibresOfMesh } from '../../phenomena/bending/fibres.ts';
import { overlayOf } from '../../phenomena/bending/overlay.ts';
import { rollerLine } from '../../phenomena/bending/rollers.ts';
import { straighten } from '../../phenomena/bending/straighten.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { triangulate } from '../../section/triangulate.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { yieldCurve } from '../../steel/yield-curve.ts';
import { searchBothOffsets } from './search-both-offsets.ts';
import { searchOffsets } from './search-offsets.ts';

const [grade, profile] = [gradeNamed('R260'), profileNamed('60E1')];
if (!grade || !profile) throw new Error('60E1 in R260 expected in the library');
const mesh = must(triangulate(must(outlineOf(profile)), { size: 0.0065, smallest: 0.0026 }));
const section = coldSection(fibresOfMesh(mesh), overlayOf(yieldCurve(grade)), undefined, [-1.4e-3, 0.4e-3]);
const machines = {
  height: { rollers: 9, pitch: 1.6, diameter: 1.1, force: 4e6, power: 800e3 },
  side: { rollers: 8, pitch: 0.9, diameter: 0.7, force: 1.5e6, power: 400e3 },
};
const line = rollerLine('height', 9, 1.6, [0.0407, 0.033, 0.0236, 0.0054]);
const near = must(straighten(section, line));

// Hold to 30 ms: two thirds are runs of the full section, each 64 steps of 320 fibres and 7 sliders.
bench('one machine from nothing', () => {
  must(straighten(section, line));
});

bench('one machine from a near answer', () => {
  must(straighten(section, line, { near }));
});

// Hold to 1 s: about 160 solves on layers.
bench(
  'search of offsets, one machine',
  () => {
    must(
      searchOffsets(section, {
        plane: 'height',
        machine: machines.height,
        spread: 2e-3,
        target: 0,
        mostPlastified: 0.85,
      }),
    );
  },
  { iterations: 3, warmupIterations: 1, time: 0, warmupTime: 0 },
);

// Hold to 2 s.
bench(
  'search of offsets, both machines',
  () => {
    must(
      searchBothOffsets(section, machines, { heightSpread: 1e-3, sideSpread: 0.5e-3, mostPlastified: 0.85 }),
    );
  },
  { iterations: 3, warmupIterations: 1, time: 0, warmupTime: 0 },
);
