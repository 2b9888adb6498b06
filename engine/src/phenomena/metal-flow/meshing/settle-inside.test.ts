import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../../../outcome/result.ts';
import { quadCount } from '../quad-mesh.ts';
import { elementSine } from './element-shape.ts';
import { lyingRail } from './mesh-laws.fixture.ts';
import { quadMesh } from './quads.ts';
import { settleInside } from './settle-inside.ts';

const mesh = must(quadMesh(lyingRail('49E1'), { size: 0.014, symmetry: { y: 0 } }));
const size = 0.002;

test('no element of a mesh in disorder becomes sharper, unless it stays wide; the boundary stays', () => {
  const edge = new Set(mesh.loop);
  const offs = fc.array(fc.double({ min: -size, max: size, noNaN: true }), { minLength: 30, maxLength: 60 });
  fc.assert(
    fc.property(offs, (off) => {
      const before = Float64Array.from(mesh.xy, (place, i) =>
        edge.has(i >> 1) ? place : place + off[i % off.length],
      );
      const after = before.slice();
      settleInside(after, mesh.quads, mesh.loop);
      for (let k = 0; k < quadCount(mesh); k++) {
        const least = Math.min(0.6, elementSine(mesh.quads, before, k));
        expect(elementSine(mesh.quads, after, k)).toBeGreaterThanOrEqual(least);
      }
      for (const node of mesh.loop) expect(after[2 * node]).toBe(before[2 * node]);
    }),
    { numRuns: 30 },
  );
});
