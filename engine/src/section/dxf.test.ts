import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../outcome/result.ts';
import { fromDxf } from './dxf.ts';
import { edgesOf, pointAt, radius } from './edges.ts';
import type { Outline } from './outline.ts';
import { outlineOf, profileNamed } from './profile-library.ts';
import { sectionProperties } from './properties.ts';
import { mirrored } from './transform.ts';

const profile = profileNamed('60E1');
if (!profile) throw new Error('60E1 is missing');
const rail = must(outlineOf(profile));

const pairs = (...values: readonly (string | number)[]) => values.join('\n');
const drawing = (entities: readonly string[], header = '') =>
  pairs(...(header ? [header] : []), 0, 'SECTION', 2, 'ENTITIES', ...entities, 0, 'ENDSEC', 0, 'EOF');
const line = (x: number, y: number, toX: number, toY: number) =>
  pairs(0, 'LINE', 8, '0', 10, x, 20, y, 11, toX, 21, toY);

/** The outline as one closed polyline, mm. */
const polyline = ({ vertices }: Outline) =>
  pairs(
    ...[0, 'LWPOLYLINE', 8, '0', 90, vertices.length, 70, 1],
    ...vertices.flatMap(({ x, y, bulge }) => [10, x * 1e3, 20, y * 1e3, 42, bulge]),
  );

/** The outline as lines and counter-clockwise arcs, mm. */
const pieces = (outline: Outline) =>
  edgesOf(outline).map((edge) => {
    const [from, to] = [pointAt(edge, 0), pointAt(edge, 1)].map(({ x, y }) => ({ x: x * 1e3, y: y * 1e3 }));
    if (edge.bulge === 0) return line(from.x, from.y, to.x, to.y);
    const [start, end] = edge.bulge > 0 ? [from, to] : [to, from];
    const left = (edge.half * (1 - edge.bulge ** 2)) / (2 * edge.bulge);
    const [cx, cy] = [(edge.mx - edge.uy * left) * 1e3, (edge.my + edge.ux * left) * 1e3];
    const angle = ({ x, y }: { x: number; y: number }) => (Math.atan2(y - cy, x - cx) * 180) / Math.PI;
    return pairs(0, 'ARC', 8, '0', 10, cx, 20, cy, 40, radius(edge) * 1e3, 50, angle(start), 51, angle(end));
  });

const problemsOf = (text: string) => {
  const result = fromDxf(text);
  return result.ok ? [] : result.failure.problems;
};

test('a rail drawn as one polyline with bulges comes back vertex for vertex', () => {
  const read = must(fromDxf(drawing([polyline(rail)])));
  read.vertices.forEach(({ x, y, bulge }, i) => {
    const { x: u, y: v, bulge: b } = rail.vertices[i];
    expect(Math.hypot(x - u, y - v)).toBeLessThan(1e-15);
    expect(bulge).toBe(b);
  });
});

test('a rail drawn as lines and arcs, in any order and direction, has the same properties', () => {
  const order = fc.shuffledSubarray(pieces(rail), { minLength: rail.vertices.length });
  fc.assert(
    fc.property(order, (shuffled) => {
      const own = sectionProperties(must(fromDxf(drawing(shuffled))));
      const exact = sectionProperties(rail);
      expect(own.area / exact.area).toBeCloseTo(1, 9);
      expect(own.ix / exact.ix).toBeCloseTo(1, 9);
    }),
    { numRuns: 20 },
  );
});

test('a clockwise drawing is turned round', () => {
  const clockwise = {
    vertices: mirrored(rail).vertices.map(({ x, y, bulge }) => ({ x: -x, y, bulge: -bulge })),
  };
  expect(sectionProperties(clockwise).area).toBeLessThan(0);
  expect(
    sectionProperties(must(fromDxf(drawing([polyline(clockwise)])))).area / sectionProperties(rail).area,
  ).toBeCloseTo(1, 12);
});

test('the drawing’s own unit counts: inches come in as 25.4 mm', () => {
  const header = pairs(0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 1, 0, 'ENDSEC');
  const square = [line(0, 0, 1, 0), line(1, 0, 1, 1), line(1, 1, 0, 1), line(0, 1, 0, 0)];
  expect(sectionProperties(must(fromDxf(drawing(square, header)))).area).toBeCloseTo(0.0254 ** 2, 15);
  expect(sectionProperties(must(fromDxf(drawing(square)))).area).toBeCloseTo(1e-6, 15);
});

test('ends that miss each other by less than the tolerance are joined, notes and Windows line ends passed over', () => {
  const note = pairs(0, 'MTEXT', 10, 5, 20, 5, 1, 'R13');
  const square = [line(0, 0, 10, 0), note, line(10, 0.005, 10, 10), line(10, 10, 0, 10), line(0, 10, 0, 0)];
  expect(must(fromDxf(drawing(square).replaceAll('\n', '\r\n'))).vertices).toHaveLength(4);
});

test('every problem of a drawing is listed, not only the first', () => {
  const problems = problemsOf(
    drawing([
      pairs(0, 'SPLINE', 70, 8),
      pairs(0, 'CIRCLE', 10, 0, 20, 0, 40, 3),
      pairs(0, 'LINE', 10, 1, 20, 2),
      line(0, 0, 10, 0),
      line(10, 1, 10, 10),
    ]),
  );
  expect(problems.filter((problem) => problem.includes('of a kind that is not read'))).toHaveLength(2);
  expect(
    problems.some((problem) => problem.startsWith('LINE at line') && problem.includes('lacks a number')),
  ).toBe(true);
  expect(problems.some((problem) => problem.includes('open between x 10.000, y 0.000'))).toBe(true);
  expect(problems.some((problem) => problem.includes('2 separate outlines'))).toBe(true);
});

test('forks, crossings, two outlines, and texts that are no drawing are named', () => {
  const square = [line(0, 0, 10, 0), line(10, 0, 10, 10), line(10, 10, 0, 10), line(0, 10, 0, 0)];
  expect(problemsOf(drawing([...square, line(10, 0, 20, 0)])).join()).toContain(
    'more than two ends meet at x 10.000, y 0.000',
  );
  const bow = [line(0, 0, 10, 10), line(10, 10, 10, 0), line(10, 0, 0, 10.5), line(0, 10.5, 0, 0)];
  expect(problemsOf(drawing(bow)).join()).toContain('crosses itself at x 5.1');
  expect(problemsOf('hello\nworld').join()).toContain('line 1 should be a group code');
  expect(problemsOf('').join()).toContain('no ENTITIES section');
  expect(problemsOf('AutoCAD Binary DXF\r\n').join()).toContain('save it as ASCII');
});

test('an arc that passes through zero degrees is read the right way round', () => {
  const moon = [pairs(0, 'ARC', 10, 0, 20, 0, 40, 10, 50, 270, 51, 90), line(0, 10, 0, -10)];
  expect(sectionProperties(must(fromDxf(drawing(moon)))).area).toBeCloseTo((Math.PI / 2) * 1e-4, 12);
});
