/**
 * Lifting points for one rail length: two up to 13 m, then one more for every started 6.5 m.
 * Source: RDSO handling guideline as quoted by track pages; the lift stays level and never hangs on one point.
 * Local lifting rules and the crane's licensed crew decide.
 */
export const slingingPoints = (length: number): number =>
  length <= TWO_POINT_LENGTH ? 2 : 2 + Math.ceil((length - TWO_POINT_LENGTH) / POINT_SPACING - ROUNDING);

const TWO_POINT_LENGTH = 13;
const POINT_SPACING = 6.5;
/** So that 13 m + 6.5 m, written in binary, still counts as one started spacing. */
const ROUNDING = 1e-9;
