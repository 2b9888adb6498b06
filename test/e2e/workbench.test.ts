import { existsSync, readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
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
  page = await watchedPage(context);
  await page.goto(served.url);
  await fullResult();
}, patience);

async function watchedPage(context: BrowserContext): Promise<Page> {
  const opened = await context.newPage();
  opened.setDefaultTimeout(patience);
  opened.on('pageerror', (error) => complaints.push(String(error)));
  opened.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return opened;
}

/** The page as somebody meets it who was never here before. */
async function freshPage(address = ''): Promise<Page> {
  const fresh = await watchedPage(await browser.newContext({ viewport: { width: 1440, height: 900 } }));
  await fresh.goto(served.url + address);
  await fullResult(fresh);
  return fresh;
}

afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const fullResult = (on = page) =>
  on.waitForFunction(() => document.querySelector('.state')?.textContent?.startsWith('Full result'));

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

test.skipIf(without)(
  name('on a fresh page, nothing held, arrows choose a station and Enter opens it'),
  async () => {
    const fresh = await freshPage();
    await fresh.keyboard.press('ArrowRight');
    await fresh.keyboard.press('ArrowRight');
    await fresh.keyboard.press('Enter');
    await fresh.getByRole('heading', { level: 1, name: /^DS,/ }).waitFor();
    await fresh.keyboard.press('Escape');
    await fresh.keyboard.press('End');
    await fresh.keyboard.press('Enter');
    await fresh.getByRole('heading', { level: 1, name: /^CT,/ }).waitFor();
    await fresh.keyboard.press('Home');
    await fresh.getByRole('heading', { level: 1, name: /^RF,/ }).waitFor();
    await fresh.keyboard.press('n');
    await fresh.waitForFunction(() => !location.pathname.endsWith('/RF'));
    await fresh.close();
  },
  patience,
);

test.skipIf(without)(
  name('letters lead to the blocks of a station, show its table, and can be switched off'),
  async () => {
    const fresh = await freshPage('U2');
    const held = () =>
      fresh.evaluate(() => document.activeElement?.closest('section')?.querySelector('h2')?.textContent);
    await fresh.keyboard.press('l');
    expect(await held()).toContain('Against limits');
    await fresh.keyboard.press('f');
    expect(await held()).toContain('Findings');
    await fresh.keyboard.press('2');
    await fresh.getByRole('button', { name: 'Table', pressed: true }).waitFor();
    await fresh.keyboard.press('1');
    await fresh.getByRole('button', { name: 'Drawing', pressed: true }).waitFor();
    await fresh.keyboard.press('?');
    await fresh.getByRole('checkbox').uncheck();
    await fresh.getByRole('button', { name: 'Close' }).click();
    await fresh.reload();
    await fresh.getByRole('heading', { level: 1, name: /^U2/ }).waitFor();
    await fresh.keyboard.press('t');
    expect(await fresh.getByRole('button', { name: 'Table', pressed: true }).count()).toBe(0);
    await fresh.close();
  },
  patience,
);

test.skipIf(without)(
  name('a move outlasts the page, b shows the state before it, and one step leads back to the served plan'),
  async () => {
    const fresh = await freshPage('U2');
    const gap = fresh.getByRole('spinbutton', { name: 'Gap, horizontal rolls' });
    const served = await gap.inputValue();
    await gap.fill('23.1');
    await gap.press('Enter');
    await fullResult(fresh);
    await fresh.locator('h1').click();
    await gap.evaluate((field) => field.blur());
    await fresh.keyboard.down('b');
    expect(await gap.inputValue()).toBe(served);
    await fresh.keyboard.up('b');
    expect(await gap.inputValue()).toBe('23.1');
    await fresh.reload();
    await fullResult(fresh);
    expect(await gap.inputValue()).toBe('23.1');
    await fresh.getByRole('button', { name: 'Back to the plan as served, 1 move' }).click();
    expect(await gap.inputValue()).toBe(served);
    await fresh.close();
  },
  patience,
);

test.skipIf(without)(
  name('where a model has no answer the stations before it stand and the page says why'),
  async () => {
    const fresh = await freshPage('CB');
    const type = async (name: string, value: string) => {
      const field = fresh.getByRole('spinbutton', { name });
      await field.fill(value);
      await field.press('Enter');
    };
    await type('Leaves the bed when the hottest point is below', '40');
    await type('Air in the bay', '60');
    const note = fresh.locator('.state-note');
    await note.waitFor();
    expect(await note.textContent()).toMatch(/^CB: .*Stations before it stand/);
    await fresh.locator('h1').click();
    await fresh
      .locator('input:focus')
      .evaluateAll((held) => held.map((field) => (field as HTMLElement).blur()));
    await fresh.keyboard.press('Escape');
    await fresh.getByRole('link', { name: /^HS,.* mean/ }).waitFor();
    await fresh.getByRole('link', { name: /^CB,.*no answer here/ }).waitFor();
    expect(await fresh.locator('.stops svg').count()).toBe(1);
    await fresh.close();
  },
  patience,
);

test.skipIf(without)(name('the browser had nothing to complain about'), () => {
  expect(complaints).toEqual([]);
});

/** '≈ 5 180' as a number. */
const number = (text: string | null): number => Number((text ?? '').replace(/[^\d.]/g, ''));
