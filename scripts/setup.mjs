// Makes a fresh clone ready: `npm start` and `npm test` call it first. Only what Node itself brings.
// Installs when the lock file, Node or the processor changed since the stamp in node_modules was written.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const stampFile = join(root, 'node_modules', '.bloomrail-setup');
const lock = join(root, '.cache-setup-lock');

const say = (text) => process.stderr.write(`setup: ${text}\n`);

function fingerprint() {
  const hash = createHash('sha256').update(readFileSync(join(root, 'package-lock.json')));
  return hash.update(process.version + process.platform + process.arch).digest('hex');
}

const isReady = () => existsSync(stampFile) && readFileSync(stampFile, 'utf8') === fingerprint();

/** The settings of the npm that called us would change what its child installs. */
function cleanEnvironment() {
  const kept = Object.entries(process.env).filter(([key]) => !/^(npm_|NODE_ENV$)/i.test(key));
  return Object.fromEntries(kept);
}

function run(command, args) {
  const done = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], env: cleanEnvironment() });
  return done.status === 0;
}

function installPackages() {
  say('installing packages, about half a minute');
  if (!run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'])) {
    say('npm ci did not finish; see above');
    process.exit(1);
  }
  writeFileSync(stampFile, fingerprint());
}

/** The page is tested in a real browser; where there is none, its tests say that they were left out. */
function installBrowser() {
  if (existsSync('/usr/bin/chromium')) return;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get')) {
    say('no browser for the page tests; on Debian: sudo apt-get install chromium');
    return;
  }
  say('installing chromium for the page tests');
  run('apt-get', ['update', '-qq']);
  if (!run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'])) {
    say('chromium could not be installed; the page tests will be left out');
  }
}

/** start and test may be called at the same moment on a fresh clone: one works, the other waits. */
async function holdingLock(work) {
  for (let waited = 0; ; waited++) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      if (waited === 0) say('another setup is running, waiting');
      if (isAbandoned()) rmSync(lock, { recursive: true, force: true });
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
  }
  try {
    work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function isAbandoned() {
  try {
    return Date.now() - statSync(lock).mtimeMs > 15 * 60_000;
  } catch {
    return false;
  }
}

const forTests = process.argv.includes('--for-tests');
if (!isReady() || (forTests && !existsSync('/usr/bin/chromium'))) {
  await holdingLock(() => {
    if (!isReady()) installPackages();
    if (forTests) installBrowser();
  });
}
