import type { Composition } from './grade.ts';

/** °C where austenite begins to form (Ac1) and where the last ferrite and carbide are gone (Ac3) on heating. */
export interface CriticalPoints {
  readonly ac1: number;
  readonly ac3: number;
}

/**
 * Andrews 1965, linear formulas for low-alloy steels, from memory, unconfirmed; C 0.1 to 0.8 %. Above the eutectoid
 * Ac3 falls below Ac1, so that the band is given its least width: 40 K, about what pearlite needs to dissolve at furnace
 * heating rates (assumed, no source). R260 gives 725 to 765 °C.
 */
export function criticalPoints({ C, Si, Mn, Cr, V }: Composition): CriticalPoints {
  const ac1 = 723 - 10.7 * Mn + 29.1 * Si + 16.9 * Cr;
  const ac3 = 910 - 203 * Math.sqrt(C) + 44.7 * Si + 104 * V - 30 * Mn - 11 * Cr;
  return { ac1, ac3: Math.max(ac3, ac1 + 40) };
}
