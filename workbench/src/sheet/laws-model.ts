/** The answer of one law to the same question. */
export interface LawRow {
  readonly law: string;
  readonly value: number;
  readonly within: boolean;
  /** The law that this station computes with. */
  readonly used?: boolean;
  /** Calibration on the law in use; said where it is not 1. */
  readonly factor?: number;
}
