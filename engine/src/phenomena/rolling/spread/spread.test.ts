import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contactLength } from '../contact.ts';
import { ekelundM } from '../ekelund-force.ts';
import { ekelundSpread } from './ekelund-spread.ts';
import { elKalaySparling } from './el-kalay-sparling.ts';
import { hill } from './hill.ts';
import { shibahara } from './shibahara.ts';
import { shinokuraTakaiWidth } from './shinokura-takai.ts';
import { spreadLaws, spreadRange } from './spread.ts';
import { type SpreadLaw, spreadCoefficient, spreadExponent } from './spread-law.ts';
import { wusatowski } from './wusatowski.ts';

// The same five passes through all formulas, computed; b1 in mm, to the digits shown. None is a measurement.
const names = [
  ...[
    'Wusatowski',
    'Ekelund spread',
    'Siebel spread',
    'Bakhtinov',
    'Hill',
    'Sparling',
    'Helmi and Alexander',
  ],
  ...['El-Kalay and Sparling, smooth, light scale', 'El-Kalay and Sparling, rough, heavy scale'],
  ...['Beese', 'Shibahara', 'Shinokura-Takai', 'Tafel-Sedlaczek'],
];
const table: readonly (readonly [pass: readonly number[], row: readonly number[]])[] = [
  [
    [100, 100, 80, 500],
    [106.99, 103.97, 104.95, 104.85, 105.45, 105.22, 108.11, 104.44, 103.77, 109.04, 104.48, 107.83, 105.86],
  ],
  [
    [50, 100, 40, 400],
    [103.61, 102.3, 103.13, 103.5, 103.51, 102.71, 104.51, 102.82, 102.5, 103.94, 102.78, 105.94, 103.93],
  ],
  [
    [380, 280, 320, 1150],
    [295.45, 286.27, 290.26, 289.08, 291.12, 290.2, 295.67, 289.22, 287.29, 303.63, 291.37, 294.5, 291.23],
  ],
  [
    [20, 20, 15, 300],
    [23.25, 23.22, 22.4, 22.91, 22.06, 22.84, 23.54, 22.0, 21.95, 22.98, 21.22, 23.79, 22.61],
  ],
  [
    [40, 40, 30, 400],
    [45.45, 44.77, 43.91, 44.38, 43.76, 44.65, 46.25, 43.39, 43.17, 45.64, 42.4, 46.19, 44.26],
  ],
];

const draughtOf = ([h0, b0, h1, D]: readonly number[]) => ({
  ...{ h0: h0 / 1e3, b0: b0 / 1e3, h1: h1 / 1e3, R: D / 2e3, friction: 0.35 },
});

test('every spread formula gives its width in the five standard passes to 0.01 mm', () => {
  for (const [pass, row] of table)
    names.forEach((name, i) => {
      const law = spreadLaws.find((each) => each.name === name);
      const width = (law?.width(draughtOf(pass)) ?? 0) * 1e3;
      expect(Math.abs(width - row[i]), `${name} ${pass}`).toBeLessThan(0.0051);
    });
});

test('for a bloom the formulas differ by a factor of 2.5 in the spread, and the range shows it', () => {
  const bloom = draughtOf([380, 280, 320, 1150]);
  const { low, high, value, chosen } = spreadRange(bloom);
  expect((high - bloom.b0) / (low - bloom.b0)).toBeCloseTo(2.5, 1);
  expect(chosen).toBe('Sparling');
  expect(value).toBeCloseTo(0.2902, 4);
  expect(spreadRange(bloom).laws.find((law) => law.name === 'Beese')?.holds).toBe(false);
});

test('Ekelund’s width satisfies his own equation, and weak friction spreads nothing', () => {
  for (const [pass] of table) {
    const draught = draughtOf(pass);
    const b1 = ekelundSpread.width(draught);
    const mL = ekelundM(draught) * contactLength(draught);
    const right =
      8 * mL * (draught.h0 - draught.h1) - 4 * mL * (draught.h0 + draught.h1) * Math.log(b1 / draught.b0);
    expect((b1 * b1 - draught.b0 ** 2) / right).toBeCloseTo(1, 9);
  }
  expect(ekelundSpread.width({ ...draughtOf([100, 100, 80, 500]), friction: 0.05 })).toBe(0.1);
});

test('a square of 8 mm to an oval of 13 × 5.2 spreads 1.79 of its draught', () => {
  // Printed exercise row, not a careful experiment.
  expect(spreadCoefficient(8, 13, 8, 5.2)).toBeCloseTo(1.79, 2);
  expect(spreadExponent(8, 8 * 1.25, 8, 8 / 1.25)).toBeCloseTo(1, 12);
});

test('El-Kalay and Sparling: the two surfaces outside the table follow their own coefficients', () => {
  const { h0, h1, b0, R } = draughtOf([100, 100, 80, 500]);
  const width = (surface: 'smooth, heavy' | 'rough, light') =>
    spreadExponent(b0, elKalaySparling(surface).width({ ...draughtOf([100, 100, 80, 500]) }), h0, h1);
  const formula = (a: number, b: number, d: number, e: number) => a * Math.exp(-b * (h0 / R) ** d * 0.2 ** e);
  expect(width('smooth, heavy')).toBeCloseTo(formula(0.955, 1.844, 0.386, -0.104), 12);
  expect(width('rough, light')).toBeCloseTo(formula(0.993, 2.186, 0.402, -0.123), 12);
});

test('slabs four times as wide as high follow Shibahara and El-Kalay in their power of the width', () => {
  const slab = { h0: 0.2, h1: 0.17, b0: 0.8, R: 0.5, friction: 0.3 };
  const S = (law: SpreadLaw) => spreadExponent(slab.b0, law.width(slab), slab.h0, slab.h1);
  const L = Math.sqrt(0.5 * 0.03);
  expect(S(shibahara)).toBeCloseTo(Math.exp(-1.64 * 4 ** 0.376 * (0.8 / L) ** 0.064 * 0.4 ** 0.06), 12);
  const heavy = 0.955 * Math.exp(-1.844 * 4 ** 0.643 * 0.4 ** 0.386 * 0.15 ** -0.104);
  expect(S(elKalaySparling('smooth, heavy'))).toBeCloseTo(heavy, 12);
  const rough = 0.993 * Math.exp(-2.186 * 4 ** 0.569 * 0.4 ** 0.402 * 0.15 ** -0.123);
  expect(S(elKalaySparling('rough, light'))).toBeCloseTo(rough, 12);
});

test('deep draughts take Wusatowski’s second set, and a groove takes Shinokura and Takai by area', () => {
  const deep = { h0: 0.1, h1: 0.045, b0: 0.1, R: 0.25, friction: 0.35 };
  const exponent = 10 ** (-3.457 * 0.2 ** 0.968);
  const shallow = { ...deep, h1: 0.0505 };
  const usual = 10 ** (-1.269 * 0.2 ** 0.556);
  expect(wusatowski.width(shallow)).toBeCloseTo(0.1 * (0.1 / 0.0505) ** usual, 12);
  expect(wusatowski.width(deep)).toBeCloseTo(0.1 * (0.1 / 0.045) ** exponent, 12);
  expect(shinokuraTakaiWidth(deep, 0.3)).toBeCloseTo(
    0.1 * (1 + ((0.83 * Math.sqrt(0.01375)) / 0.15) * 0.3),
    12,
  );
});

test('wide stock does not spread, narrow stock spreads one half, by the law of Hill', () => {
  const pass = { h0: 0.05, h1: 0.04, R: 0.3, friction: 0.35 };
  const exponent = (b0: number) => spreadExponent(b0, hill.width({ ...pass, b0 }), pass.h0, pass.h1);
  expect(exponent(10)).toBeCloseTo(0, 9);
  expect(exponent(1e-6)).toBeCloseTo(0.5, 4);
});

test('no law shrinks a bar, and the size of the mill does not matter', () => {
  const draught = fc.record({
    h0: fc.double({ min: 0.8, max: 2, noNaN: true }),
    r: fc.double({ min: 0.03, max: 0.4, noNaN: true }),
    R: fc.double({ min: 1, max: 20, noNaN: true }),
    friction: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
  });
  fc.assert(
    fc.property(draught, ({ h0, r, R, friction }) => {
      const pass = { h0, h1: h0 * (1 - r), b0: 2, R, friction };
      const small = { ...pass, h0: h0 / 7, h1: pass.h1 / 7, b0: 2 / 7, R: R / 7 };
      for (const law of spreadLaws) {
        expect(law.width(pass)).toBeGreaterThanOrEqual(2);
        expect(law.width(small) * 7).toBeCloseTo(law.width(pass), 6);
      }
    }),
  );
});
