import type { Bar } from '../../../bar/bar.ts';
import { ok, type Result } from '../../../outcome/result.ts';
import { type HeatingLaw, heatingLaw } from '../../../steel/heating.ts';
import { type Section, sectionOf, type Water, waterOn } from '../approach.ts';
import { type Course, courseOf } from '../course.ts';
import type { Stand } from '../equipment.ts';
import type { Prepared } from '../prepare.ts';
import type { PassSettings } from '../settings.ts';
import { type EnteringMesh, enteringMesh } from './entering-mesh.ts';
import { rollTurning, usualNodes } from './usual.ts';

/** All that is known of a pass before metal flow solves it. */
export interface Ahead {
  readonly bar: Bar;
  readonly settings: PassSettings;
  readonly stand: Stand;
  readonly prepared: Prepared;
  readonly law: HeatingLaw;
  /** The bar on its way to the stand, as heat sees it. */
  readonly section: Section;
  readonly water: Water | undefined;
  readonly entering: EnteringMesh;
  /** The pass by the handbook: for times before the pass is solved, and to stand beside it. */
  readonly handbook: Course;
}

export function aheadOf(bar: Bar, settings: PassSettings, stand: Stand, prepared: Prepared): Result<Ahead> {
  const entering = enteringMesh(prepared, settings.nodes ?? usualNodes);
  if (!entering.ok) return entering;
  const { entry } = prepared;
  const law = heatingLaw(bar.grade);
  const section = sectionOf(entry.mesh, law, bar.mass / entry.length);
  const handbook = courseOf(bar, atWorkingRadius(settings, stand, prepared), stand, prepared);
  const water = waterOn(stand, settings.water, handbook.speed / handbook.elongation);
  return ok({
    ...{ bar, settings, stand, prepared, law, section, water, handbook },
    entering: entering.value,
  });
}

/** The handbook knows one speed of the rolls: that of their working radius. */
const atWorkingRadius = (
  settings: PassSettings,
  stand: Stand,
  { workingRadius }: Prepared,
): PassSettings => ({
  ...settings,
  speed: rollTurning(settings, stand) * workingRadius,
});
