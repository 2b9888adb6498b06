import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { fullResult, openPage } from './page-under-test.ts';

/** The pictures of docs/, from the example as it is computed now: npx tsx test/bench/page/pictures.ts */
const folder = fileURLToPath(new URL('../../../docs/', import.meta.url));

async function take(page: Page, name: string, station = ''): Promise<void> {
  await page.evaluate((to) => history.pushState(null, '', to), `/${station}`);
  if (station) await page.getByRole('heading', { level: 1, name: new RegExp(`^${station},`) }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(200);
  await page.screenshot({ path: `${folder}${name}.png` });
  console.log(`docs/${name}.png`);
}

const { url, page, close } = await openPage();
try {
  await page.goto(url);
  await fullResult(page);
  await take(page, 'line');
  await page.emulateMedia({ colorScheme: 'dark' });
  await take(page, 'line-dark');
  await page.emulateMedia({ colorScheme: 'light' });
  await take(page, 'pass', 'U2');
  await take(page, 'furnace', 'RF');
  await take(page, 'bed', 'CB');
  await take(page, 'straightener', 'ST');
} finally {
  await close();
}
