/**
 * Where the few unknowns of one slice stand in its link of the chain. A link holds two blocks, that of the slice before and
 * its own; each block is: amplitudes of the slice's shapes, changes of the warping where the slice ends, change of its even
 * rate along the bar. What a slice takes over from the one before so stands where that one gives it.
 */
export interface LinkLayout {
  /** How many shapes of the velocities a slice has, and how many modes of warping there are. */
  readonly shapes: number;
  readonly modes: number;
  /** Unknowns of one block, and of a link. */
  readonly block: number;
  readonly size: number;
  /** First places: shapes of the slice before, warping on entering, own shapes, warping on leaving, own even rate. */
  readonly before: number;
  readonly entering: number;
  readonly own: number;
  readonly leaving: number;
  readonly along: number;
}

export function linkLayout(modes: number): LinkLayout {
  const shapes = modes + 2;
  const block = shapes + modes + 1;
  return {
    ...{ shapes, modes, block, size: 2 * block },
    ...{ before: 0, entering: shapes, own: block, leaving: block + shapes, along: 2 * block - 1 },
  };
}
