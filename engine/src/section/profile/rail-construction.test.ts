import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { edgesOf } from '../edges.ts';
import { turnAtJoint } from '../joints.ts';
import { outlineOf, profileNamed } from '../profile-library.ts';
import type { CraneDimensions, RailDimensions } from './dimensions.ts';
import { Profile } from './profile.ts';
import { railOutline } from './rail-construction.ts';

const profile = profileNamed('60E1');
const crane = profileNamed('A100');
if (profile?.family !== 'flat-bottom' || crane?.family !== 'crane')
  throw new Error('60E1 or A100 is missing');
const rail = profile;
const reasonFor = (change: Partial<RailDimensions>): string => {
  const result = railOutline({ ...rail.dimensions, ...change });
  return result.ok ? 'possible' : result.failure.reason;
};

test('dimensions that cannot be joined tangent name the joint', () => {
  expect(reasonFor({})).toBe('possible');
  expect(
    reasonFor({ crown: [{ radius: 0.3, endsAt: 0.01 }, { radius: 0.08, endsAt: 0.009 }, { radius: 0.013 }] }),
  ).toContain('crown arc 2 (R 80 mm)');
  expect(reasonFor({ crown: [{ radius: 0.3 }, { radius: 0.08 }] })).toContain('crown arc 1');
  expect(reasonFor({ headFilletMeetsWebAt: 0.3 })).toContain('second head fillet (R 35 mm)');
  expect(reasonFor({ footFilletRadii: [0.08], footFilletMeetsWebAt: 0.03 })).toContain('foot');
  expect(reasonFor({ headCornerRadius: 0.03 })).toContain('lower corner of the head');
  expect(reasonFor({ toeUpperRadius: 0.012 })).toContain('R 12 mm of the foot');
  expect(reasonFor({ toeThickness: 0.001, toeSlope: 14 })).toContain('of the foot');
  expect(reasonFor({ upperWebTouchesAt: 0.05 })).not.toBe('possible');
});

test('an outer slope without its arc says what is missing', () => {
  const { toeSlopeRadius: _, ...without } = rail.dimensions;
  const result = railOutline(without);
  expect(result.ok ? '' : result.failure.reason).toContain('slope, arc and toe thickness');
});

test('a crane rail whose roundings overlap names the place', () => {
  const dimensions: CraneDimensions = { ...crane.dimensions, footFilletRadius: 0.05 };
  const result = outlineOf({ ...crane, dimensions });
  expect(result.ok ? '' : result.failure.reason).toContain('R 50 mm');
});

test('a dimension outside its limits is an issue at the door, with its path', () => {
  const read = Profile.safeParse({
    name: 'own',
    family: 'flat-bottom',
    standard: 'own',
    origins: {},
    published: [],
    dimensions: { heightMm: 1000 },
  });
  expect(read.success).toBe(false);
  expect(read.error?.issues.some(({ path }) => path.join('.') === 'dimensions.heightMm')).toBe(true);
});

test('whatever can be built is tangent at every joint', () => {
  const scale = fc.double({ min: 0.8, max: 1.25, noNaN: true });
  let built = 0;
  fc.assert(
    fc.property(scale, scale, scale, scale, (web, depth, foot, fillet) => {
      const d = rail.dimensions;
      const result = railOutline({
        ...d,
        webThickness: d.webThickness * web,
        headDepth: d.headDepth * depth,
        footWidth: d.footWidth * foot,
        headFilletRadii: [d.headFilletRadii[0] * fillet, d.headFilletRadii[1]],
      });
      if (!result.ok) return;
      built++;
      const edges = edgesOf(result.value);
      for (let i = 0; i < edges.length; i++) {
        expect(Math.abs(turnAtJoint(edges[(i + edges.length - 1) % edges.length], edges[i]))).toBeLessThan(
          1e-9,
        );
      }
    }),
  );
  expect(built).toBeGreaterThan(20);
});

test('the same dimensions give the same outline', () => {
  expect(must(railOutline(rail.dimensions))).toEqual(must(railOutline(rail.dimensions)));
});
