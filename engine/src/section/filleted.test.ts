import { expect, test } from 'vitest';
import { edgesOf, edgesOfPath, radius } from './edges.ts';
import { filleted, filletThatDoesNotFit } from './filleted.ts';
import { turnAtJoint } from './joints.ts';
import { sectionProperties } from './properties.ts';
import { circle, rectangle } from './rectangle.ts';

const corners = [
  { x: 0, y: 0, radius: 0.01 },
  { x: 0.1, y: 0.02, radius: 0.02 },
  { x: 0.04, y: 0.05, radius: 0.005 },
  { x: 0.02, y: 0.12, radius: 0.008 },
];

test('every fillet has its radius and runs into its lines without a kink', () => {
  const edges = edgesOf({ vertices: filleted(corners, true) });
  const radii = edges.filter(({ bulge }) => bulge !== 0).map(radius);
  for (let i = 0; i < 4; i++) expect(radii[i]).toBeCloseTo(corners[i].radius, 14);
  for (let i = 0; i < 8; i++) expect(turnAtJoint(edges[(i + 7) % 8], edges[i])).toBeCloseTo(0, 12);
});

test('the ends of an open chain stay sharp', () => {
  const vertices = filleted(corners, false);
  expect(vertices).toHaveLength(6);
  expect(vertices[0]).toEqual({ x: 0, y: 0, bulge: 0 });
  expect(edgesOfPath({ vertices })).toHaveLength(5);
});

test('a fillet that reaches past its neighbour is named', () => {
  expect(filletThatDoesNotFit(corners, true)).toBeUndefined();
  for (const large of [0, 1, 2, 3]) {
    const tooLarge = corners.map((corner, i) => (i === large ? { ...corner, radius: 0.2 } : corner));
    expect(filletThatDoesNotFit(tooLarge, true)).toBe(large);
  }
});

test('a square whose corners are rounded with half its side is a circle', () => {
  const [round, ball] = [sectionProperties(rectangle(0.1, 0.1, 0.05)), sectionProperties(circle(0.05))];
  expect(rectangle(0.1, 0.1, 0.05).vertices).toHaveLength(4);
  expect(round.area / ball.area).toBeCloseTo(1, 14);
  expect(round.perimeter / ball.perimeter).toBeCloseTo(1, 14);
});
