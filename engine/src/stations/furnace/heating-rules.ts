/** Heating times that rules of thumb give for a thickness, s: a plausibility band, not a model. */
export interface HeatingRules {
  readonly taits: number;
  readonly low: number;
  readonly high: number;
}

/**
 * thickness   m, the smaller side.
 *
 * Taits: τ(min) = (7.5 + 0.05 S) S with S in cm, for below 0.25 % C in a three-zone continuous furnace (periodical
 * abstract). C · S: 0.20 to 0.30 h per cm for high-carbon steel (a furnace maker's page, 2016), made for older furnaces
 * heated from one or two sides. For 30 cm they say 270 min and 6 to 9 h; walking-beam furnaces need 8 to 10 min per cm
 * (from memory, unconfirmed).
 */
export function heatingRules(thickness: number): HeatingRules {
  const S = thickness * 100;
  return { taits: 60 * (7.5 + 0.05 * S) * S, low: 3600 * 0.2 * S, high: 3600 * 0.3 * S };
}
