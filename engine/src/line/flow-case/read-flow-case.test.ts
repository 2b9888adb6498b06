import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { rollProfile } from '../../phenomena/metal-flow/roll-profile.ts';
import { edgesOf, nearestOn } from '../../section/edges.ts';
import { OutlineFile } from '../../section/outline-file.ts';
import { sectionProperties } from '../../section/properties.ts';
import { rectangle } from '../../section/rectangle.ts';
import { pathOfRoll } from './case-roll.ts';
import { outlineOfSection } from './entering-section.ts';
import { FlowCase } from './flow-case.ts';
import { readFlowCase } from './read-flow-case.ts';

type Values = Readonly<Record<string, unknown>>;
interface Written extends Values {
  readonly section: Values;
  readonly rolls: readonly Values[];
}
interface Solution {
  readonly entry_outline_yz: readonly (readonly [number, number])[];
  readonly friction: { readonly mu: number };
  readonly rolls: readonly {
    readonly side: string;
    readonly axis: number;
    readonly omega: number | null;
    readonly idle: boolean;
    readonly profile_yz_at_exit_plane: readonly (readonly [number, number])[];
  }[];
}

const root = fileURLToPath(new URL('../../../../', import.meta.url));
const content = (file: string) => JSON.parse(readFileSync(root + file, 'utf8'));
const example = (name: string): Written => content(`examples/one-pass/${name}.json`);
const solution = (name: string): Solution => content(`reference/cases/rolling-3d/${name}.json`);
const examples = ['box-250-to-200', 'square-to-oval', 'universal-rail', 'flat-60x60-to-48'];
const [, , rail, flat] = examples.map(example);

/** What is said of a file. */
function said(written: unknown): string[] {
  const reading = readFlowCase(written);
  return reading.ok ? [] : reading.issues.map(({ message }) => message);
}

/** A case with one of its rolls changed. */
const withRoll = (from: Written, number: number, change: Values): Written => ({
  ...from,
  rolls: from.rolls.map((roll, i) => (i === number ? { ...roll, ...change } : roll)),
});
const straight = (...pointsMm: number[][]) => ({ profile: { shape: 'points', pointsMm } });
const points = (...pointsMm: number[][]) => ({ ...flat, section: { shape: 'points', pointsMm } });
const curved = (rows: readonly (readonly number[])[]) => ({ ...flat, section: { shape: 'outline', rows } });

/** Two rolls without symmetry, drawn for the upper one: the lower one is mirrored. */
const pair = (upper: number[][], lower: number[][]) => ({
  ...flat,
  symmetry: 'none',
  rolls: [
    { ...flat.rolls[0], ...straight(...upper) },
    {
      ...flat.rolls[0],
      name: 'bottom',
      side: 'bottom',
      axisMm: -324,
      ...straight(...lower.map(([x, y]) => [x, -y])),
    },
  ],
});
const level = [
  [-99, 24],
  [99, 24],
];
/** Reaching beyond the other roll's face, between its ends. */
const peaked = [
  [-50, 40],
  [0, -25],
  [50, 40],
];
const rounded = z.encode(OutlineFile, rectangle(0.06, 0.06, 0.01));

test.each(examples)('%s is read without an issue and written back as it stands', (name) => {
  expect(said(example(name))).toEqual([]);
  expect(z.encode(FlowCase, FlowCase.parse(example(name)))).toEqual(example(name));
});

describe('the examples are the passes of the full 3-D solutions', () => {
  const solved = examples.slice(0, 3);

  test.each(solved)('%s: entering outline within 0.1 mm', (name) => {
    const edges = edgesOf(outlineOfSection(FlowCase.parse(example(name)).section));
    for (const [y, z] of solution(name).entry_outline_yz)
      expect(nearestOn(edges, z / 1e3, y / 1e3).distance, `y ${y} z ${z}`).toBeLessThan(1e-4);
  });

  test.each(solved)('%s: rolls within 0.03 mm, same axes, turning and friction', (name) => {
    const { rolls } = FlowCase.parse(example(name));
    const theirs = solution(name);
    expect(rolls).toHaveLength(theirs.rolls.length);
    theirs.rolls.forEach((roll, i) => {
      expect(rolls[i]).toMatchObject({ side: roll.side, friction: theirs.friction.mu });
      expect(rolls[i].axis).toBeCloseTo(roll.axis / 1e3, 12);
      expect(rolls[i].idle === true).toBe(roll.idle);
      if (roll.omega !== null) expect(rolls[i].turningRadPerS).toBeCloseTo(roll.omega, 9);
      const edge = rollProfile(pathOfRoll(rolls[i]));
      for (const [y, z] of roll.profile_yz_at_exit_plane)
        expect(distanceTo(edge, z / 1e3, y / 1e3), `y ${y} z ${z}`).toBeLessThan(3e-5);
    });
  });
});

/** Distance from a point to a chain of straight lines. */
function distanceTo(chain: Float64Array, x: number, y: number): number {
  const vertex = (i: number) => ({ x: chain[2 * i], y: chain[2 * i + 1], bulge: 0 });
  const vertices = Array.from({ length: chain.length / 2 }, (_, i) => vertex(i));
  return nearestOn(edgesOf({ vertices }).slice(0, -1), x, y).distance;
}

test('a section written clockwise is turned, arcs included', () => {
  const n = rounded.length;
  const backwards = rounded.map((_, i) => {
    const [x, y] = rounded[(n - i) % n];
    return [x, y, -rounded[n - 1 - i][2]];
  });
  const area = (written: unknown) =>
    sectionProperties(outlineOfSection(FlowCase.parse(written).section)).area;
  expect(said(curved(backwards))).toEqual([]);
  expect(area(curved(backwards))).toBeCloseTo(area(curved(rounded)), 15);
  expect(area(curved(rounded))).toBeCloseTo(0.06 ** 2 - (4 - Math.PI) * 0.01 ** 2, 12);
});

describe('what does not fit is told in words that can be acted on', () => {
  const { turningRadPerS: _, ...undriven } = flat.rolls[0];

  test.each<[string, unknown, RegExp]>([
    [
      'rolls touching their image',
      withRoll(flat, 0, straight([-99, 0], [99, 0])),
      /touches its mirror image/,
    ],
    [
      'rolls touching each other',
      withRoll(rail, 2, straight([100, -2], [100, 60])),
      /^rolls\.0\.profile touches rolls\.2 \(head roll\)/,
    ],
    [
      'a lower roll reaching up between the ends of a flat one',
      pair(level, peaked),
      /touches rolls\.1 \(bottom\)/,
    ],
    ['an upper roll reaching down likewise', pair(peaked, level), /touches rolls\.1 \(bottom\)/],
    [
      'a roll that misses the bar',
      withRoll(flat, 0, straight([-99, 31], [99, 31])),
      /does not reach the bar/,
    ],
    ['no roll facing', { ...flat, symmetry: 'none' }, /no two rolls face each other/],
    ['no roll driven', { ...flat, rolls: [{ ...undriven, idle: true }] }, /none is driven/],
    ['two kinds of drive', withRoll(flat, 0, { turningRpm: 60 }), /says twice how the roll turns/],
    ['no drive said', { ...flat, rolls: [undriven] }, /says not how the roll turns/],
    ['axis before the profile', withRoll(flat, 0, { axisMm: -324 }), /axisMm is -324 mm; allowed: above 24/],
    ['a roll on the mirrored side', withRoll(rail, 1, { side: 'bottom' }), /mirrored from the other side/],
    ['a side used twice', withRoll(rail, 1, rail.rolls[2]), /rolls\.2\.side is right, used before/],
    [
      'an outline that crosses itself',
      points([-30, -30], [30, 30], [30, -30], [-30, 30]),
      /crosses or touches itself at x 0, y 0 mm/,
    ],
    [
      'a section that is not symmetric',
      points([-30, -30], [30, -30], [32, 0], [30, 30], [-30, 30]),
      /not its own mirror image in x = 0: it misses by 2 mm/,
    ],
    ['a point beyond the limit', curved([...rounded, [9000, -20, 0]]), /rows\.8 is x 9000, y -20 mm/],
    ['a point twice', curved([...rounded, rounded[0]]), /twice in a row/],
    ['a sliver', points([-30, -0.1], [30, -0.1], [30, 0.1], [-30, 0.1]), /section is 12 mm²/],
    [
      'a corner rounder than the side',
      { ...flat, section: { ...flat.section, cornerRadiusMm: 31 } },
      /30 mm or less, half the shorter side/,
    ],
    [
      'a grade that is not known',
      { ...flat, steel: { law: 'shida', grade: 'R26', temperatureC: 1000 } },
      /steel\.grade is R26; allowed: one of/,
    ],
  ])('%s', (_name, written, message) => {
    expect(said(written)).toEqual([expect.stringMatching(message)]);
  });

  test('everything at once: single values, geometry and names', () => {
    const messages = said({
      ...flat,
      slices: 2.5,
      section: { ...flat.section, cornerRadiusMm: 40 },
      steel: { law: 'misaka', grade: 'tin', temperatureC: 1000 },
      rolls: [
        { ...flat.rolls[0], friction: 3 },
        { ...flat.rolls[0], axisMm: 10 },
      ],
    });
    for (const part of [
      /^slices/,
      /rolls\.0\.friction is 3/,
      /cornerRadiusMm/,
      /grade is tin/,
      /rolls\.1\.axisMm/,
    ])
      expect(messages).toContainEqual(expect.stringMatching(part));
  });

  test('a handbook case is told in one sentence what it is', () => {
    expect(said({ station: 'pass', settings: {} })).toEqual([
      expect.stringContaining('this is a station case (pass), computed by handbook laws'),
    ]);
  });
});
