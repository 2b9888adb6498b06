/** A steel as ordered: what the standard asks, and what the laws need to know about it. */
export interface Grade {
  readonly name: string;
  readonly standard: string;
  /** Mass %, middle of the allowed range unless a heat analysis is given. */
  readonly composition: Composition;
}

export interface Composition {
  readonly C: number;
  readonly Si: number;
  readonly Mn: number;
  readonly P: number;
  readonly S: number;
  readonly Cr: number;
  readonly V: number;
}
