import { type Bar, placeNames } from '../../bar/bar.ts';
import { meanOver, nodeAreas, type TriMesh } from '../../section/mesh.ts';
import { density } from '../../steel/expansion.ts';
import type { HeatingLaw } from '../../steel/heating.ts';
import type { Course } from './course.ts';
import { redrawn, warmedByWork } from './heat.ts';
import type { Prepared } from './prepare.ts';
import { byPlace } from './timing.ts';
import type { VisitOfPlace } from './visits.ts';

/** The bar behind the stand with what it took to write it down. */
export interface Left {
  readonly bar: Bar;
  /** K by which each field was shifted to keep its heat on the leaving section's mesh. */
  readonly corrections: readonly number[];
  /** J for the whole bar, by name. */
  readonly gained: Readonly<Record<string, number>>;
}

/** The bar behind the stand: its fields drawn out with it and warmed by the work that was done on it. */
export function leaving(
  bar: Bar,
  prepared: Prepared,
  course: Course,
  mesh: TriMesh,
  visits: readonly VisitOfPlace[],
  law: HeatingLaw,
): Left {
  const { entry, rolled } = prepared;
  const chilled = visits.map((visit) => visit.chilled);
  const { temperatures, corrections } = redrawn(entry.mesh, mesh, rolled, chilled, law);
  const areas = nodeAreas(mesh);
  const massFlow = (bar.mass / entry.length / course.elongation) * course.speed;
  const works = visits.map(({ loads }, i) =>
    warmedByWork(temperatures[i], mesh, areas, loads, rolled, loads.power / massFlow, entry.density, law),
  );
  return {
    bar: longer(bar, prepared, course, mesh, temperatures),
    corrections,
    gained: gainedBy(bar, entry.length, visits, works),
  };
}

/** What a bar has of strain and squares is lost with a new mesh, unless it is given on. */
export function longer(
  bar: Bar,
  { entry }: Prepared,
  { outline, elongation, girth, timing }: Course,
  mesh: TriMesh,
  temperatures: readonly Float64Array[],
  { strain, squares }: Pick<Bar, 'strain' | 'squares'> = {},
): Bar {
  const hot = meanOver(mesh, temperatures[1]);
  const length = (entry.length * elongation * entry.density) / density(hot, bar.grade);
  const stretch = length / bar.length;
  // The skin's layers keep their volume on a skin that grows in length and shrinks in girth.
  const thinned = (layer: number) => (layer * girth.before) / (girth.after * elongation);
  const { strain: _, squares: __, ...kept } = bar;
  return {
    ...kept,
    outline,
    mesh,
    ...(strain ? { strain } : {}),
    ...(squares ? { squares } : {}),
    ...byPlace((name) => ({ clock: timing.bite[name], temperature: temperatures[placeNames.indexOf(name)] })),
    length,
    pieces: bar.pieces.map((piece) => piece * stretch),
    elongation: bar.elongation * elongation,
    decarburised: thinned(bar.decarburised),
    ...(bar.scale === undefined ? {} : { scale: thinned(bar.scale) }),
  };
}

/** J for the whole bar, each place standing for a third. */
export function gainedBy(
  bar: Bar,
  entryLength: number,
  visits: readonly VisitOfPlace[],
  works: readonly { readonly deformation: number; readonly friction: number }[],
): Record<string, number> {
  const gained: Record<string, number> = {};
  const add = (name: string, heat: number) => {
    gained[name] = (gained[name] ?? 0) + heat / placeNames.length;
  };
  for (const visit of visits) {
    for (const [name, heat] of Object.entries(visit.gained)) add(name, heat * entryLength);
  }
  for (const { deformation, friction } of works) {
    add('deformation', deformation * bar.mass);
    add('friction', friction * bar.mass);
  }
  return gained;
}
