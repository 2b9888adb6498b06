import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must, ok, type Result } from '../../outcome/result.ts';
import { outlineOf, profileNamed } from '../../section/profile-library.ts';
import { triangulate } from '../../section/triangulate.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { yieldCurve } from '../../steel/yield-curve.ts';
import { type ColdSection, coldSection } from './cold-section.ts';
import { closeness, overlap, type Passing, settledContact } from './contact.ts';
import { fibresOfMesh } from './fibres.ts';
import { overlayOf } from './overlay.ts';
import { pressForces, type RollerLine, rollerLine } from './rollers.ts';
import { curvatureOut, offsetSensitivity, type Straightened, straighten } from './straighten.ts';

const [heavy, light] = [rail('60E1'), rail('49E1')];
const heightTaper = [0.0407, 0.033, 0.0236, 0.0054];
const sideTaper = [0.0156, 0.0122, 0.0079, -0.0004];

test('every roller presses or stands clear, however the tapers are disturbed and whatever camber comes in', () => {
  const off = fc.double({ min: -5e-3, max: 5e-3, noNaN: true });
  const camber = fc.double({ min: -5e-3, max: 5e-3, noNaN: true });
  const four = fc.tuple(off, off, off, off);
  fc.assert(
    fc.property(fc.boolean(), camber, camber, four, four, (isHeavy, height, side, first, second) => {
      const section: ColdSection = { ...(isHeavy ? heavy : light), strain: [0, height, side] };
      const lines = [
        rollerLine(
          'height',
          9,
          1.6,
          heightTaper.map((each, i) => each + first[i]),
        ),
        rollerLine(
          'side',
          8,
          0.9,
          sideTaper.map((each, i) => each + second[i]),
        ),
      ];
      const between = must(straighten(section, lines[0]));
      holds(lines[0], between);
      holds(lines[1], must(straighten(between.section, lines[1])));
    }),
    // 3000 such cases outside the tests gave no failure.
    { numRuns: 30, seed: 14 },
  );
});

test('while the third offset moves in steps of 0.05 mm, rollers let go and come back without a jump in what leaves', () => {
  const entering = betweenMachines();
  const sweep = Array.from({ length: 28 }, (_, i) => {
    const line = slack(-1.2e-3 + i * 0.05e-3);
    const solved = must(straighten(entering, line));
    const slope = Math.abs(offsetSensitivity(entering, line, solved)[5]);
    return { out: curvatureOut(solved), touching: solved.touching.join(), slope };
  });
  expect(new Set(sweep.map(({ touching }) => touching)).size).toBe(4);
  for (let i = 1; i < sweep.length; i++) {
    const slope = Math.max(sweep[i].slope, sweep[i - 1].slope);
    expect(Math.abs(sweep[i].out - sweep[i - 1].out)).toBeLessThan(2 * slope * 0.05e-3);
  }
});

test('a roller on which the condensed and the full section disagree is judged by the full one', () => {
  // At both offsets layers let roller 8 (7) go or touch the other way round than fibres do.
  const entering = betweenMachines();
  for (const offset of [-0.84e-3, -0.02e-3]) {
    const line = slack(offset);
    const [onLayers, onFibres] = [true, false].map((coarse) => must(straighten(entering, line, { coarse })));
    expect(onLayers.touching).not.toEqual(onFibres.touching);
    holds(line, onFibres);
  }
});

test('when the worst offender first leads round in a circle, the first one along the bar leads out of it', () => {
  // Roller 4 stands 1 mm proud of a bar that stays straight: free it is run into, and it pulls while roller 2 touches.
  const pretend = forces((touching) =>
    touching.includes(1) ? [1, touching.includes(3) ? -1 : 1, 1, -2, 1] : [1, 0, 1, 1, 1],
  );
  const found = must(settledContact(proud, start, close, pretend));
  expect(found.touching).toEqual([0, 2, 3, 4, 5]);
  expect(found.iterations).toBe(4);
});

test('contact that never settles is refused with how far it is off', () => {
  const result = settledContact(
    proud,
    start,
    close,
    forces(() => [1, 1, 1, -2, 1]),
  );
  expect(result.ok).toBe(false);
  if (!result.ok) expect(result.failure.residual).toBeGreaterThan(1e-6);
});

const proud: RollerLine = {
  plane: 'height',
  position: Float64Array.from([0, 1, 2, 3, 4, 5]),
  offset: Float64Array.from([0, 0, 0, 1e-3, 0, 0]),
};
const start = { touching: [0, 1, 2, 3, 4, 5], moment: new Float64Array(6) };
const close = closeness(1e-8, 1e6, proud);

/** A straight bar on which the first five rollers press with given forces; those that do not touch, with none. */
function forces(of: (touching: readonly number[]) => readonly number[]) {
  return (touching: readonly number[]): Result<Passing> => {
    const moment = new Float64Array(6);
    let slope = 0;
    of(touching).forEach((force, i) => {
      slope += (i % 2 ? 1 : -1) * (touching.includes(i) ? force : 0);
      moment[i + 1] = moment[i] + slope;
    });
    return ok({ touching, moment, curvature: new Float64Array(41), residual: 0, iterations: 1 });
  };
}

/** Every touching roller presses and the bar runs clear of the others, to what contact can be told. */
function holds(line: RollerLine, { touching, moment, curvature, residual }: Straightened): void {
  expect(residual).toBeLessThan(1e-8);
  // Five times 1e-8 rad over a pitch of 1.6 m; 1 N is what bends the stiffer rail that far.
  expect(Math.min(...pressForces(line, moment))).toBeGreaterThan(-1);
  for (let roller = 0; roller < line.position.length; roller++) {
    if (!touching.includes(roller)) expect(overlap(curvature, line, touching, roller)).toBeLessThan(8e-8);
  }
}

/** A side machine set so that its last two rollers hardly touch; `third` is the offset of roller 6. */
const slack = (third: number): RollerLine => rollerLine('side', 8, 0.9, [0.0137, 0.0043, third, -0.0016]);

const betweenMachines = (): ColdSection =>
  must(straighten({ ...heavy, strain: [0, -1e-3, 0.4e-3] }, rollerLine('height', 9, 1.6, heightTaper)))
    .section;

function rail(name: string): ColdSection {
  const [grade, profile] = [gradeNamed('R260'), profileNamed(name)];
  if (!grade || !profile) throw new Error(`${name} in R260 expected in the library`);
  const mesh = must(triangulate(must(outlineOf(profile)), { size: 0.0065, smallest: 0.0026 }));
  return coldSection(fibresOfMesh(mesh), overlayOf(yieldCurve(grade)));
}
