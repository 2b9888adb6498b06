/** Largest sag under a straightedge, m, EN 13674-1. The 3 m values are read in a track manual; the rest from memory. */
export const flatnessLimits = {
  A: { on3m: 0.3e-3, on1m: 0.2e-3, sideways: 0.45e-3 },
  B: { on3m: 0.4e-3, on1m: 0.3e-3, sideways: 0.6e-3 },
} as const;

/** Share of the depth past first yield: more leaves little elastic core to lead the bar (practice 70 to 85 %, memory). */
export const mostPlastified = 0.85;
