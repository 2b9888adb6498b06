import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { exitCode } from '../exit-code.ts';
import { squares } from './squares.ts';

const example = fileURLToPath(new URL('../../../examples/60e1-by-metal-flow/plan.json', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'bloomrail-'));
afterAll(() => rmSync(folder, { recursive: true }));

function heard(file: string, out: string, side: number) {
  const [said, notices]: [string[], string[]] = [[], []];
  const code = squares(
    file,
    { out, side },
    { out: (text) => said.push(text), notice: (text) => notices.push(text), watched: false },
  );
  return { code, said: said.join('\n'), notices: notices.join('\n') };
}

test('one drawing a pass, and the cautions', () => {
  const content = JSON.parse(readFileSync(example, 'utf8'));
  content.settings.passes = content.settings.passes.slice(0, 2);
  content.settings.passModel = { model: 'flow', nodes: 80, slices: 6 };
  const [plan, out] = [join(folder, 'plan.json'), join(folder, 'drawings')];
  writeFileSync(plan, JSON.stringify(content));
  const { code, said } = heard(plan, out, 40);
  expect(code).toBe(exitCode.computed);
  expect(readdirSync(out).sort()).toEqual(['B1.svg', 'B2.svg']);
  expect(readFileSync(join(out, 'B2.svg'), 'utf8')).toContain('387.2');
  expect(said).toContain('no permission');
});

test('a side that is no side is refused, and nothing is written', () => {
  const out = join(folder, 'none');
  expect(heard(example, out, Number.NaN)).toMatchObject({ code: exitCode.badInput });
  expect(existsSync(out)).toBe(false);
});

test('what is wrong with the plan and with the side is said together', () => {
  const content = JSON.parse(readFileSync(example, 'utf8'));
  content.settings.rhythmS = -1;
  const wrong = join(folder, 'wrong.json');
  writeFileSync(wrong, JSON.stringify(content));
  const { code, notices } = heard(wrong, join(folder, 'none'), -1);
  expect(code).toBe(exitCode.badInput);
  expect(notices).toContain('square-side is -1 mm');
  expect(notices).toContain('rhythmS');
});
