import { expect, test } from 'vitest';
import { heatColour, lineOnHeat } from './heat-scale.ts';

const table =
  '50 2A3135 100 2D3438 150 30373B 200 333A3F 250 373E42 300 3A4145 350 3D4449 400 40484C 450 514746 500 604643 550 7A453E 600 974230 650 B13D15 700 BE4601 750 C75401 800 CF6200 850 D77006 900 DF7D09 950 E88A01 1000 EE9913 1050 F0A938 1100 F2B853 1150 F5C769 1200 F8D57D 1250 FCE28E 1300 FFF0A7';
const rows = table
  .split(' ')
  .flatMap((word, i, words) => (i % 2 ? [] : [[Number(word), words[i + 1]] as const]));

const channels = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

test.each(rows)('steel at %i °C has the colour #%s of the printed scale', (celsius, hex) => {
  // One step of 255 is left for rounding of the printed table.
  const [got, wanted] = [channels(heatColour(celsius)), channels(`#${hex}`)];
  for (const i of [0, 1, 2]) expect(Math.abs(got[i] - wanted[i])).toBeLessThanOrEqual(1);
});

test('hotter steel is lighter on grey paper: never darker in 10 °C, lighter in every 50 °C', () => {
  const grey = (celsius: number) => {
    const [r, g, b] = channels(heatColour(celsius)).map((c) => (c / 255) ** 2.2);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  for (let t = 30; t <= 1300; t += 10) expect(grey(t), `${t} °C`).toBeGreaterThanOrEqual(grey(t - 10));
  for (let t = 70; t <= 1300; t += 10) expect(grey(t), `${t} °C`).toBeGreaterThan(grey(t - 50));
});

test('the scale ends at 20 and 1300 °C and never stretches', () => {
  expect(heatColour(-40)).toBe(heatColour(20));
  expect(heatColour(1500)).toBe(heatColour(1300));
});

test('lines stand dark on glowing steel and white on cold steel', () => {
  expect(lineOnHeat(1000)).toBe('#13201f');
  expect(lineOnHeat(300)).toBe('#ffffff');
});
