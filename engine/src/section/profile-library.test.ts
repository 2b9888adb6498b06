import { expect, test } from 'vitest';
import { z } from 'zod';
import { must } from '../outcome/result.ts';
import { centre, edgesOf, pointAt, radius } from './edges.ts';
import { turnAtJoint } from './joints.ts';
import { Profile } from './profile/profile.ts';
import { outlineOf, profileNamed, profileNames } from './profile-library.ts';
import { sectionModuli, sectionProperties } from './properties.ts';
import { selfCrossing } from './self-crossing.ts';
import { mirrored } from './transform.ts';

const named = (name: string): Profile => {
  const profile = profileNamed(name);
  if (!profile) throw new Error(`${name} is missing`);
  return profile;
};

function computed(name: string) {
  const properties = sectionProperties(must(outlineOf(named(name))));
  const { top, bottom, lateral } = sectionModuli(properties);
  return {
    area: properties.area,
    mass: properties.area * 7850,
    centroidAboveFoot: properties.centroid.y,
    inertiaX: properties.ix,
    inertiaY: properties.iy,
    modulusHead: top,
    modulusFoot: bottom,
    modulusLateral: lateral,
  };
}

/**
 * Accepted differences from the published values, in 0.01 %; may only fall. 60E1 is a proof of a complete set of
 * dimensions. Where a dimension was fitted to the area, the area proves nothing and the moments are the check. R50's
 * lateral modulus from memory (55 cm³) contradicts its own second moment over half the foot width (56.8 cm³).
 */
const accepted: Record<string, Partial<Record<keyof ReturnType<typeof computed>, number>>> = {
  '60E1': {
    area: 0.5,
    mass: 0.5,
    centroidAboveFoot: 0.6,
    inertiaX: 0.3,
    inertiaY: 0.1,
    modulusHead: 0.3,
    modulusFoot: 1.5,
    modulusLateral: 21.7,
  },
  '54E1': {
    area: 0.2,
    mass: 0.3,
    centroidAboveFoot: 3.5,
    inertiaX: 0.6,
    inertiaY: 3.6,
    modulusHead: 1,
    modulusFoot: 0.5,
    modulusLateral: 32.8,
  },
  '49E1': {
    area: 0.5,
    mass: 0.2,
    inertiaX: 2.9,
    inertiaY: 0.7,
    modulusHead: 0.3,
    modulusFoot: 1.9,
    modulusLateral: 10.4,
  },
  R50: {
    area: 4.5,
    inertiaX: 40.3,
    inertiaY: 1.4,
    modulusHead: 38.9,
    modulusFoot: 38.9,
    modulusLateral: 332,
  },
  R75: {
    area: 40.3,
    inertiaX: 9.6,
    inertiaY: 27.3,
    modulusHead: 15.1,
    modulusFoot: 24.8,
    modulusLateral: 10.5,
  },
  '115RE': {
    area: 2.1,
    centroidAboveFoot: 2.5,
    inertiaX: 15.5,
    inertiaY: 10.7,
    modulusHead: 2.9,
    modulusFoot: 15.1,
    modulusLateral: 8.4,
  },
  '119RE': {
    area: 2,
    centroidAboveFoot: 6.7,
    inertiaX: 30.8,
    inertiaY: 42.3,
    modulusHead: 42.1,
    modulusFoot: 19.2,
    modulusLateral: 9.8,
  },
  '132RE': {
    area: 1.3,
    centroidAboveFoot: 20.9,
    inertiaX: 26.7,
    inertiaY: 7.5,
    modulusHead: 41.5,
    modulusFoot: 31,
  },
  '136RE': {
    area: 5.8,
    centroidAboveFoot: 6.5,
    inertiaX: 1.3,
    inertiaY: 24.6,
    modulusHead: 14.1,
    modulusFoot: 15.3,
  },
  '136RE-8': { area: 1 },
  A75: { area: 5.9, mass: 7, inertiaX: 65.4, inertiaY: 8 },
  A100: { area: 33.1, mass: 38.4, inertiaX: 158.7, inertiaY: 16.3 },
  A120: { area: 42.1, mass: 43, inertiaX: 155, inertiaY: 17.6 },
};

for (const name of profileNames) {
  const rows = named(name).published;
  if (!accepted[name]) continue;
  test(`${name} has its published properties within the accepted differences`, () => {
    const own = computed(name);
    for (const row of rows) {
      for (const key of Object.keys(own) as (keyof typeof own)[]) {
        const value = row[key];
        if (value === undefined) continue;
        const difference = 1e4 * Math.abs(own[key] / value - 1);
        expect.soft(difference, `${key} against ${row.source}`).toBeLessThan(accepted[name][key] ?? 0);
      }
    }
  });
}

test('60E1: area within 0.01 %, moments and moduli within 0.03 % of the table; 0.01 % and 0.22 % on the two lateral moduli', () => {
  const { area, inertiaX, inertiaY, modulusHead, modulusFoot, modulusLateral } = computed('60E1');
  expect(Math.abs(area / 76.7e-4 - 1)).toBeLessThan(1e-4);
  expect(Math.abs(inertiaX / 3038.3e-8 - 1)).toBeLessThan(3e-4);
  expect(Math.abs(inertiaY / 512.3e-8 - 1)).toBeLessThan(3e-4);
  expect(Math.abs(modulusHead / 333.6e-6 - 1)).toBeLessThan(3e-4);
  expect(Math.abs(modulusFoot / 375.5e-6 - 1)).toBeLessThan(3e-4);
  expect(modulusLateral / 68.3e-6 - 1).toBeCloseTo(0.0001, 4);
  expect(modulusLateral / 68.16e-6 - 1).toBeCloseTo(0.0022, 4);
});

test('the crane rails come out at most half a percent heavy, as the doubt about their small radii allows', () => {
  for (const name of ['A75', 'A100', 'A120']) {
    const { area } = computed(name);
    const published = named(name).published[0].area ?? Number.NaN;
    expect(area / published - 1).toBeGreaterThan(0);
    expect(area / published - 1).toBeLessThan(0.005);
  }
});

test('the AREMA foot areas, cut along the fishing lines, agree with the published partition', () => {
  // 1:4 lines through F on the axis; 4.2947 and 4.8701 in² are printed for 115RE and 132RE.
  for (const [name, base] of [
    ['115RE', 4.2947],
    ['132RE', 4.8701],
  ] as const) {
    const profile = named(name);
    if (profile.family !== 'flat-bottom') throw new Error('no rail');
    const { footWidth: b, footDepth: f, toeUpperRadius: upper, toeLowerRadius: lower } = profile.dimensions;
    const turn = Math.PI / 2 - Math.atan(1 / 4);
    const rounding = 2 * upper ** 2 * (Math.tan(turn / 2) - turn / 2) + 2 * lower ** 2 * (1 - Math.PI / 4);
    const area = (b * (f + f - b / 8)) / 2 - rounding;
    expect(area / 0.0254 ** 2 / base).toBeCloseTo(1, 3);
  }
});

for (const name of profileNames) {
  const profile = named(name);
  const outline = must(outlineOf(profile));
  const edges = edgesOf(outline);

  test(`${name} closes without a gap or a crossing, and is its own mirror image`, () => {
    edges.forEach((edge, i) => {
      const [end, next] = [pointAt(edge, 1), outline.vertices[(i + 1) % edges.length]];
      expect(Math.hypot(end.x - next.x, end.y - next.y)).toBeLessThan(1e-15);
    });
    expect(selfCrossing(outline)).toBeUndefined();
    const image = mirrored(outline).vertices.map(({ x, y, bulge }) => [x, y, bulge + 0]);
    for (const { x, y, bulge } of outline.vertices) {
      expect(image.some(([u, v, b]) => Math.hypot(u - x, v - y) < 1e-15 && Math.abs(b - bulge) < 1e-14)).toBe(
        true,
      );
    }
  });

  test(`${name} has no kink${profile.family === 'crane' ? ' but its square edges and the step of the foot' : ''}`, () => {
    const kinks = edges.filter(
      (edge, i) => Math.abs(turnAtJoint(edges[(i + edges.length - 1) % edges.length], edge)) > 1e-10,
    );
    expect(kinks).toHaveLength(profile.family === 'crane' ? 4 : 0);
  });

  test(`${name} is written back as it was read`, () => {
    expect(Profile.parse(z.encode(Profile, profile))).toEqual(profile);
  });
}

test('every dimension of a library profile says where it comes from', () => {
  for (const name of profileNames) {
    const { dimensions, origins } = named(name);
    const keys = Object.entries(dimensions).flatMap(([key, value]) =>
      key === 'crown' && Array.isArray(value)
        ? value.flatMap((arc: object, i) => Object.keys(arc).map((part) => `crown.${i}.${part}`))
        : [key],
    );
    expect(Object.keys(origins).sort()).toEqual(keys.sort());
  }
});

test('60E1 shows its drawing’s radii: 300, 80 and 13 on the crown, 120 on the web', () => {
  const edges = edgesOf(must(outlineOf(named('60E1'))));
  const radii = edges.filter(({ bulge }) => bulge !== 0).map((edge) => Math.round(radius(edge) * 1e6) / 1e3);
  for (const each of [300, 80, 13, 3, 7, 35, 120, 40, 4, 2]) expect(radii).toContain(each);
  const crown = edges.find((edge) => Math.abs(radius(edge) - 0.3) < 1e-9);
  expect(crown && centre(crown).y).toBeCloseTo(0.172 - 0.3, 14);
});
