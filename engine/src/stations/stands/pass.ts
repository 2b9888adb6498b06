import { type Bar, placeNames } from '../../bar/bar.ts';
import { balanceOf } from '../../bar/heat-content.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { meanOver, nodeAreas, type TriMesh } from '../../section/mesh.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { triangulate } from '../../section/triangulate.ts';
import { density } from '../../steel/expansion.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { rolledOver, sectionOf, summed, waited, waterOn } from './approach.ts';
import { firstContact, firstVerticalContact } from './bite.ts';
import { elementsOf, mismatchOf } from './elements.ts';
import type { Stand } from './equipment.ts';
import { closed } from './half-section/half-section.ts';
import { elementTemperatures, redrawn, touchedEdges, warmedByWork } from './heat.ts';
import { forwardSlipOf, type LoadRule, loadsOf } from './loads.ts';
import { prepared } from './prepare.ts';
import type { PassRecord } from './record.ts';
import { recordOf } from './recording.ts';
import type { PassSettings } from './settings.ts';
import { byPlace, timingOf } from './timing.ts';

/**
 * One pass: from where the stand before left the bar, through waiting, turning and the bite, to where this stand leaves
 * it. Section by the handbook's spread, loads by its force laws, temperatures on the section mesh at head, middle and
 * tail, each at its own time. Fails when the bar is not alike above and below the pass line, lies beside the groove, or
 * a field does not settle; a bar that the rolls do not reach passes unchanged.
 */
export function pass(
  bar: Bar,
  settings: PassSettings,
  stand: Stand,
): Result<{ readonly bar: Bar; readonly record: PassRecord }> {
  const made = prepared(bar, settings, stand);
  if (!made.ok) return made;
  const { rolled, rolls, cavity, entry, axis } = made.value;
  const outline = closed(rolled.exit);
  const mesh = meshOf(outline);
  if (!mesh.ok) return mesh;

  const [before, after] = [sectionProperties(entry.outline), sectionProperties(outline)];
  const elongation = before.area / after.area;
  const timing = timingOf(bar, {
    ...settings,
    drive: stand.drive,
    rollingTime: (entry.length * elongation) / settings.speed,
  });
  const speed = (entry.length * elongation) / timing.rollingTime;

  const law = heatingLaw(bar.grade);
  const elements = elementsOf(rolled, cavity, rolls, axis);
  const rule = loadRule(bar, stand, made.value, speed);
  const section = sectionOf(entry.mesh, law, bar.mass / entry.length);
  const bites = bitesOf(made.value);
  const contact = {
    conductance: stand.contactCoefficient,
    rollTemperature: stand.rollTemperature,
    duration: elongation > 1 + 1e-9 ? bites.length / speed : 0,
  };
  const growth = (1 + (elongation * after.perimeter) / before.perimeter) / 2;
  const touched = touchedEdges(
    section.conductor.skin,
    entry.mesh,
    rolled,
    rolls.footFace !== undefined,
    growth,
  );
  const water = waterOn(stand, settings.water, speed / elongation);

  const visits = [];
  for (const name of placeNames) {
    const { clock, temperature } = bar[name];
    const biting = waited(section, temperature, timing.bite[name] - clock, water);
    if (!biting.ok) return biting;
    const loads = loadsOf(
      elements,
      elementTemperatures(entry.mesh, section.conductor.areas, biting.value.temperature, elements),
      rule,
    );
    const chilled = rolledOver(section, biting.value.temperature, touched, contact);
    if (!chilled.ok) return chilled;
    const gained = summed(biting.value.gained, chilled.value.gained);
    visits.push({
      name,
      loads,
      gained,
      biting: biting.value.temperature,
      chilled: chilled.value.temperature,
    });
  }

  const { temperatures, corrections } = redrawn(
    entry.mesh,
    mesh.value,
    rolled,
    visits.map(({ chilled }) => chilled),
    law,
  );
  const areas = nodeAreas(mesh.value);
  const massFlow = (bar.mass / entry.length / elongation) * speed;
  const works = visits.map(({ loads }, i) =>
    warmedByWork(
      temperatures[i],
      mesh.value,
      areas,
      loads,
      rolled,
      loads.power / massFlow,
      entry.density,
      law,
    ),
  );

  const hot = meanOver(mesh.value, temperatures[1]);
  const length = (entry.length * elongation * entry.density) / density(hot, bar.grade);
  const stretch = length / bar.length;
  const leaving: Bar = {
    ...bar,
    outline,
    mesh: mesh.value,
    ...byPlace((name) => ({ clock: timing.bite[name], temperature: temperatures[placeNames.indexOf(name)] })),
    length,
    pieces: bar.pieces.map((piece) => piece * stretch),
    elongation: bar.elongation * elongation,
    // The skin's layers keep their volume on a skin that grows in length and shrinks in girth.
    decarburised: (bar.decarburised * before.perimeter) / (after.perimeter * elongation),
    ...(bar.scale === undefined
      ? {}
      : { scale: (bar.scale * before.perimeter) / (after.perimeter * elongation) }),
  };
  return ok({
    bar: leaving,
    record: recordOf({
      bar,
      leaving,
      settings,
      stand,
      prepared: made.value,
      timing,
      visits,
      corrections,
      bites,
      speed,
      elongation,
      mismatch: mismatchOf(elements),
      forwardSlip: forwardSlipOf(visits[1].loads),
      balance: balanceOf(bar, leaving, {}, ledger(bar, entry.length, visits, works), law),
    }),
  });
}

/** About 150 nodes whatever the section; thin webs ask for their own. */
function meshOf(outline: Outline): Result<TriMesh> {
  const { area } = sectionProperties(outline);
  return triangulate(outline, { size: Math.sqrt(area / meshCells) });
}

const meshCells = 90;

function loadRule(
  bar: Bar,
  { model, friction }: Stand,
  { flowStress, workingRadius }: { flowStress: LoadRule['flowStress']; workingRadius: number },
  speed: number,
): LoadRule {
  return {
    flowStress,
    composition: bar.grade.composition,
    forceLaw: model.forceLaw,
    force: model.force,
    torque: model.torque,
    friction,
    speed,
    workingRadius,
  };
}

export interface Bites {
  /** rad. */
  readonly horizontal: number;
  readonly vertical: number;
  /** m, first contact of any roll before the exit plane. */
  readonly length: number;
}

type Shapes = Extract<ReturnType<typeof prepared>, { ok: true }>['value'];

function bitesOf({ rolled: { entry }, rolls, axis, verticalRadius }: Shapes): Bites {
  const horizontal = firstContact(entry, rolls.top, axis);
  const vertical = firstVerticalContact(entry, rolls, verticalRadius);
  return {
    horizontal: horizontal.angle,
    vertical: vertical.angle,
    length: Math.max(horizontal.length, vertical.length),
  };
}

/** J for the whole bar, each place standing for a third. */
function ledger(
  bar: Bar,
  entryLength: number,
  visits: readonly { readonly gained: Readonly<Record<string, number>> }[],
  works: readonly { readonly deformation: number; readonly friction: number }[],
) {
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
