// Random passes of six kinds by metal flow: how many are answered, at what effort, and what is said of the others.
//     npx tsx test/studies/metal-flow/robustness.ts [count]
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { seededRandom } from '@bloomrail/engine/numerics/random';
import { drawnPass, passKinds } from '@bloomrail/engine/phenomena/metal-flow/random-passes.fixture';
import { rollPass } from '@bloomrail/engine/phenomena/metal-flow/roll-pass';
import { type Outcome, robustnessTable } from './robustness-table.ts';

const processes = 2;
const whole = Number(process.argv[2] ?? 800);
const share = process.argv[3];

/** Pass i is drawn from seed i. */
function outcomeOf(i: number): Outcome {
  const { kind, part, bite, says, problem } = drawnPass(passKinds[i % passKinds.length], seededRandom(i));
  const start = process.cpuUsage();
  const about = { seed: i, kind, part, bite, says };
  const seconds = () => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e6;
  };
  try {
    const result = rollPass(problem);
    if (!result.ok) return { ...about, seconds: seconds(), reason: result.failure.reason };
    const { energy, quality, rolls, elongation } = result.value;
    const figures = [energy.error, elongation, ...rolls.flatMap(({ force, torque }) => [force, torque])];
    const { restarts, rejected, volumeDrift } = quality;
    const finite = figures.every(Number.isFinite);
    return { ...about, seconds: seconds(), energy: energy.error, restarts, rejected, volumeDrift, finite };
  } catch (cause) {
    return { ...about, seconds: seconds(), crash: String(cause) };
  }
}

/** Two processes take turns; the table so far is written by and by, so that a study broken off leaves what it found. */
function shared(): Promise<unknown> {
  const outcomes: Outcome[] = [];
  const take = (outcome: Outcome) => {
    outcomes.push(outcome);
    if (outcomes.length % 20 === 0 || outcomes.length === whole) write(outcomes);
  };
  return Promise.all(Array.from({ length: processes }, (_, k) => helper(k, take)));
}

/** A process of its own for every `processes`-th pass from pass k on; settles when it ends. */
function helper(k: number, take: (outcome: Outcome) => void): Promise<unknown> {
  const forked = fork(fileURLToPath(import.meta.url), [String(whole), String(k)]);
  forked.on('message', take);
  return new Promise((ended) => forked.on('exit', ended));
}

function write(outcomes: readonly Outcome[]): void {
  const file = fileURLToPath(new URL('./robustness.md', import.meta.url));
  writeFileSync(file, robustnessTable(outcomes, whole));
  console.log(`${outcomes.length} of ${whole}`);
}

if (share === undefined) await shared();
else for (let i = Number(share); i < whole; i += processes) process.send?.(outcomeOf(i));
