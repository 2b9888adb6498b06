/**
 * Spread exponent of a block without friction, exact for Mises steel: S = (p − t)/(2p + t). p roll pressure, t stress
 * along the bar, tension positive, both Pa. One half without tension, 0 at t = p, more than one half under back-up push.
 */
export const frictionlessSpread = (pressure: number, tension: number): number =>
  (pressure - tension) / (2 * pressure + tension);
