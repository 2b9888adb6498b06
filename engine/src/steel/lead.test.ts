import { expect, test } from 'vitest';
import { outsideValidity } from './law.ts';
import { lead, leadRanges } from './lead.ts';

const law = lead();
const middle = ({ low, high }: { low: number; high: number }) => (low + high) / 2;

test('lead stands in the middle of its range at a strain of 0.3 and 1 1/s (20 to 30 MPa, 0.04 to 0.1, from memory)', () => {
  expect(law.stress(0.3, 1, 20)).toBe(25e6);
  expect(law.stress(0.3, 1, 20)).toBe(middle(leadRanges.strength));
  expect(law.rateExponent(1, 20)).toBeCloseTo(middle(leadRanges.rateExponent), 12);
  expect(law.status).toBe('from memory, unconfirmed');
});

test('it hardens up to a strain of 0.3 and not beyond, and needs no stress at no strain', () => {
  expect(law.stress(0, 1, 20)).toBe(0);
  expect(law.stress(0.15, 1, 20) / law.stress(0.3, 1, 20)).toBeCloseTo(0.5 ** 0.2, 12);
  expect(law.stress(0.9, 1, 20)).toBe(law.stress(0.3, 1, 20));
});

test('the mean is the mean of the stress over the way to the strain, on both sides of 0.3', () => {
  for (const strain of [0.1, 0.3, 0.8]) {
    const steps = 20_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += law.stress(((i + 0.5) * strain) / steps, 2, 20) / steps;
    expect(law.mean(strain, 2, 20) / sum).toBeCloseTo(1, 5);
  }
});

test('the rate exponent is the slope of ln σ over ln rate', () => {
  const slope = Math.log(law.stress(0.2, 2, 20) / law.stress(0.2, 1, 20)) / Math.log(2);
  expect(slope).toBeCloseTo(law.rateExponent(1, 20), 12);
});

test('a block that was pressed brings its own figures', () => {
  const own = lead({ strength: 22e6, rateExponent: 0.05, hardening: 0.1 });
  expect(own.stress(0.3, 1, 20)).toBe(22e6);
  expect(own.stress(0.1, 4, 20)).toBeCloseTo(22e6 * 3 ** -0.1 * 4 ** 0.05, 3);
});

test('a block that is not at room temperature, or strained further than the tests agree, is noted', () => {
  expect(outsideValidity(law, { temperature: 20, strain: 0.3, rate: 1 })).toEqual([]);
  expect(outsideValidity(law, { temperature: 60, strain: 0.5, rate: 20 }).map(({ limit }) => limit)).toEqual([
    25, 10, 0.3,
  ]);
});
