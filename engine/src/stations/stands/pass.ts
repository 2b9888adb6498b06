import type { Bar } from '../../bar/bar.ts';
import { balanceOf } from '../../bar/heat-content.ts';
import { ok, type Result } from '../../outcome/result.ts';
import type { TriMesh } from '../../section/mesh.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import { triangulate } from '../../section/triangulate.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { sectionOf } from './approach.ts';
import { courseOf } from './course.ts';
import type { Stand } from './equipment.ts';
import { flowPass } from './flow/flow-pass.ts';
import type { Happened } from './happened.ts';
import { leaving } from './leaving.ts';
import { type Prepared, prepared } from './prepare.ts';
import type { PassRecord } from './record.ts';
import { recordOf } from './recording.ts';
import type { PassSettings } from './settings.ts';
import { visitsOf } from './visits.ts';

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
  const by = settings.model === 'flow' ? flowPass : handbookPass;
  const happened = by(bar, settings, stand, made.value);
  return happened.ok ? ok({ bar: happened.value.leaving, record: recordOf(happened.value) }) : happened;
}

function handbookPass(bar: Bar, settings: PassSettings, stand: Stand, made: Prepared): Result<Happened> {
  const { entry } = made;
  const course = courseOf(bar, settings, stand, made);
  const mesh = meshOf(course.outline);
  if (!mesh.ok) return mesh;
  const law = heatingLaw(bar.grade);
  const section = sectionOf(entry.mesh, law, bar.mass / entry.length);
  const visits = visitsOf(bar, settings, stand, made, course, section);
  if (!visits.ok) return visits;
  const left = leaving(bar, made, course, mesh.value, visits.value, law);
  return ok({
    bar,
    leaving: left.bar,
    settings,
    stand,
    prepared: made,
    course,
    visits: visits.value,
    corrections: left.corrections,
    balance: balanceOf(bar, left.bar, {}, left.gained, law),
  });
}

/** About 150 nodes whatever the section; thin webs ask for their own. */
function meshOf(outline: Outline): Result<TriMesh> {
  const { area } = sectionProperties(outline);
  return triangulate(outline, { size: Math.sqrt(area / meshCells) });
}

const meshCells = 90;
