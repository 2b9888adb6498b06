// `npm start`: the main job on the example, then the workbench.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { run } from './commands/run.ts';
import { serve } from './commands/serve.ts';
import { exitCode } from './exit-code.ts';
import { processOutput } from './print/output.ts';

const example = fileURLToPath(new URL('../../examples/60e1-heavy-rail/plan.json', import.meta.url));

const { name, about } = JSON.parse(readFileSync(example, 'utf8'));
processOutput.out(`${name}\n${about}\n`);

const code = run(example, { json: false, strict: false }, processOutput);
process.exitCode = code === exitCode.computed ? await serve(example, 4173, processOutput) : code;
