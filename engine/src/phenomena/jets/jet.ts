/** Density of the water, kg/m³. */
export const waterDensity = 1000;

/**
 * Force of a jet on the wall that stops it, N: F = ρ Q v = Q √(2 ρ P) by momentum (exact for a lossless nozzle).
 *
 * flow in m³/s, pressure at the nozzle in Pa. 60 l/min at 200 bar: 200 N.
 */
export const jetForce = (flow: number, pressure: number): number =>
  flow * Math.sqrt(2 * waterDensity * pressure);

/** Flow of a nozzle at another pressure, m³/s: it goes with the root. */
export const flowAt = (pressure: number, ratedFlow: number, ratedPressure: number): number =>
  ratedFlow * Math.sqrt(pressure / ratedPressure);

/** Footprint of a flat jet, m. */
export interface Footprint {
  /** Across the bar. */
  readonly width: number;
  /** Along the bar. */
  readonly depth: number;
}

/** Geometry of the cone, angles in rad, stand-off in m. Real jets are some 10 % wider (from memory, unconfirmed). */
export function footprint(
  standOff: number,
  sprayAngle: number,
  depthAngle: number,
  leadAngle: number,
): Footprint {
  const path = standOff / Math.cos(leadAngle);
  return {
    width: 2 * path * Math.tan(sprayAngle / 2),
    depth: (2 * path * Math.tan(depthAngle / 2)) / Math.cos(leadAngle),
  };
}

/**
 * Mean impact pressure in the footprint, Pa: the jet's force square to the steel, times the share that reaches it, over
 * the footprint. Carbon steel's furnace scale needs about 0.3 to 0.5 MPa, sticky grades 1 MPa (from memory, unconfirmed).
 */
export const impactPressure = (
  force: number,
  { width, depth }: Footprint,
  leadAngle: number,
  efficiency: number,
) => (efficiency * force * Math.cos(leadAngle)) / (width * depth);
