import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const readme = readFileSync(`${root}engine/README.md`, 'utf8');
const run = (file: string): string =>
  execFileSync('npx', ['tsx', `examples/library/${file}`], { cwd: root, encoding: 'utf8' });

test.each(readdirSync(`${root}examples/library`))('the README shows %s as it is', (file) => {
  expect(readme).toContain(`\`\`\`ts\n${readFileSync(`${root}examples/library/${file}`, 'utf8')}\`\`\``);
});

test('a program can ask for the section of a rail', () => {
  expect(run('section-of-a-rail.ts')).toMatch(
    /area 76\.\d\d cm², Ix 303\d\.\d cm⁴, axis 80\.\d mm above the foot/,
  );
});

test('a program can run a plan and move a gap', () => {
  expect(run('run-a-plan.ts')).toMatch(
    /^RF .* m\n[\s\S]*CT .* m\ntaken over: 18 stops; computed again: \d+\n$/,
  );
});

test('a program can compute one pass', () => {
  expect(run('one-pass.ts')).toMatch(/: \d+ kN\n/);
});
