import type { Field } from '../../outcome/field.ts';
import { pointwise, type Skin, type SurfaceChannel, type SurfaceHeat } from '../conduction/surface.ts';
import { blackEmission, blackEmissionSlope } from './grey.ts';

/**
 * Radiation into surroundings at `ambient` °C. One emissivity for a surface that sees nothing else; one per boundary
 * edge (see cavities.ts) for a section with hollows.
 */
export function radiation(emissivity: number | Field, ambient: number): SurfaceChannel {
  const of = typeof emissivity === 'number' ? () => emissivity : (end: number) => emissivity[end >> 1];
  const received = blackEmission(ambient);
  return pointwise('radiation', (T, _, end) => ({
    flux: of(end) * (received - blackEmission(T)),
    slope: -of(end) * blackEmissionSlope(T),
  }));
}

/**
 * Air over a bar on rollers: h = 8 + 12 v W/m²K with the bar's speed v, m/s; it joins 5 to 15 in still air to 20 to 40 at
 * rolling speed (from memory, unconfirmed). Held at v = 5 m/s beyond. A tenth of radiation or less above 900 °C.
 */
export const movingAir = (speed: number): number => 8 + 12 * Math.min(Math.max(speed, 0), 5);

/** Air at `ambient` °C that takes heat by a constant coefficient, W/m²K. */
export function convection(coefficient: number, ambient: number): SurfaceChannel {
  return pointwise('convection', (T) => ({ flux: coefficient * (ambient - T), slope: -coefficient }));
}

/** A bar in the open hall: radiation to the hall and convection to its air; speed in m/s, 0 when it lies still. */
export function freeSurface(emissivity: number | Field, ambient: number, speed = 0): SurfaceHeat {
  return [radiation(emissivity, ambient), convection(movingAir(speed), ambient)];
}

/**
 * Natural convection in still air, h = c ΔT^(1/3) W/m²K: c 1.52 on faces that look up, 1.31 on vertical ones, 0.90 on
 * faces that look down (turbulent air over plates, common engineering form, no source); between them by the normal.
 * Good for ΔT of 10 to 1000 K; nothing passes at ΔT = 0.
 */
export function naturalConvection(skin: Skin, ambient: number): SurfaceChannel {
  const c = Float64Array.from(skin.ny, (up) => 1.31 + Math.max(up, 0) * 0.21 - Math.max(-up, 0) * 0.41);
  return pointwise('convection', (T, _, end) => {
    const over = T - ambient;
    const h = c[end >> 1] * Math.cbrt(Math.abs(over));
    return { flux: -h * over, slope: (-4 / 3) * h };
  });
}
