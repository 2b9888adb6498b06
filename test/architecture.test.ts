import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const root = new URL('..', import.meta.url);

interface Cruise {
  readonly summary: {
    readonly error: number;
    readonly totalCruised: number;
    readonly violations: readonly Violation[];
  };
}
interface Violation {
  readonly from: string;
  readonly to: string;
  readonly rule: { readonly name: string };
}

const cruise = (...folders: string[]): Cruise => {
  const args = ['depcruise', '--config', '.dependency-cruiser.cjs', '--output-type', 'json', ...folders];
  return JSON.parse(execFileSync('npx', args, { cwd: root, encoding: 'utf8', maxBuffer: 1e9 }));
};

test('every room looks only at the rooms before it, and the check saw the whole house', () => {
  const { summary } = cruise('engine/src', 'sheets/src', 'cli/src', 'workbench/src');
  expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`)).toEqual([]);
  expect(summary.totalCruised).toBeGreaterThan(150);
});

test('the engine is compiled without DOM and without Node', () => {
  const { compilerOptions } = JSON.parse(readFileSync(new URL('engine/tsconfig.json', root), 'utf8'));
  expect(compilerOptions.lib).toEqual(['es2023']);
  expect(compilerOptions.types).toEqual([]);
});
