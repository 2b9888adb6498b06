import { contactLength, contactRatio } from './contact.ts';
import type { FlatPass } from './pass.ts';
import { simsLeverArm } from './sims.ts';

/**
 * Lever arm of the roll force over the contact length, 0.45 to 0.6. Thin stock: Sims (0.46 to 0.498). Thick stock:
 * 0.5 rising to 0.6 as L/h_m falls from 1 to 0.3; boxes and strip 0.45 to 0.5, thick blooms 0.5 to 0.6 in practice,
 * from memory, unconfirmed; the straight way between is assumed.
 */
export function leverArm(pass: FlatPass): number {
  const ratio = contactRatio(pass);
  const thin = simsLeverArm(pass);
  if (ratio >= 1) return thin;
  return thin + (0.6 - thin) * Math.min(1, (1 - ratio) / 0.7);
}

/** Torque on one roll, N·m, from the force, N. Bearing friction not included. */
export const rollTorque = (pass: FlatPass, force: number, arm = leverArm(pass)): number =>
  force * arm * contactLength(pass);

/** Power to turn both rolls, W, at a roll surface speed in m/s. */
export const rollingPower = (torquePerRoll: number, speed: number, R: number): number =>
  (2 * torquePerRoll * speed) / R;
