import { existsSync, readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Served, serveWorkbench } from '../../workbench/serve.ts';

const executablePath = '/usr/bin/chromium';
const without = existsSync(executablePath)
  ? undefined
  : `no browser at ${executablePath}; install Debian's package chromium`;
const plan = readFileSync(new URL('../../examples/60e1-heavy-rail/plan.json', import.meta.url), 'utf8');
const patience = 120_000;
const switches =
  '--headless --no-sandbox --disable-gpu --disable-background-networking --disable-component-update --disable-sync --no-first-run';

let served: Served;
let browser: Browser;
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  if (without) return;
  served = await serveWorkbench(plan);
  browser = await chromium.launch({ executablePath, args: switches.split(' ') });
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  page = await context.newPage();
  page.setDefaultTimeout(patience);
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(served.url);
  await fullResult();
}, patience);

afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const fullResult = () =>
  page.waitForFunction(() => document.querySelector('.state')?.textContent?.startsWith('Full result'));

async function expectAccessible(): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
}

const name = (words: string) => (without ? `${words} (skipped: ${without})` : words);

test.skipIf(without)(
  name('the page shows the whole line, from the furnace to the bundles'),
  async () => {
    expect(await page.title()).toBe('bloomrail');
    const stations = await page.getByRole('navigation').getByRole('link').count();
    expect(stations).toBe(JSON.parse(plan).settings.passes.length + 6);
    await expectAccessible();
  },
  patience,
);

test.skipIf(without)(
  name('a pass is opened by keyboard and shows its gap and its loads'),
  async () => {
    await page.getByRole('link', { name: /^U2,/ }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^U2/ }).waitFor();
    expect(await page.getByRole('slider', { name: 'Gap, horizontal rolls' }).count()).toBe(1);
    await expectAccessible();
  },
  patience,
);

test.skipIf(without)(
  name('a wider gap lowers the force, says what it was, and can be taken back'),
  async () => {
    const gap = page.getByRole('spinbutton', { name: 'Gap, horizontal rolls' });
    const force = () => page.getByRole('row', { name: /^Force, horizontal rolls/ }).locator('.value');
    const before = await force().textContent();
    await gap.fill('23.6');
    await gap.press('Enter');
    await page.getByText('was 22.314').waitFor();
    await fullResult();
    const after = await force().textContent();
    expect(number(after)).toBeLessThan(number(before));
    await page.getByRole('region', { name: 'Downstream of the move' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await fullResult();
    expect(await force().textContent()).toBe(before);
  },
  patience,
);

test.skipIf(without)(
  name('a value that does not fit is explained at its field and never computed'),
  async () => {
    const gap = page.getByRole('spinbutton', { name: 'Gap, horizontal rolls' });
    await gap.fill('900');
    expect(await page.getByRole('alert').textContent()).toBe('At most 700 mm.');
    await gap.press('Escape');
    expect(await gap.inputValue()).not.toBe('900');
  },
  patience,
);

test.skipIf(without)(
  name('arrow keys travel along the line and every station is accessible'),
  async () => {
    await page.locator('h1').click();
    await page.keyboard.press('Home');
    for (const code of ['RF', 'DS']) {
      await page.getByRole('heading', { level: 1, name: new RegExp(`^${code},`) }).waitFor();
      await expectAccessible();
      await page.keyboard.press('ArrowRight');
    }
    await page.keyboard.press('End');
    for (const code of ['CT', 'ST', 'CB', 'HS']) {
      await page.getByRole('heading', { level: 1, name: new RegExp(`^${code},`) }).waitFor();
      await expectAccessible();
      await page.keyboard.press('ArrowLeft');
    }
  },
  patience,
);

test.skipIf(without)(name('the browser had nothing to complain about'), () => {
  expect(complaints).toEqual([]);
});

/** '≈ 5 180' as a number. */
const number = (text: string | null): number => Number((text ?? '').replace(/[^\d.]/g, ''));
