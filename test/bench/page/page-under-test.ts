import { existsSync, readFileSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { type Served, serveWorkbench } from '../../../workbench/serve.ts';

const executablePath = '/usr/bin/chromium';
const switches =
  '--headless --no-sandbox --disable-gpu --disable-background-networking --disable-component-update --disable-sync --no-first-run';

/** The page with the example of a heavy rail, in a browser of its own. */
export interface PageUnderTest {
  readonly url: string;
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly close: () => Promise<void>;
}

export async function openPage(): Promise<PageUnderTest> {
  if (!existsSync(executablePath))
    throw new Error(`no browser at ${executablePath}; install Debian's package chromium`);
  const plan = readFileSync(new URL('../../../examples/60e1-heavy-rail/plan.json', import.meta.url), 'utf8');
  const served: Served = await serveWorkbench(plan);
  const browser = await chromium.launch({ executablePath, args: switches.split(' ') });
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  const close = async () => {
    await browser.close();
    await served.close();
  };
  return { url: served.url, browser, context, page, close };
}

export const fullResult = (page: Page) =>
  page.waitForFunction(() => document.querySelector('.state')?.textContent?.startsWith('Full result'));
