import { rectangle } from '@bloomrail/engine/section/rectangle';
import { moved } from '@bloomrail/engine/section/transform';
import { expect, test } from 'vitest';
import { graduatedFrame } from './graduated-frame.ts';
import { sectionDrawing } from './section-drawing.ts';
import { pathOf, svgOf } from './svg.ts';

const bloom = moved(rectangle(0.1, 0.08, 0.01), 0, 0.04);

test('arcs of an outline stay arcs of their radius', () => {
  const path = pathOf(bloom, (y) => 100 - y);
  expect(path.match(/A10 10 0 0 0 /g)).toHaveLength(4);
  expect(path.match(/L/g)).toHaveLength(4);
});

test('bars of a graduated frame are as long as they say, counted from the zero', () => {
  const frame = graduatedFrame({
    left: 0,
    bottom: 0,
    width: 100,
    height: 50,
    bar: 10,
    zero: { x: 40, y: 20 },
  });
  const lower = frame.filter((item) => item.kind === 'bar' && item.at.y === 0 && item.height < 2);
  expect(lower.map((item) => item.kind === 'bar' && [item.at.x, item.width])).toEqual([
    [0, 10],
    [20, 10],
    [40, 10],
    [60, 10],
    [80, 10],
  ]);
});

test('a section drawing states its dimensions, its scale and the cautions', () => {
  const svg = svgOf(sectionDrawing('Bloom <1>', bloom, [{ name: 'Area', value: '79.1 cm²' }]));
  for (const text of ['>100.0<', '>80.0<', '1 : 1', 'Bloom &lt;1&gt;', 'no permission', '79.1 cm²'])
    expect(svg).toContain(text);
});
