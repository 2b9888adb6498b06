import type { Finding } from '../../../outcome/finding.ts';
import { print } from '../../../units/unit.ts';
import { highestBetween, leftOf, rightOf } from '../half-section/measure.ts';
import { heightAt, piecesOf } from '../half-section/pieces.ts';
import type { Prepared } from '../prepare.ts';
import { wallsOf } from './groove-fit.ts';

/** A bar may enter wider than its groove by this on each side: it is pressed together or finds its place. m. */
const toSpare = 1e-3;

/** Nearer than this the rolls count as touching, m. */
const apart = 2e-4;

/** What stands in the way of a bar before it is rolled: it does not fit its groove, or the rolls touch each other. */
export const fitFindings = (prepared: Prepared): Finding[] => [
  ...wideForWalls(prepared),
  ...wideForHeadRoll(prepared),
  ...touchingRolls(prepared),
];

function wideForWalls({ cavity, rolled: { entry }, groove, rolls }: Prepared): Finding[] {
  if (groove.family === 'flat' || rolls.footFace !== undefined) return [];
  const [left, right] = wallsOf(cavity);
  const past = { left: left - leftOf(entry), right: rightOf(entry) - right };
  return (['left', 'right'] as const)
    .filter((side) => past[side] > toSpare)
    .map((side) =>
      misfit(
        `The bar stands ${print(past[side], 'mm')} past the ${side} wall of groove ${groove.name} before the pass.`,
        past[side],
      ),
    );
}

function wideForHeadRoll({ cavity, rolled: { entry }, groove, rolls }: Prepared): Finding[] {
  if (cavity.webHeadEnd === undefined || rolls.headFace === undefined) return [];
  const half = cavity.mouth?.half ?? railHead(rolls.rail?.half.vertices ?? []);
  const past = highestBetween(entry, cavity.webHeadEnd, rightOf(entry)) - half;
  if (half === 0 || past <= toSpare) return [];
  const text = `The head is ${print(2 * past, 'mm')} wider than the head roll's groove of ${groove.name} before the pass.`;
  return [misfit(text, 2 * past)];
}

const railHead = (vertices: readonly { readonly x: number; readonly y: number }[]): number => {
  const middle = (vertices[0]?.x ?? 0) / 2 + (vertices[vertices.length - 1]?.x ?? 0) / 2;
  return vertices.reduce((most, { x, y }) => (x > middle ? Math.max(most, y) : most), 0);
};

const misfit = (text: string, value: number): Finding => ({
  level: 'outside',
  check: 'bar-fits',
  text,
  advice:
    'Take more draught on that side in the passes before, or lead the bar nearer to the middle of the groove.',
  value,
  limit: toSpare,
  unit: 'mm',
});

/** The horizontal rolls on the pass line, and vertical rolls inside the horizontal ones. */
function touchingRolls({ rolls: { rolls, top }, groove }: Prepared): Finding[] {
  const upper = piecesOf(top);
  const lowest = Math.min(...top.vertices.map(({ y }) => y));
  const inside = rolls
    .filter(({ idle, profile }) => idle && profile.vertices.some(({ x, y }) => within(x, y)))
    .map(({ name }) => `the ${name} touches the horizontal rolls`);
  const met = [...(lowest < apart ? ['the horizontal rolls touch each other'] : []), ...inside];
  return met.map((what) => ({
    level: 'outside',
    check: 'rolls-touch',
    text: `In groove ${groove.name} ${what}.`,
    advice: 'Open the gap, or move the vertical roll out.',
    setting: 'gapMm',
    stop: true,
  }));

  function within(x: number, y: number): boolean {
    const height = heightAt(upper, x);
    return height > 0 && y > height + apart;
  }
}
