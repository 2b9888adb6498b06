import type { StraightenersRecord } from './record.ts';

/** A curvature that leaves, 1/m: as the bar comes, and the least and most over the spread of what comes. */
export interface Range {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

export const worst = ({ low, high }: Range): number => Math.max(Math.abs(low), Math.abs(high));

/** Curvatures that leave, 1/m, over the spread, and what the record says of them. */
export interface StraightFacts {
  readonly heightRange: Range;
  readonly sideRange: Range;
  /** Share of what an offset of the height machine changes that is left behind the side machine. */
  readonly carried: number;
  readonly record: Pick<
    StraightenersRecord,
    | 'flatness3m'
    | 'flatness1m'
    | 'flatnessSide'
    | 'heightCurvature'
    | 'heightLow'
    | 'heightHigh'
    | 'sideCurvature'
    | 'sideLow'
    | 'sideHigh'
    | 'nodeX'
    | 'nodeY'
    | 'triangles'
    | 'stress'
    | 'footStress'
    | 'headStress'
  >;
}
