import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import type { FlowProblem } from '../../phenomena/metal-flow/problem.ts';
import { type QuadMesh, quadCount, skin } from '../../phenomena/metal-flow/quad-mesh.ts';
import type { FlowSection, FlowSolution, StepContact } from '../../phenomena/metal-flow/solution.ts';
import { rectangle } from '../../section/rectangle.ts';
import { FlowCase } from './flow-case.ts';
import { grooveFill } from './groove-fill.ts';
import { problemOf } from './problem.ts';
import { FlowRecord, writeFlowRecord } from './record.ts';
import { flowRecord } from './recording.ts';

const folder = fileURLToPath(new URL('../../../../examples/one-pass/', import.meta.url));
const example = (name: string): FlowCase =>
  FlowCase.parse(JSON.parse(readFileSync(`${folder}${name}.json`, 'utf8')));

const given = example('flat-60x60-to-48');
const problem = must(problemOf(given));

/** A pass in which the section is squeezed evenly from 60 to 48 and the roll touches the whole top, behind and ahead. */
const squeezed = (change: Partial<FlowSolution> = {}): FlowSolution => solutionFor(problem, change);

function solutionFor({ mesh, rolls }: FlowProblem, change: Partial<FlowSolution>): FlowSolution {
  const nodes = mesh.xy.length / 2;
  const top = topNodes(mesh);
  const [elements, contacts] = [quadCount(mesh), top.length];
  const filled = (count: number, value: number) => new Float64Array(count).fill(value);
  const step = (length: number, slip: number) => ({
    length,
    rate: filled(elements, 10),
    flowStress: filled(elements, 1e8),
    shearShare: filled(elements, 0.4),
    velocity: filled(2 * nodes, 0),
    excess: filled(nodes, 0),
    contact: {
      node: Int32Array.from(top),
      roll: new Int32Array(contacts),
      force: filled(contacts, 1e5),
      pressure: filled(contacts, 1.3e8),
      friction: filled(contacts, 1e4),
      slip: filled(contacts, slip),
    },
  });
  return {
    mesh,
    sections: [
      squeezedTo(mesh, 1, 0.06, 1),
      squeezedTo(mesh, 0.9, 0.01, 1.05),
      squeezedTo(mesh, 0.8, 0, 1.1),
    ],
    steps: [step(0.05, -0.2), step(0.01, 0.1)],
    rolls: rolls.map(({ name }) => loads(name)),
    elongation: 1 / 0.88,
    forwardSlip: 0.04,
    entrySpeed: 1.8,
    exitSpeed: 2.08,
    temperature: Float64Array.from({ length: nodes }, (_, i) => 990 + (20 * i) / (nodes - 1)),
    strain: filled(nodes, 0.25),
    heat: filled(nodes, 0),
    bending: { momentX: 0, momentY: 0 },
    energy: { rolls: 2e5, tension: 0, plastic: 1.8e5, friction: 1.9e4, error: 0.005 },
    quality: {
      nodes,
      slices: 2,
      marches: 9,
      rejected: 0,
      restarts: 0,
      flowChange: 1e-4,
      pullChange: 1e-3,
      areaChange: 1e-4,
      warpingChange: 1e-3,
      volumeDrift: 0.001,
      largestShear: 0.4,
    },
    ...change,
  };
}

const loads = (name: string) => ({
  name,
  force: 4e5,
  lateral: 0,
  torque: 1.4e4,
  power: 1e5,
  turning: 6.7,
  contactArea: 3.6e-3,
  contactLength: 0.06,
  meanPressure: 1.1e8,
  highestPressure: 2e8,
});

function squeezedTo(mesh: QuadMesh, height: number, distance: number, width: number): FlowSection {
  return {
    distance,
    xy: Float64Array.from(mesh.xy, (value, i) => value * (i % 2 === 0 ? width : height)),
    area: 0.0036 * height * width,
    speed: 2 / height,
    pull: 0,
    temperature: new Float64Array(mesh.xy.length / 2).fill(1000),
  };
}

/** Nodes on the upper face of the quarter, in the order of the loop. */
function topNodes({ xy, loop, lies }: QuadMesh): number[] {
  const onTop = (node: number) => Math.abs(xy[2 * node + 1] - 0.03) < 1e-9;
  return Array.from(loop).filter((node, i) => onTop(node) && (lies[i] === skin || xy[2 * node] < 1e-9));
}

const checks = (change: Partial<FlowSolution>, from = given): string[] =>
  flowRecord(from, problem, squeezed(change)).findings.map(({ level, check }) => `${level} ${check}`);

describe('record of a pass', () => {
  const record = flowRecord(given, problem, squeezed(), true);

  test('sections, gains and means are those of the whole bar', () => {
    expect(record.entry).toMatchObject({
      width: expect.closeTo(0.06, 9),
      height: expect.closeTo(0.06, 9),
      speed: 1.8,
    });
    expect(record.exit).toMatchObject({ width: expect.closeTo(0.066, 9), height: expect.closeTo(0.048, 9) });
    expect(record.widthGain).toBeCloseTo(0.006, 9);
    expect(record.strain.mean).toBeCloseTo(0.25, 12);
    expect(record.strainRate).toBeCloseTo(10, 9);
    expect(record.temperature).toEqual({ least: 990, most: 1010 });
    expect(record.exit.temperature).toBeCloseTo(1000, 9);
  });

  test('what the roll touches is the whole width, above and below', () => {
    const ends = record.rolls[0].touched.map(({ vertices }) => vertices.map(({ x }) => x));
    const ys = record.rolls[0].touched.flatMap(({ vertices }) => vertices.map(({ y }) => y));
    expect(record.rolls[0].touched).toHaveLength(4);
    expect([Math.min(...ends.flat()), Math.max(...ends.flat())]).toEqual([
      expect.closeTo(-0.033, 9),
      expect.closeTo(0.033, 9),
    ]);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([expect.closeTo(-0.024, 9), expect.closeTo(0.024, 9)]);
  });

  test('only the slice that ends at the exit plane says what is touched there', () => {
    const { steps } = squeezed();
    const none = new Float64Array(0);
    const nothing = { node: none, roll: none, force: none, pressure: none, friction: none, slip: none };
    const touchedWith = (contacts: readonly StepContact[]) =>
      flowRecord(
        given,
        problem,
        squeezed({ steps: steps.map((step, i) => ({ ...step, contact: contacts[i] })) }),
      ).rolls[0].touched;
    expect(touchedWith([nothing, steps[1].contact])).toHaveLength(4);
    expect(touchedWith([steps[0].contact, nothing])).toHaveLength(0);
  });

  test('bite angle by the first place of contact, reserve by where the bar runs ahead', () => {
    // First contact 60 mm before the exit plane, 294 mm from the axis; ahead on 10 of 60 mm at even force.
    expect(record.rolls[0].biteAngle).toBeCloseTo(Math.atan2(60, 294), 6);
    expect(record.rolls[0].ahead).toBeCloseTo(1 / 6, 12);
  });

  test('slices on request: rates and contact belong to the slice that ends there', () => {
    expect(flowRecord(given, problem, squeezed()).slices).toBeUndefined();
    const [first, , last] = record.slices ?? [];
    expect(first.contact).toBeUndefined();
    expect(last).toMatchObject({
      strainRate: expect.closeTo(10, 9),
      flowStress: expect.closeTo(1e8, 0),
      shear: 0.4,
    });
    expect(last.contact?.[0]).toMatchObject({ roll: 'top', slip: 0.1, y: expect.closeTo(0.024, 9) });
  });

  test('a slice says how fast its parts run that are ahead of the mean speed and behind it', () => {
    const even = squeezed();
    const [first, second] = even.steps;
    const excess = Array.from(second.excess, (_, node) => (node === 3 ? 0.04 : node === 5 ? -0.03 : 0));
    const warped = { ...even, steps: [first, { ...second, excess }] };
    const [, , last] = flowRecord(given, problem, warped, true).slices ?? [];
    const mean = (even.sections[1].speed + even.sections[2].speed) / 2;
    expect(last.fastest).toBeCloseTo(mean + 0.04, 12);
    expect(last.slowest).toBeCloseTo(mean - 0.03, 12);
  });

  test('in a file keys carry units, and it reads back', () => {
    const written = writeFlowRecord(record) as { rolls: unknown[]; quality: unknown };
    expect(written).toMatchObject({
      kind: 'flow-pass',
      widthGainMm: expect.closeTo(6, 6),
      forwardSlipPercent: 4,
    });
    expect(written.rolls[0]).toMatchObject({ forceKn: 400, torqueKnm: 14, powerKw: 100 });
    expect(writeFlowRecord(FlowRecord.parse(written))).toEqual(written);
  });
});

describe('findings', () => {
  test('a sound pass has none', () => {
    expect(checks({})).toEqual([]);
  });

  test.each<[string, Partial<FlowSolution>]>([
    ['near energy-balance', { energy: { ...squeezed().energy, error: -0.02 } }],
    ['note volume', { quality: { ...squeezed().quality, volumeDrift: -0.004 } }],
    ['note axial-shear', { quality: { ...squeezed().quality, largestShear: 0.95 } }],
    ['note settling', { quality: { ...squeezed().quality, restarts: 1 } }],
    ['note straight-exit', { bending: { momentX: 0, momentY: -3e3 } }],
    ['near drive-reserve', { steps: [squeezed().steps[0], squeezed().steps[0]] }],
  ])('%s', (finding, change) => {
    expect(checks(change)).toEqual([finding]);
  });

  test('a roll that first touches beyond its angle of friction: near, and outside from half as much again', () => {
    const slippery = (friction: number) => {
      const rolls = problem.rolls.map((roll) => ({ ...roll, friction }));
      return flowRecord(given, { ...problem, rolls }, squeezed()).findings.map(
        ({ level, check }) => `${level} ${check}`,
      );
    };
    // 11.5° against atan μ.
    expect(slippery(0.22)).toEqual(['note bite-angle']);
    expect(slippery(0.18)).toEqual(['near bite-angle']);
    expect(slippery(0.1)).toEqual(['outside bite-angle']);
  });

  test('a handbook law outside its range is said', () => {
    const cold: FlowCase = { ...given, steel: { law: 'shida', grade: 'R260', temperature: 650 } };
    expect(checks({}, cold)).toEqual(['note law-validity']);
  });
});

describe('groove fill', () => {
  const oval = must(problemOf({ ...example('square-to-oval'), nodes: 80 }));
  const fillOf = (width: number, height: number) =>
    grooveFill(oval.rolls, oval.mesh.symmetry, rectangle(width, height, 0));

  test('mouth from collar to collar, opening by the circle segments', () => {
    // Two segments of chord 84 and rise 15 on a gap of 4: 2 (R² asin(42/R) − 42 (R − 15)) + 84·4, R = 66.3.
    const opening = 2 * (66.3 ** 2 * Math.asin(42 / 66.3) - 42 * 51.3) + 84 * 4;
    const found = fillOf(0.05, 0.02);
    expect(found?.mouth).toBeCloseTo(0.084, 4);
    // The roll's chords leave its arcs by 0.02 mm: 0.12 % of the opening.
    expect(((found?.fill ?? 0) * opening) / 1000).toBeCloseTo(1.0012, 3);
    expect(found?.fin).toBe(0);
  });

  test('metal beyond the mouth is fin', () => {
    expect(fillOf(0.09, 0.004)?.fin).toBeCloseTo(0.006 * 0.004, 8);
  });

  test('flat rolls and universal rolls have no groove to fill', () => {
    expect(grooveFill(problem.rolls, problem.mesh.symmetry, rectangle(0.06, 0.05, 0))).toBeUndefined();
    const rail = must(problemOf({ ...example('universal-rail'), nodes: 200 }));
    expect(grooveFill(rail.rolls, rail.mesh.symmetry, rectangle(0.06, 0.05, 0))).toBeUndefined();
  });

  test('a pass with fin is outside, one hardly filled a note', () => {
    const noteOf = (height: number) => {
      const solution = solutionFor(oval, {});
      const sections = solution.sections.map((section) => ({
        ...section,
        xy: Float64Array.from(section.xy, (v, i) => (i % 2 === 0 ? (v * 0.045) / 0.0275 : v * height)),
      }));
      return flowRecord(example('square-to-oval'), oval, { ...solution, sections }).findings.map(
        ({ level, check }) => `${level} ${check}`,
      );
    };
    expect(noteOf(0.5)).toContain('outside fin');
    expect(
      flowRecord(example('square-to-oval'), oval, solutionFor(oval, {})).findings.map(({ check }) => check),
    ).toEqual([]);
  });
});
