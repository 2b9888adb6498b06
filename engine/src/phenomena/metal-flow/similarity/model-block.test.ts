import { expect, test } from 'vitest';
import { squareMesh } from '../drawn-squares/affine-flow.fixture.ts';
import type { FlowProblem, FlowSteel } from '../problem.ts';
import type { RollLoads } from '../solution.ts';
import { leadSteel } from './lead-steel.ts';
import { flowStressOf, hotSide, scaledDown, stressRatio, toHotBar } from './model-block.ts';
import { similarityNotes } from './similarity-notes.ts';

/** A steel like hot rail steel: 100 MPa at a strain of 0.3, 10 1/s and 1000 °C. */
const hotSteel: FlowSteel = {
  name: 'hot',
  strength: (strain, T) => 100e6 * (Math.max(strain, 0.02) / 0.3) ** 0.2 * Math.exp((1000 - T) / 350),
  exponent: () => 0.14,
  referenceRate: 10,
};

const mesh = squareMesh(0.25, 4, true);
const nodes = mesh.xy.length / 2;

const pass: FlowProblem = {
  mesh,
  temperature: Float64Array.from({ length: nodes }, (_, node) => 1050 - 4 * node),
  strain: new Float64Array(nodes).fill(0.1),
  steel: hotSteel,
  rolls: [
    { name: 'upper', side: 'top', axis: 0.55, profile: [-0.2, 0.1, 0.2, 0.1], turning: 4, friction: 0.35 },
    {
      name: 'right',
      side: 'right',
      axis: 0.5,
      profile: [0.12, -0.2, 0.12, 0.2],
      turning: 'idle',
      friction: 0.3,
    },
  ],
  tension: { entry: 2e6, exit: -4e6 },
  heat: { heatCapacity: 4.8e6, conductivity: 30, contact: 20e3, rollTemperature: 80 },
  wishes: { slices: 20 },
};

test('a model block has all lengths scaled, the same rates and friction, one temperature and no heat', () => {
  const model = scaledDown(pass, 0.1);
  expect([...model.mesh.xy]).toEqual([...mesh.xy].map((v) => v * 0.1));
  expect(model.mesh.symmetry).toEqual({ x: 0, y: 0 });
  expect(model.rolls.map(({ axis }) => axis)).toEqual([0.55 * 0.1, 0.05]);
  expect([...model.rolls[0].profile]).toEqual([-0.2, 0.1, 0.2, 0.1].map((v) => v * 0.1));
  expect(model.rolls.map(({ turning, friction }) => [turning, friction])).toEqual([
    [4, 0.35],
    ['idle', 0.3],
  ]);
  expect(new Set(model.temperature)).toEqual(new Set([20]));
  expect(model.heat).toBeUndefined();
  expect(model.strain).toBe(pass.strain);
  expect(model.steel.name).toBe('Lead');
});

test('lines of symmetry away from the origin are scaled with the section', () => {
  const model = scaledDown({ ...pass, mesh: { ...mesh, symmetry: { x: 0.1, y: 0.2 } } }, 0.25);
  expect(model.mesh.symmetry).toEqual({ x: 0.025, y: 0.05 });
});

test('pulls keep their share of the flow stress', () => {
  const model = scaledDown(pass, 0.1);
  const at = { strain: 0.3, rate: 1 };
  const shares = [pass, model].map((side) => (side.tension?.entry ?? 0) / flowStressOf(hotSide(side), at));
  expect(shares[1]).toBeCloseTo(shares[0], 14);
  expect((model.tension?.exit ?? 0) / (model.tension?.entry ?? 1)).toBeCloseTo(-2, 12);
});

const loads: RollLoads = {
  name: 'upper',
  force: 8100,
  lateral: -30,
  torque: 75,
  power: 300,
  turning: 4,
  contactArea: 2.2e-4,
  contactLength: 0.015,
  meanPressure: 36e6,
  highestPressure: 60e6,
  neutralLine: 0.004,
};

test('loads of a block 1 : 10 become a hundred and a thousand times as large, times the flow stresses', () => {
  const hot = toHotBar(loads, 0.1, 4);
  expect(hot.force).toBeCloseTo(8100 * 100 * 4, 3);
  expect(hot.lateral).toBeCloseTo(-30 * 100 * 4, 6);
  expect(hot.torque).toBeCloseTo(75 * 1000 * 4, 6);
  expect(hot.power).toBeCloseTo(300 * 1000 * 4, 6);
  expect(hot.contactLength).toBeCloseTo(0.15, 12);
  expect(hot.neutralLine).toBeCloseTo(0.04, 12);
});

test('scaled loads obey the laws that the loads themselves obey, at any scale, ratio and speed', () => {
  for (const [scale, ratio, turns] of [
    [0.1, 4, 1],
    [0.25, 3.1, 12],
    [1, 1, 1],
    [2, 0.5, 0.1],
  ]) {
    const hot = toHotBar(loads, scale, ratio, turns);
    expect(hot.power / (hot.torque * hot.turning)).toBeCloseTo(
      loads.power / (loads.torque * loads.turning),
      12,
    );
    expect(hot.force / (hot.meanPressure * hot.contactArea)).toBeCloseTo(
      loads.force / (loads.meanPressure * loads.contactArea),
      12,
    );
    expect(hot.torque / (hot.force * hot.contactLength)).toBeCloseTo(
      loads.torque / (loads.force * loads.contactLength),
      12,
    );
    const back = toHotBar(hot, 1 / scale, 1 / ratio, 1 / turns);
    for (const [key, value] of Object.entries(loads)) {
      const other = back[key as keyof RollLoads];
      if (typeof value === 'number') expect(Number(other) / value).toBeCloseTo(1, 12);
    }
  }
  const { neutralLine: _, ...sliding } = loads;
  expect('neutralLine' in toHotBar(sliding, 0.1, 4)).toBe(false);
});

test('the ratio of the flow stresses is taken at one strain and rate', () => {
  const ratio = stressRatio(
    { steel: hotSteel, temperature: 1000 },
    { steel: leadSteel(), temperature: 20 },
    { strain: 0.3, rate: 10 },
  );
  expect(ratio).toBeCloseTo(100 / (25 * 10 ** 0.07), 12);
});

test('lead enters the flow model hardened to a strain of 0.02, never without stress', () => {
  const steel = leadSteel();
  expect(steel.strength(0, 20)).toBe(steel.strength(0.02, 20));
  expect(steel.strength(0, 20) / steel.strength(0.3, 20)).toBeCloseTo((0.02 / 0.3) ** 0.2, 12);
  expect(leadSteel({ rateExponent: 0.05 }).exponent(20)).toBe(0.05);
});

test('notes tell unequal rate exponents and temperatures; equal hardening and friction are passed over', () => {
  const notes = similarityNotes(pass, scaledDown(pass, 0.1), { strain: 0.15, rate: 2 });
  expect(notes.map(({ check }) => check)).toEqual(['similar-rate', 'similar-temperature']);
  const [rate, temperature] = notes;
  expect(rate.text).toBe(
    'The rate exponent is 0.070 for the block and 0.140 for the hot bar: over a tenfold rate their flow stresses part by 17 %.',
  );
  expect(temperature.text).toContain('954 to 1050 °C in the bar, flow stress 32 % higher');
});

test('notes tell friction and hardening that differ, by how much', () => {
  const soft = leadSteel({ hardening: 0.05, rateExponent: 0.14 });
  const model = scaledDown(pass, 0.1, soft);
  const rough = { ...model, rolls: model.rolls.map((roll) => ({ ...roll, friction: 0.5 })) };
  const notes = similarityNotes(pass, rough, { strain: 0.15, rate: 2 });
  expect(notes.map(({ check }) => check)).toEqual([
    'similar-friction',
    'similar-friction',
    'similar-hardening',
    'similar-temperature',
  ]);
  expect(notes[0]).toMatchObject({ value: 0.5, limit: 0.35 });
  // (1/2)^0.15 and 1.5^0.15 of the difference of the exponents.
  expect(notes[2].text).toContain('changes by −10 % and 6 %');
});

test('a block of the bar itself lacks nothing but what a cold room takes away', () => {
  const even = { ...pass, temperature: new Float64Array(nodes).fill(20) };
  const notes = similarityNotes(even, scaledDown(even, 0.5, hotSteel));
  expect(notes.map(({ check, value }) => [check, value])).toEqual([['similar-temperature', 1]]);
});
