import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  biteDraught,
  biteDraughtExact,
  biteLimits,
  bitesFreely,
  freeBiteAngle,
  steadyBiteAngle,
} from './bite.ts';
import {
  biteAngle,
  constraint,
  contactLength,
  contactRatio,
  meanRate,
  planeStrain,
  strainOf,
} from './contact.ts';
import { ekelundFriction, gelejiFriction, rollSurfaces } from './friction.ts';

const degrees = 180 / Math.PI;
const inch = 0.0254;
const bloom = { h0: 0.38, h1: 0.32, b0: 0.28, R: 0.575 };

test('rolls of 510 mm that take 1.8 mm bite at 4.815°', () => {
  // Printed exercise answer 4.8°; exact.
  expect(biteAngle({ h0: 0.02, h1: 0.0182, b0: 1, R: 0.255 }) * degrees).toBeCloseTo(4.815, 3);
});

test('a 1150 mm roll takes 56 mm at 18°, 84 at 22° and 108 at 25°', () => {
  // Computed from Δh = D (1 − cos α), rounded to 1 mm.
  for (const [angle, draught] of [
    [18, 56],
    [22, 84],
    [25, 108],
  ])
    expect(biteAngle({ ...bloom, h1: 0.38 - draught / 1000 }) * degrees).toBeCloseTo(angle, 0);
});

test('by μ²R a 12 inch radius takes 0.0768 inch at friction 0.08 and 3 inch at 0.5', () => {
  // Dieter, Mechanical Metallurgy, example 17.1, printed.
  expect(biteDraught(0.08, 12 * inch) / inch).toBeCloseTo(0.0768, 12);
  expect(biteDraught(0.5, 12 * inch) / inch).toBeCloseTo(3, 12);
});

test('the exact largest draught bites exactly at the angle of friction', () => {
  for (const friction of [0.1, 0.3, 0.5]) {
    const h1 = bloom.h0 - biteDraughtExact(friction, bloom.R);
    expect(biteAngle({ ...bloom, h1 })).toBeCloseTo(freeBiteAngle(friction), 12);
    expect(bitesFreely({ ...bloom, h1: h1 + 1e-6 }, friction)).toBe(true);
    expect(bitesFreely({ ...bloom, h1: h1 - 1e-6 }, friction)).toBe(false);
    // μ²R stands above it by ¾μ² to the first order.
    const above = biteDraught(friction, bloom.R) / (bloom.h0 - h1) - 1;
    expect(Math.abs(above / (0.75 * friction ** 2) - 1)).toBeLessThan(friction ** 2);
  }
  expect(steadyBiteAngle(0.4)).toBeCloseTo(1.5 * Math.atan(0.4), 12);
  const limits = Object.values(biteLimits).map(({ low, high }) =>
    [low, high].map((angle) => Math.round(angle * degrees)),
  );
  expect(limits).toEqual([
    [15, 18],
    [20, 24],
    [27, 34],
  ]);
});

test('spheroidal iron rolls of 184 mm at 140 1/min and 1100 °C rub with 0.3145, an angle of 17.46°', () => {
  // A mill-operator exam: printed 0.32 and 17°45' from a rounded speed term; 17°30' is asked, so the answer hangs on it.
  const speed = (Math.PI * 0.184 * 140) / 60;
  const friction = gelejiFriction(1100, speed, 'cast iron');
  expect(friction).toBeCloseTo(0.3145, 4);
  expect(freeBiteAngle(friction) * degrees).toBeCloseTo(17.46, 2);
  expect(gelejiFriction(1300, 8, 'steel')).toBe(0.1);
  expect(gelejiFriction(1000, 2, 'steel')).toBeCloseTo(1.05 - 0.5 - 0.112, 12);
  expect(gelejiFriction(1000, 2, 'ground steel')).toBeCloseTo(0.82 - 0.5 - 0.112, 12);
});

test('Ekelund friction is 0.50, 0.40 and 0.275 at 1100 °C by roll, and 0.60 at 900 °C', () => {
  const at1100 = (K: number) => Number(ekelundFriction(1100, K).toFixed(3));
  expect(Object.values(rollSurfaces).map(at1100)).toEqual([0.5, 0.5, 0.4, 0.275]);
  expect(ekelundFriction(900, 1)).toBeCloseTo(0.6, 12);
  expect(ekelundFriction(2500, 1)).toBe(0.1);
});

test('contact length, rate and strain of a bloom pass are those of the handbook example', () => {
  // Ekelund example, computed: L 185.74 mm, rate 1.846 1/s at 2 m/s; 100 → 80 mm on 500 mm: 70.71 mm, 3.143 1/s.
  expect(contactLength(bloom) * 1e3).toBeCloseTo(185.74, 2);
  expect(meanRate(bloom, 2)).toBeCloseTo(1.846, 3);
  const bar = { h0: 0.1, h1: 0.08, b0: 0.1, R: 0.25 };
  expect(contactLength(bar) * 1e3).toBeCloseTo(70.71, 2);
  expect(meanRate(bar, 1)).toBeCloseTo(3.143, 3);
  expect(strainOf(bar)).toBeCloseTo(Math.log(1.25), 12);
});

test('the mean rate is the strain over the time in the bite, to the 10 % of its author’s mean', () => {
  const time = contactLength(bloom) / 2;
  expect(meanRate(bloom, 2) / (strainOf(bloom) / time)).toBeCloseTo(1, 1);
});

test('geometry does not care for the size of the mill, and the constraint runs from 1 to 1.155', () => {
  const pass = fc.record({ scale: fc.double({ min: 0.01, max: 10, noNaN: true }) });
  fc.assert(
    fc.property(pass, ({ scale }) => {
      const big = { h0: bloom.h0 * scale, h1: bloom.h1 * scale, b0: bloom.b0 * scale, R: bloom.R * scale };
      expect(contactRatio(big)).toBeCloseTo(contactRatio(bloom), 10);
      expect(biteAngle(big)).toBeCloseTo(biteAngle(bloom), 10);
    }),
  );
  const wide = { ...bloom, b1: 0.28, friction: 0.4, flowStress: 1e8 };
  expect(constraint({ ...wide, b0: 2, b1: 2 })).toBe(planeStrain);
  expect(constraint({ ...wide, b0: 1e-9, b1: 1e-9 })).toBeCloseTo(1, 6);
  const L = contactLength(bloom);
  expect(constraint({ ...wide, b0: L, b1: L })).toBeCloseTo((1 + planeStrain) / 2, 12);
});
