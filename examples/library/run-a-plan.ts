// The whole line of a plan, stop by stop as each is finished; then the same plan with one gap moved.
import { readFileSync } from 'node:fs';
import { readPlan, runLine, runWholeLine } from '@bloomrail/engine';

const content = JSON.parse(readFileSync(new URL('../60e1-heavy-rail/plan.json', import.meta.url), 'utf8'));
const reading = readPlan(content);
if (!reading.ok) throw new Error(reading.issues.map(({ message }) => message).join('\n'));

const line = runLine(reading.plan);
let step = line.next();
for (; !step.done; step = line.next())
  console.log(step.value.code, step.value.record.leaving.length.toFixed(1), 'm');
if (!step.value.ok) throw new Error(step.value.failure.reason);

content.settings.passes[16].gapMm += 0.5;
const moved = readPlan(content);
if (!moved.ok) throw new Error('the moved gap is outside its limits');
const again = runWholeLine(moved.plan, step.value.value.memory);
if (again.ok)
  console.log(
    `taken over: ${again.value.reused} stops; computed again: ${again.value.visits.length - again.value.reused}`,
  );
