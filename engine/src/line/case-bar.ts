import { z } from 'zod';
import type { Bar, ColdState } from '../bar/bar.ts';
import { fail, ok, type Result } from '../outcome/result.ts';
import { nodeCount } from '../section/mesh.ts';
import type { Outline } from '../section/outline.ts';
import { OutlineFile } from '../section/outline-file.ts';
import { outlineOf, profileNamed } from '../section/profile-library.ts';
import { sectionProperties } from '../section/properties.ts';
import { rectangle } from '../section/rectangle.ts';
import { scaled, turned } from '../section/transform.ts';
import { triangulate } from '../section/triangulate.ts';
import { density, hotFactor } from '../steel/expansion.ts';
import { gradeNamed } from '../steel/grades.ts';
import { choice, group, quantity } from '../units/group.ts';

const CaseSection = choice('shape', [
  group({
    shape: z.literal('rectangle'),
    width: quantity('mm', 'Width, along the rolls', 10, 1000),
    height: quantity('mm', 'Height, across the gap', 10, 1000),
    cornerRadius: quantity('mm', 'Corner radius', 0, 200),
  }),
  group({
    shape: z.literal('profile'),
    profile: z.string().meta({ title: 'Profile of the library' }),
    pose: z
      .enum(['upright', 'lying'])
      .meta({ title: 'Standing on its foot, or web flat with the foot at x = 0' }),
  }),
  group({ shape: z.literal('outline'), rows: OutlineFile }),
]);

/** A bar for a case that looks at one station alone: uniform temperature, nothing remembered of what came before. */
export const CaseBar = group({
  grade: z.string().meta({ title: 'Steel grade of the library' }),
  section: CaseSection,
  dimensions: z
    .enum(['hot', 'cold'])
    .meta({ title: 'The section is given as it is now, or as it is at 20 °C' }),
  length: quantity('m', 'Length as it is now', 0.5, 300),
  temperature: quantity('C', 'Temperature', -20, 1350),
});
export type CaseBar = z.output<typeof CaseBar>;

/** The bar of a case. Fails when a name is unknown or the section cannot be meshed. */
export function barOf(given: CaseBar): Result<Bar> {
  const grade = gradeNamed(given.grade);
  if (!grade) return fail({ model: 'case', reason: `grade ${given.grade} is not in the library` });
  const drawn = outlineOfCase(given.section);
  if (!drawn.ok) return drawn;
  const growth = given.dimensions === 'cold' ? hotFactor(grade, given.temperature) : 1;
  const outline = scaled(drawn.value, growth);
  const { area } = sectionProperties(outline);
  const mesh = triangulate(outline, { size: Math.sqrt(area / CASE_ELEMENTS) });
  if (!mesh.ok) return mesh;
  const place = { clock: 0, temperature: new Float64Array(nodeCount(mesh.value)).fill(given.temperature) };
  return ok({
    grade,
    outline,
    mesh: mesh.value,
    head: place,
    middle: place,
    tail: place,
    mass: density(given.temperature, grade) * area * given.length,
    length: given.length,
    pieces: [given.length],
    elongation: 1,
    decarburised: 0,
  });
}

/** The same bar as it would come from the bed: bent, all pearlite, free of stress. */
export function coldBarOf(given: CaseBar, heightCurvature: number, sideCurvature: number): Result<Bar> {
  const bar = barOf(given);
  if (!bar.ok) return bar;
  const nodes = nodeCount(bar.value.mesh);
  const cold: ColdState = {
    heightCurvature,
    sideCurvature,
    stress: new Float64Array(nodes),
    pearlite: new Float64Array(nodes).fill(1),
  };
  return ok({ ...bar.value, cold });
}

function outlineOfCase(section: CaseBar['section']): Result<Outline> {
  if (section.shape === 'rectangle')
    return ok(rectangle(section.width, section.height, section.cornerRadius));
  if (section.shape === 'outline') return ok(section.rows);
  const profile = profileNamed(section.profile);
  if (!profile) return fail({ model: 'case', reason: `profile ${section.profile} is not in the library` });
  const upright = outlineOf(profile);
  if (!upright.ok || section.pose === 'upright') return upright;
  return ok(turned(upright.value, -Math.PI / 2));
}

/** Square size of which so many fill the section: some 200 nodes. */
const CASE_ELEMENTS = 200;
