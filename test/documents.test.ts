import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const documents = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '*.md'], {
  cwd: root,
  encoding: 'utf8',
})
  .trim()
  .split('\n')
  .map((file) => join(root, file));
const scripts = Object.keys(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).scripts);

test('the house has its documents', () => {
  for (const name of ['README.md', 'ARCHITECTURE.md', 'CONTRIBUTING.md', 'CHANGELOG.md'])
    expect(documents).toContain(join(root, name));
});

test.each(documents.map((file) => [relative(root, file), file]))('links of %s lead somewhere', (_, file) => {
  const links = [...readFileSync(file, 'utf8').matchAll(/\]\(([^)#\s]+)(#[^)]*)?\)/g)].map(
    (match) => match[1],
  );
  const broken = links.filter((link) => !/^https?:/.test(link) && !existsSync(join(dirname(file), link)));
  expect(broken).toEqual([]);
});

test.each(documents.map((file) => [relative(root, file), file]))(
  'npm commands named in %s exist',
  (_, file) => {
    const named = [...readFileSync(file, 'utf8').matchAll(/`npm (?:run )?([a-z:-]+)/g)].map(
      (match) => match[1],
    );
    expect(named.filter((name) => !scripts.includes(name) && !['ci', 'install'].includes(name))).toEqual([]);
  },
);
