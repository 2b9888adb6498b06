import { z } from 'zod';
import { ok, type Result } from '../outcome/result.ts';
import { group, quantity } from '../units/group.ts';
import type { Outline } from './outline.ts';
import { dimensionsOf, ListedDimension } from './profile/dimension-list.ts';
import { type Profile, Published } from './profile/profile.ts';
import { outlineOf } from './profile-library.ts';
import { sectionModuli, sectionProperties } from './properties.ts';
import { torsionConstant } from './torsion.ts';

/** Rail steel as the tables count it, kg/m³. */
const tableDensity = 7850;

/** What a technologist asks of a section; in files the keys are areaMm2, massKgPerM, … torsionMm4. */
export const SectionReport = group(
  {
    profile: z.string(),
    standard: z.string(),
    area: quantity('mm2', 'Area', 0, 1e6),
    mass: quantity('kgPerM', 'Mass at 7850 kg/m³', 0, 1000),
    centroidAboveFoot: quantity('mm', 'Centroid above the underside', 0, 1000),
    inertiaX: quantity('mm4', 'Second moment, upright bending', 0, 1e12),
    inertiaY: quantity('mm4', 'Second moment, lateral bending', 0, 1e12),
    modulusHead: quantity('mm3', 'Section modulus at the head', 0, 1e10),
    modulusFoot: quantity('mm3', 'Section modulus at the foot', 0, 1e10),
    modulusLateral: quantity('mm3', 'Lateral section modulus', 0, 1e10),
    perimeter: quantity('mm', 'Perimeter', 0, 1e5),
    torsion: quantity('mm4', 'Torsion constant', 0, 1e12),
    dimensions: z.array(ListedDimension),
    published: z.array(Published),
  },
  'Section properties',
);
export type SectionReport = z.output<typeof SectionReport>;

/** Properties of a profile, cold, from its exact outline, with every dimension and how well it is known. */
export function sectionReport(profile: Profile): Result<SectionReport> {
  const outline = outlineOf(profile);
  if (!outline.ok) return outline;
  const report = outlineReport(profile.name, outline.value);
  if (!report.ok) return report;
  const { standard, published } = profile;
  return ok({ ...report.value, standard, dimensions: dimensionsOf(profile), published: [...published] });
}

/** The same of any outline, upright as it is drawn; nothing is known of its dimensions. */
export function outlineReport(name: string, outline: Outline): Result<SectionReport> {
  const torsion = torsionConstant(outline);
  if (!torsion.ok) return torsion;
  const properties = sectionProperties(outline);
  const moduli = sectionModuli(properties);
  return ok({
    profile: name,
    standard: '',
    area: properties.area,
    mass: properties.area * tableDensity,
    centroidAboveFoot: properties.centroid.y - properties.bounds.bottom,
    inertiaX: properties.ix,
    inertiaY: properties.iy,
    modulusHead: moduli.top,
    modulusFoot: moduli.bottom,
    modulusLateral: moduli.lateral,
    perimeter: properties.perimeter,
    torsion: torsion.value,
    dimensions: [],
    published: [],
  });
}
