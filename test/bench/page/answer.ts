import type { Page } from 'playwright-core';
import { fullResult, openPage } from './page-under-test.ts';

/** Moves of the gap at passes early, in the middle and late on the line. */
const passes = ['B3', 'K2', 'U2', 'UF'];
const movesEach = 15;

/** What stopwatch.js notes in the page, ms. */
interface Stopwatch {
  readonly firstStation: number;
  readonly firstLine: number;
  readonly move: { readonly at: number };
  readonly answer: number;
  readonly line: number;
  readonly tasks: readonly { readonly startTime: number; readonly duration: number }[];
}

async function movesAt(page: Page, code: string) {
  await page.evaluate((to) => history.pushState(null, '', to), `/${code}`);
  const gap = page.getByRole('spinbutton', { name: 'Gap, horizontal rolls' });
  await gap.focus();
  const moves = [];
  for (let i = 0; i < movesEach; i++) {
    await gap.press('ArrowUp');
    await page.waitForFunction(() => (window as never as { stopwatch: Partial<Stopwatch> }).stopwatch.line);
    const { move, answer, line } = await noted(page);
    moves.push({ answer: answer - move.at, line: line - move.at });
    await page.waitForTimeout(100);
  }
  return moves;
}

const noted = (page: Page) => page.evaluate(() => (window as never as { stopwatch: Stopwatch }).stopwatch);

const longest = (tasks: Stopwatch['tasks']): number => Math.max(0, ...tasks.map(({ duration }) => duration));

function quantile(values: readonly number[], share: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.ceil(share * sorted.length) - 1].toFixed(0);
}

function print(
  cold: Stopwatch,
  moves: readonly { code: string; answer: number; line: number }[],
  [starting, moving]: readonly number[],
): void {
  const row = (name: string, of: typeof moves) => {
    const [answers, lines] = [of.map(({ answer }) => answer), of.map(({ line }) => line)];
    const cells = [answers, lines].flatMap((values) => [quantile(values, 0.5), quantile(values, 0.95)]);
    console.log(`| ${[name, of.length, ...cells].join(' | ')} |`);
  };
  console.log('| moved pass | moves | its force, median | 95 % | full line, median | 95 % |');
  console.log('| --- | --- | --- | --- | --- | --- |');
  for (const code of passes)
    row(
      code,
      moves.filter((move) => move.code === code),
    );
  row('all', moves);
  const task = (ms: number) => (ms ? `${ms.toFixed(0)} ms` : 'under 50 ms');
  console.log(
    `\nCold page: first computed station ${cold.firstStation.toFixed(0)} ms, full line ${cold.firstLine.toFixed(0)} ms.`,
  );
  console.log(
    `Longest task of the page's own thread: ${task(starting)} while starting, ${task(moving)} while moving.`,
  );
}

const { url, page, close } = await openPage();
try {
  await page.addInitScript({ path: new URL('stopwatch.js', import.meta.url).pathname });
  await page.goto(url);
  await fullResult(page);
  const cold = await noted(page);
  const moves = [];
  for (const code of passes) for (const move of await movesAt(page, code)) moves.push({ code, ...move });
  const { tasks } = await noted(page);
  const later = tasks.filter(({ startTime }) => startTime > cold.firstLine);
  print(cold, moves, [longest(cold.tasks), longest(later)]);
} finally {
  await close();
}
