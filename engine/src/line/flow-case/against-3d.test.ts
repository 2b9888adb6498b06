import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { widthAt } from '../../section/crossings.ts';
import { FlowCase } from './flow-case.ts';
import type { FlowRecord } from './record.ts';
import { runFlowCase } from './run-flow-case.ts';

/**
 * Slices against own full 3-D solutions of the same passes (reference/cases/rolling-3d), same steel, friction and
 * rigid rolls. Tolerances: what a trial of the slice model reached there, its scatter over meshes and slices, and the
 * discretisation estimates of the 3-D solutions.
 */
const root = fileURLToPath(new URL('../../../../', import.meta.url));
const content = (file: string) => JSON.parse(readFileSync(root + file, 'utf8'));
const records = new Map<string, FlowRecord>();

/** An example, rolled once for all tests. */
function rolled(name: string): FlowRecord {
  const known = records.get(name);
  if (known) return known;
  const record = must(runFlowCase(FlowCase.parse(content(`examples/one-pass/${name}.json`))));
  records.set(name, record);
  return record;
}

/** The value of the 3-D solutions, extrapolated over their meshes. */
function best(name: string): (quantity: string) => number {
  const { results } = content(`reference/cases/rolling-3d/${name}.json`);
  return (quantity) => {
    const row = results.find((each: { readonly name: string }) => each.name.startsWith(quantity));
    if (row) return row.best;
    throw new Error(`${name} has no ${quantity}`);
  };
}

/** Computed over 3-D, less 1, in percent, lies between two limits. */
function within(what: string, computed: number, solved: number, low: number, high: number): void {
  const off = 100 * (computed / solved - 1);
  expect.soft(off, `${what}: ${computed} against ${solved}, %`).toBeGreaterThan(low);
  expect.soft(off, `${what}: ${computed} against ${solved}, %`).toBeLessThan(high);
}

/** Every accepted answer closes its energy and keeps its volume and its shear. */
function sound({ energy, quality }: FlowRecord): void {
  expect.soft(Math.abs(energy.error), 'energy').toBeLessThan(0.01);
  expect.soft(Math.abs(quality.volumeDrift), 'volume').toBeLessThan(0.003);
  expect.soft(quality.largestShear, 'shear').toBeLessThanOrEqual(1);
}

describe('against full 3-D solutions', () => {
  test('square 60 between flat rolls to 48', () => {
    const record = rolled('flat-60x60-to-48');
    const [{ force, torque, spreadExponent, forwardSlip, width, h0, h1 }] = content(
      'reference/cases/rolling-3d/flat-passes.json',
    ).passes;
    const [top] = record.rolls;
    within('force', top.force / 1e3, force, -1, 7);
    within('torque', top.torque / 1e3, torque, -6, 6);
    const exponent = Math.log(h0 / h1 / record.elongation) / Math.log(h0 / h1);
    expect.soft(Math.abs(exponent - spreadExponent), 'spread exponent').toBeLessThan(0.05);
    within('width', 1e3 * record.exit.width, width, -1, 1);
    expect.soft(Math.abs(record.forwardSlip - forwardSlip), 'forward slip').toBeLessThan(0.015);
    sound(record);
  });

  test('box 250 to 200', () => {
    const [record, solved] = [rolled('box-250-to-200'), best('box-250-to-200')];
    const [top] = record.rolls;
    within('force', top.force / 1e3, solved('F_y top'), 0, 8);
    within('torque', top.torque / 1e3, solved('torque top'), -4, 4);
    expect.soft(Math.abs(record.elongation - solved('elongation')), 'elongation').toBeLessThan(0.003);
    within('width', 1e3 * record.exit.width, solved('width_max'), -0.8, 0.8);
    within('width at y 0', 1e3 * widthAt(record.exit.outline, 0), solved('width_y0'), -0.8, 0.8);
    within('width at y 80', 1e3 * widthAt(record.exit.outline, 0.08), solved('width_y80'), -0.8, 0.8);
    sound(record);
  });

  test('square 50 to oval', () => {
    const [record, solved] = [rolled('square-to-oval'), best('square-to-oval')];
    const [top] = record.rolls;
    within('force', top.force / 1e3, solved('F_y top'), -4, 4);
    within('torque', top.torque / 1e3, solved('torque top'), -4, 4);
    within('width', 1e3 * record.exit.width, solved('width_max'), -1, 1);
    within('width at y 10', 1e3 * widthAt(record.exit.outline, 0.01), solved('width_y10'), -1, 1);
    expect.soft(Math.abs(record.elongation - solved('elongation')), 'elongation').toBeLessThan(0.008);
    sound(record);
  });

  test('universal rail pass', () => {
    const [record, solved] = [rolled('universal-rail'), best('universal-rail')];
    const [horizontal, foot, head] = record.rolls;
    within('horizontal force', horizontal.force / 1e3, solved('F_y horizontal'), -8, 8);
    within('horizontal torque', horizontal.torque / 1e3, solved('torque horizontal'), -6, 6);
    within('foot roll force', foot.force / 1e3, -solved('F_z foot'), -12, 12);
    within('head roll force', head.force / 1e3, solved('F_z head'), -25, 25);
    expect.soft(Math.abs(record.elongation - solved('elongation')), 'elongation').toBeLessThan(0.01);
    within('foot width', across(record, 0, 0.06), solved('foot_width'), -1.5, 1.5);
    within('head width', across(record, 0.125, 0.18), solved('head_width'), -4, 4);
    for (const { torque } of [foot, head])
      expect.soft(Math.abs(torque / horizontal.torque)).toBeLessThan(0.01);
    sound(record);
  });
});

/**
 * Accepted for now, may only fall: the rail leaves straight from the exit plane on, which the full solution does not ask of
 * it. When it comes within the 0.015 that are wanted this fails, and the row moves up among the others.
 */
test('universal rail pass: forward slip off by more than is wanted, 0.015, and not by more than 0.018', () => {
  const off = rolled('universal-rail').forwardSlip - best('universal-rail')('forward slip');
  expect(off).toBeGreaterThan(0.015);
  expect(off).toBeLessThanOrEqual(0.018);
});

/** Widest place across the gap of the part between two heights of the rail, mm. */
function across({ exit }: FlowRecord, from: number, to: number): number {
  const ys = exit.outline.vertices.filter(({ x }) => x >= from && x <= to).map(({ y }) => y);
  return 1e3 * (Math.max(...ys) - Math.min(...ys));
}
