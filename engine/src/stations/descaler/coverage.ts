/** How one face stands under its row of jets. */
export interface Coverage {
  /** Share of the width under a jet, 0 to 1. */
  readonly covered: number;
  /** m by which neighbouring footprints overlap; negative is a gap between them. */
  readonly overlap: number;
}

/**
 * Rows are centred on their face and their footprints are strips of even width.
 *
 * nozzles   in the row; none covers nothing.   spray, pitch, width   of a footprint, between nozzles, of the face; m.
 */
export function coverageOf(nozzles: number, spray: number, pitch: number, width: number): Coverage {
  const overlap = nozzles > 1 ? spray - pitch : 0;
  let covered = 0;
  let reached = -width / 2;
  for (let k = 0; k < nozzles; k++) {
    const middle = (k - (nozzles - 1) / 2) * pitch;
    const from = Math.max(middle - spray / 2, reached);
    const to = Math.min(middle + spray / 2, width / 2);
    if (to <= from) continue;
    covered += to - from;
    reached = to;
  }
  return { covered: Math.min(1, covered / width), overlap };
}
