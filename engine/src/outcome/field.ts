/** A read-only row of numbers. Typed arrays cannot be frozen, so nothing outside its maker may write to one. */
export interface Field extends Iterable<number> {
  readonly length: number;
  readonly [index: number]: number;
}

/** A read-only row of whole numbers: node numbers, element numbers. */
export type Indices = Field;
