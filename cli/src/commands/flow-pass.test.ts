import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { exitCode } from '../exit-code.ts';
import { type PassOptions, pass } from './flow-pass.ts';

const examples = fileURLToPath(new URL('../../../examples/', import.meta.url));
const handbook = `${examples}one-station/flat-pass.json`;
const folder = mkdtempSync(join(tmpdir(), 'bloomrail-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A small mesh answers quickly; figures are held elsewhere. */
const flat = join(folder, 'flat.json');
const content = JSON.parse(readFileSync(`${examples}one-pass/flat-60x60-to-48.json`, 'utf8'));
writeFileSync(flat, JSON.stringify({ ...content, slices: 12, nodes: 150 }));

const asked = (change: Partial<PassOptions>): PassOptions => ({
  json: false,
  strict: false,
  model: 'flow',
  slices: false,
  ...change,
});

/** The command with what it wrote. */
function heard(file: string, change: Partial<PassOptions> = {}) {
  const [out, notices]: [string[], string[]] = [[], []];
  const code = pass(file, asked(change), {
    out: (text) => out.push(text),
    notice: (text) => notices.push(text),
    watched: false,
  });
  return { code, out: out.join('\n'), notices: notices.join('\n') };
}

test('loads of each roll, what became of the bar, how sound the answer is, and the cautions', () => {
  const { code, out } = heard(flat);
  expect(code).toBe(exitCode.computed);
  expect(out).toMatch(/^top +\d{3} /m);
  expect(out).toMatch(/elongation 1\.1\d\d/);
  expect(out).toMatch(/forward slip −?\d+\.\d %/);
  expect(out).toMatch(/not accounted for −?\d\.\d\d %/);
  expect(out).toContain('no permission');
});

test('--json gives documented keys with units, sections of the bite only when asked for', () => {
  const record = JSON.parse(heard(flat, { json: true }).out);
  expect(record).toMatchObject({ kind: 'flow-pass', exit: { widthMm: expect.any(Number) } });
  expect(record.rolls[0]).toMatchObject({
    name: 'top',
    forceKn: expect.any(Number),
    torqueKnm: expect.any(Number),
  });
  expect(record.slices).toBeUndefined();
  const { slices } = JSON.parse(heard(flat, { json: true, slices: true }).out);
  expect(slices.length).toBeGreaterThan(12);
  expect(slices[0]).toMatchObject({ distanceMm: expect.any(Number), speedMPerS: expect.any(Number) });
});

test('--drawing draws the pass to scale', () => {
  const drawing = join(folder, 'flat.svg');
  const { notices } = heard(flat, { drawing });
  expect(notices).toContain(drawing);
  const svg = readFileSync(drawing, 'utf8');
  expect(svg).toContain('>48.0<');
  expect(svg).toContain('stroke-dasharray');
});

test('each model is told when the case belongs to the other', () => {
  expect(heard(handbook)).toMatchObject({
    code: exitCode.badInput,
    notices: expect.stringContaining('this is a station case (pass)'),
  });
  expect(heard(flat, { model: 'handbook' })).toMatchObject({
    code: exitCode.badInput,
    notices: expect.stringContaining('this case belongs to the metal-flow model; ask with --model flow'),
  });
  expect(heard(handbook, { model: 'handbook', slices: true }).notices).toContain('--slices belongs to');
});

test('a block of lead longer than the bar, or asked for in JSON, is refused', () => {
  expect(heard(flat, { lead: 2 })).toMatchObject({
    code: exitCode.badInput,
    notices: expect.stringContaining('--lead is 2; allowed: over 0 up to 1'),
  });
  expect(JSON.parse(heard(flat, { lead: 0.1, json: true }).out).issues[0].message).toContain('words only');
});

test('without a model it is the handbook’s pass', () => {
  const { code, out } = heard(handbook, { model: 'handbook', json: true });
  expect(code).toBe(exitCode.computed);
  expect(JSON.parse(out).kind).toBe('pass');
});

test('a pass without an answer says why, with exit code 3', () => {
  const file = join(folder, 'slippery.json');
  const rolls = [{ ...content.rolls[0], friction: 0.02 }];
  writeFileSync(file, JSON.stringify({ ...content, slices: 12, nodes: 150, rolls }));
  const { code, notices } = heard(file);
  expect(code).toBe(exitCode.noAnswer);
  expect(notices).toMatch(/^No answer: metal flow: /);
});
