import { scaledErfc } from '../../numerics/error-function.ts';
import type { Field } from '../../outcome/field.ts';
import type { Skin, SurfaceChannel } from '../conduction/surface.ts';

/** √(kρc) of hot rail steel and of a roll, W√s/m²K, at rolling temperature and cold. */
export const steelEffusivity = 11_800;
export const rollEffusivity = 12_980;

/**
 * Heat that passes from steel to roll during one contact, J/m² per K between them: exact for two thick bodies with a
 * conductance between (classical): (h/a²) [exp(a²t) erfc(a√t) − 1 + 2a√(t/π)], a = h (1/e_s + 1/e_r).
 *
 * conductance  h, W/m²K. Published values for the bite span 7 000 to 200 000; take 10 000 to 20 000 for breakdown passes
 *              with scale and 20 000 to 40 000 for universal passes (from memory, unconfirmed), and fit.
 * time         s of contact, 0 or more.
 */
export function contactHeat(
  conductance: number,
  time: number,
  steel = steelEffusivity,
  roll = rollEffusivity,
): number {
  const a = conductance * (1 / steel + 1 / roll);
  const reach = a * Math.sqrt(time);
  if (reach === 0) return 0;
  // scaledErfc − 1 + 2r/√π loses its digits where the film has not yet cooled the skin: its own first terms instead.
  const grown = reach < 1e-3 ? reach * reach : scaledErfc(reach) - 1 + (2 * reach) / Math.sqrt(Math.PI);
  return (conductance / (a * a)) * grown;
}

/** The same with no resistance between the bodies: 2 √(t/π) / (1/e_s + 1/e_r), J/m² per K. */
export const perfectContactHeat = (time: number, steel = steelEffusivity, roll = rollEffusivity): number =>
  (2 * Math.sqrt(time / Math.PI)) / (1 / steel + 1 / roll);

/** Temperature of the interface in perfect contact, °C. */
export const interfaceTemperature = (
  steelAt: number,
  rollAt: number,
  steel = steelEffusivity,
  roll = rollEffusivity,
): number => (steel * steelAt + roll * rollAt) / (steel + roll);

export interface RollContact {
  /** W/m²K. */
  readonly conductance: number;
  /** °C of the roll's skin before the contact. */
  readonly rollTemperature: number;
  /** s. */
  readonly duration: number;
}

/**
 * A channel 'rolls' that takes the exact heat of one contact evenly over its duration, from the temperatures that the
 * nodes had before it.
 *
 * before    °C per node of the mesh.
 * touched   share of each boundary edge that a roll touches, 0 to 1; one entry per edge.
 */
export function rollContact(
  skin: Skin,
  before: Field,
  touched: Field,
  { conductance, rollTemperature, duration }: RollContact,
): SurfaceChannel {
  const perKelvin = duration > 0 ? contactHeat(conductance, duration) / duration : 0;
  const taken = Float64Array.from(
    { length: 2 * skin.edges },
    (_, end) => touched[end >> 1] * perKelvin * (rollTemperature - before[skin.node[end]]),
  );
  return { name: 'rolls', heat: (_surface, _time, flux) => flux.set(taken) };
}
