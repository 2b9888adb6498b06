import type { Field } from '../../outcome/field.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { conductFor } from '../../phenomena/conduction/conduct.ts';
import { type Conductor, conductor } from '../../phenomena/conduction/conductor.ts';
import { pointwise, type SurfaceHeat } from '../../phenomena/conduction/surface.ts';
import { openEmissivity } from '../../phenomena/radiation/cavities.ts';
import { freeSurface } from '../../phenomena/radiation/free-surface.ts';
import { scaledSteel } from '../../phenomena/radiation/grey.ts';
import { type RollContact, rollContact } from '../../phenomena/roll-contact/roll-contact.ts';
import type { TriMesh } from '../../section/mesh.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import type { Stand } from './equipment.ts';

/** Hall, °C, and the bar's mean speed on the tables between passes, m/s: common practice, no source. */
const hall = 25;
const tableSpeed = 1;

/** A field with what it took up on the way, J per metre of the entering bar, by name. */
export interface Heated {
  readonly temperature: Float64Array;
  readonly gained: Readonly<Record<string, number>>;
}

export interface Section {
  readonly conductor: Conductor;
  readonly law: ThermalLaw;
  /** kg/m of the entering bar. */
  readonly massPerMetre: number;
  /** What the open hall takes from it; hollows radiate through their mouths. */
  readonly open: SurfaceHeat;
}

/** The entering bar as heat sees it, alike at head, middle and tail. */
export function sectionOf(mesh: TriMesh, law: ThermalLaw, massPerMetre: number): Section {
  const open = freeSurface(openEmissivity(mesh, scaledSteel), hall, tableSpeed);
  return { conductor: conductor(mesh), law, massPerMetre, open };
}

/**
 * From the stand before to this one: radiation and convection in the open, then water under the header if it is on.
 *
 * time   s; the water's share is the wetted length over the bar's speed, at most all of it.
 */
export function waited(
  section: Section,
  from: Field,
  time: number,
  water: Water | undefined,
): Result<Heated> {
  const wet = water ? Math.min(time, water.duration) : 0;
  const dry = heated(section, from, time - wet, section.open);
  if (!dry.ok || !water || wet <= 0) return dry;
  const { coefficient: h, temperature } = water;
  const film = pointwise('water', (T) => ({ flux: h * (temperature - T), slope: -h }));
  const under = heated(section, dry.value.temperature, wet, [film]);
  if (!under.ok) return under;
  return ok({ temperature: under.value.temperature, gained: summed(dry.value.gained, under.value.gained) });
}

export interface Water {
  readonly duration: number;
  readonly coefficient: number;
  readonly temperature: number;
}

export const waterOn = ({ spray }: Stand, on: boolean, speed: number): Water | undefined =>
  on
    ? { duration: spray.length / speed, coefficient: spray.coefficient, temperature: spray.temperature }
    : undefined;

/** Through the bite: the rolls take heat from what they touch. `touched` per boundary edge, 0 to 1 and a little more. */
export function rolledOver(
  section: Section,
  from: Field,
  touched: Field,
  contact: RollContact,
): Result<Heated> {
  if (contact.duration <= 0) return ok({ temperature: Float64Array.from(from), gained: {} });
  const surface = [rollContact(section.conductor.skin, from, touched, contact)];
  return heated(section, from, contact.duration, surface, 1);
}

function heated(
  { conductor, law, massPerMetre }: Section,
  temperature: Field,
  duration: number,
  surface: SurfaceHeat,
  steps = stepsFor(duration),
): Result<Heated> {
  if (duration <= 0) return ok({ temperature: Float64Array.from(temperature), gained: {} });
  const problem = { massPerMetre, law, surface };
  const done = conductFor(conductor, problem, { temperature }, duration, steps);
  // A skin that crosses the change of phase in one step may not settle; shorter steps do.
  const settled = done.ok ? done : conductFor(conductor, problem, { temperature }, duration, 8 * steps);
  return settled.ok ? ok({ temperature: settled.value.temperature, gained: settled.value.gained }) : settled;
}

/** Equal implicit steps: the skin is within some kelvin of what many steps give. */
const stepsFor = (duration: number): number => (duration < 4 ? 2 : duration < 20 ? 3 : 5);

export function summed(a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>) {
  const sum: Record<string, number> = { ...a };
  for (const [name, value] of Object.entries(b)) sum[name] = (sum[name] ?? 0) + value;
  return sum;
}
