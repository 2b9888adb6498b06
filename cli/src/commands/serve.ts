import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { readPlan } from '@bloomrail/engine/line/read-plan';
import { serveWorkbench } from '@bloomrail/workbench/serve';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { type Output, refuseInput } from '../print/output.ts';
import { readJson } from '../read-json.ts';

const example = fileURLToPath(new URL('../../../examples/60e1-heavy-rail/plan.json', import.meta.url));

/** `bloomrail serve [PLAN]`: the workbench on this machine only, until it is stopped. */
export async function serve(file: string | undefined, port: number, output: Output): Promise<ExitCode> {
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    const message = `--port is ${port}; allowed: a whole number from 0 to 65535`;
    return refuseInput(output, [{ path: '--port', value: port, limit: '0 to 65535', message }], false);
  }
  const content = readJson(file ?? example);
  if (!content.ok) return refuseInput(output, content.issues, false);
  const reading = readPlan(content.value);
  // A plan with issues is served all the same: the page shows them in place, where they can be mended.
  if (!reading.ok) output.notice(`${reading.issues.length} entries to mend; the page shows them.`);
  output.notice('Making the page ready …');
  const served = await serveOn(port, JSON.stringify(content.value), output);
  output.out(`\nWorkbench: ${served.url}   (Ctrl C ends it)`);
  if (output.watched) openBrowser(served.url);
  return exitCode.computed;
}

/** The wanted port, or a free one where it is taken. */
async function serveOn(port: number, plan: string, output: Output) {
  try {
    return await serveWorkbench(plan, port);
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw cause;
    output.notice(`Port ${port} is taken; another one is used.`);
    return serveWorkbench(plan, 0);
  }
}

/** Where there is a desktop; elsewhere the address is enough. */
function openBrowser(url: string): void {
  const opener = { darwin: 'open', win32: 'explorer' }[process.platform as string] ?? 'xdg-open';
  const child = spawn(opener, [url], { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}
