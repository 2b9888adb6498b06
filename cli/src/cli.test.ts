import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { check } from './commands/check.ts';
import { pass } from './commands/flow-pass.ts';
import { run } from './commands/run.ts';
import { section } from './commands/section.ts';
import { station } from './commands/station.ts';
import { exitCode } from './exit-code.ts';
import type { Output } from './print/output.ts';

const examples = fileURLToPath(new URL('../../examples/', import.meta.url));
const heavy = `${examples}60e1-heavy-rail/plan.json`;
const folder = mkdtempSync(join(tmpdir(), 'bloomrail-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A command with what it wrote. */
function heard<C>(command: (output: Output) => C): { code: C; out: string; notices: string } {
  const [out, notices]: [string[], string[]] = [[], []];
  const code = command({
    out: (text) => out.push(text),
    notice: (text) => notices.push(text),
    watched: false,
  });
  return { code, out: out.join('\n'), notices: notices.join('\n') };
}

/** The heavy rail with one change, as a file. */
function changed(change: (plan: Record<string, never>) => void): string {
  const plan = JSON.parse(readFileSync(heavy, 'utf8'));
  change(plan);
  const file = join(folder, `${Math.abs(JSON.stringify(plan).length)}-plan.json`);
  writeFileSync(file, JSON.stringify(plan));
  return file;
}

const plain = { json: false, strict: false };
const json = { json: true, strict: false };

test('run prints every stop of the line, the figures asked for first, findings and the cautions', () => {
  const { code, out } = heard((output) => run(heavy, plain, output));
  expect(code).toBe(exitCode.computed);
  for (const stop of ['RF', 'DS', 'B1', 'K1', 'U3', 'UF', 'HS', 'CB', 'ST', 'CT'])
    expect(out).toMatch(new RegExp(`^${stop} `, 'm'));
  expect(out).toMatch(/Yield \d\d\.\d %/);
  expect(out).toContain('no permission');
});

test('run --json gives records, findings and a balance that closes', () => {
  const { out } = heard((output) => run(heavy, json, output));
  const { records, findings, balance, summary } = JSON.parse(out);
  expect(balance.massRelative).toBeLessThan(1e-9);
  expect(balance.energyRelative).toBeLessThan(5e-3);
  expect(records).toHaveLength(24);
  expect(records[2].record).toMatchObject({ kind: 'pass', code: 'B1', gapMm: expect.any(Number) });
  expect(summary.barLengthM).toBeGreaterThan(120);
  for (const finding of findings)
    expect(finding).toMatchObject({ station: expect.any(String), text: expect.any(String) });
});

test('run --strict ends with 1 when the line must not be run so, and with 0 without --strict', () => {
  const short = changed((plan: Record<string, unknown>) => {
    (plan.bloom as { lengthM: number }).lengthM = 7;
  });
  expect(heard((output) => run(short, { json: false, strict: true }, output)).code).toBe(exitCode.stopped);
  expect(heard((output) => run(short, plain, output)).code).toBe(exitCode.computed);
  expect(heard((output) => run(heavy, { json: false, strict: true }, output)).code).toBe(exitCode.computed);
});

test('a plan with three mistakes is told all three, with value, unit and limit, and exit code 2', () => {
  const wrong = changed((plan: Record<string, unknown>) => {
    (plan.bloom as { lengthM: number }).lengthM = 99;
    (plan.order as { grade: string }).grade = 7 as never;
    delete (plan.mill as { saws?: unknown }).saws;
  });
  const { code, notices } = heard((output) => check(wrong, { json: false }, output));
  expect(code).toBe(exitCode.badInput);
  expect(notices).toContain('bloom.lengthM is 99 m; allowed: 15 m or less');
  expect(notices).toContain('order.grade is 7');
  expect(notices).toContain('mill.saws is missing');
});

test('a file that is not there, or not JSON, is bad input and not a crash', () => {
  expect(heard((output) => run(join(folder, 'nowhere.json'), plain, output))).toMatchObject({
    code: exitCode.badInput,
  });
  const broken = join(folder, 'broken.json');
  writeFileSync(broken, '{ "order": ');
  const { code, out } = heard((output) => run(broken, json, output));
  expect(code).toBe(exitCode.badInput);
  expect(JSON.parse(out).issues[0].message).toContain('is not JSON');
});

test('section --json gives the documented keys', () => {
  const { code, out } = heard((output) => section('60E1', { json: true }, output));
  expect(code).toBe(exitCode.computed);
  const keys = [
    'areaMm2',
    'massKgPerM',
    'centroidAboveFootMm',
    'inertiaXMm4',
    'inertiaYMm4',
    'modulusHeadMm3',
  ];
  const more = ['modulusFootMm3', 'modulusLateralMm3', 'perimeterMm', 'torsionMm4'];
  for (const key of [...keys, ...more]) expect(JSON.parse(out)[key]).toBeTypeOf('number');
});

test('section shows how well each dimension is known, and draws', () => {
  const drawing = join(folder, '60e1.svg');
  const { out } = heard((output) => section('60E1', { json: false, drawing }, output));
  expect(out).toContain('published text');
  expect(out).toContain('outline fit');
  expect(existsSync(drawing)).toBe(true);
  expect(readFileSync(drawing, 'utf8')).toContain('>172.0<');
});

test('section takes own dimensions and a drawn outline, and lists what is wrong with either', () => {
  const own = JSON.parse(
    readFileSync(fileURLToPath(new URL('../../reference/profiles/60E1.json', import.meta.url)), 'utf8'),
  );
  const file = join(folder, 'own.json');
  writeFileSync(
    file,
    JSON.stringify({ ...own, name: 'own', dimensions: { ...own.dimensions, footWidthMm: 148 } }),
  );
  expect(heard((output) => section(file, { json: false }, output)).out).toContain('own');
  writeFileSync(
    file,
    JSON.stringify({ ...own, name: 'own', dimensions: { ...own.dimensions, heightMm: 170 } }),
  );
  const impossible = heard((output) => section(file, { json: false }, output));
  expect(impossible.code).toBe(exitCode.noAnswer);
  expect(impossible.notices).toContain('the head fillet (R 7 mm) cannot touch');
  const square = ['0', 'SECTION', '2', 'ENTITIES', '0', 'LWPOLYLINE', '90', '4', '70', '1'];
  const corners = [
    [0, 0],
    [40, 0],
    [40, 30],
    [0, 30],
  ].flatMap(([x, y]) => ['10', String(x), '20', String(y)]);
  const dxf = join(folder, 'square.dxf');
  writeFileSync(dxf, [...square, ...corners, '0', 'ENDSEC', '0', 'EOF', ''].join('\n'));
  const drawn = heard((output) => section(dxf, { json: true }, output));
  expect(JSON.parse(drawn.out).areaMm2).toBeCloseTo(1200, 6);
  writeFileSync(dxf, 'nothing of the kind');
  expect(heard((output) => section(dxf, { json: false }, output)).code).toBe(exitCode.badInput);
  expect(heard((output) => section('61E9', { json: false }, output)).notices).toContain('60E1');
});

test.each([
  ['furnace', 'furnace'],
  ['descaler', 'descaler'],
  ['pass', 'box-pass'],
  ['pass', 'flat-pass'],
  ['saws', 'saws'],
  ['cooling-bed', 'cooling-bed'],
  ['straighteners', 'straighteners'],
  ['yard', 'yard'],
])('station %s alone, from examples/one-station/%s.json', (name, file) => {
  const { code, out } = heard((output) => station(name, `${examples}one-station/${file}.json`, json, output));
  expect(code).toBe(exitCode.computed);
  expect(JSON.parse(out).kind).toBe(name);
});

test('a case for another station is refused', () => {
  const { code, notices } = heard((output) =>
    station('saws', `${examples}one-station/yard.json`, plain, output),
  );
  expect(code).toBe(exitCode.badInput);
  expect(notices).toContain('yard');
});

test('pass --model flow draws squares on the bar, and rolls a block of lead beside it', () => {
  const oval = fileURLToPath(new URL('../../examples/one-pass/square-to-oval.json', import.meta.url));
  const squares = join(folder, 'squares.svg');
  const options = { ...plain, model: 'flow', slices: false, squares, squareSide: 4, lead: 0.1 } as const;
  const { code, out } = heard((output) => pass(oval, options, output));
  expect(code).toBe(exitCode.computed);
  expect(out).toContain('Power: rolls');
  expect(out).toContain('The same in lead at 20 °C, 1 : 10');
  expect(out).toContain('Lead is poisonous');
  expect(readFileSync(squares, 'utf8')).toContain('squares of 4 mm');
}, 30_000);

/** The heavy rail's flow on a mesh that is small enough for a test. */
const small = (plan: Record<string, never>): void => {
  Object.assign(plan.settings, { passModel: { nodes: 90, slices: 8 } });
};
const byFlow = { ...plain, model: 'flow' } as const;

test('run --model flow prints both models side by side, whatever the plan asks for', () => {
  const { code, out } = heard((output) => run(changed(small), byFlow, output));
  expect(code).toBe(exitCode.computed);
  const [, table] = out.split('By metal flow, and by the handbook');
  expect(table).toMatch(/^ +Force +handbook +Torque +handbook/m);
  for (const pass of ['B1', 'K1', 'U1', 'UF']) expect(table).toMatch(new RegExp(`^${pass} +\\d+ +\\d+`, 'm'));
}, 60_000);

test('run --model flow ends without an answer where rolls skid, the pass named', () => {
  const file = changed((plan: { mill?: { stands: { friction: number }[] } }) => {
    small(plan as Record<string, never>);
    for (const stand of plan.mill?.stands ?? []) stand.friction = 0.1;
  });
  const { code, notices } = heard((output) => run(file, byFlow, output));
  expect(code).toBe(exitCode.noAnswer);
  expect(notices).toContain('pass B1');
}, 30_000);
