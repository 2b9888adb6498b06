import type { Outline } from '@bloomrail/engine/section/outline';

/**
 * A drawing as a list of what to draw, in paper millimetres, y up from the lower edge. Every file format is made from
 * this one list, so that they cannot differ.
 */
export interface Drawing {
  readonly title: string;
  /** One sentence that says what is seen, for people who hear drawings. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
}

/** Line types after ISO 128-2: wide outlines, narrow dimensions and hatching, centre lines, extra wide limits. */
export type Stroke = 'outline' | 'thin' | 'centre' | 'dashed' | 'limit';

export type Item =
  | {
      readonly kind: 'outline';
      readonly outline: Outline;
      readonly stroke: Stroke;
      readonly fill?: 'steel' | 'ink';
    }
  | { readonly kind: 'line'; readonly from: Spot; readonly to: Spot; readonly stroke: Stroke }
  | { readonly kind: 'arrow'; readonly at: Spot; readonly towards: Spot }
  | { readonly kind: 'bar'; readonly at: Spot; readonly width: number; readonly height: number }
  | {
      readonly kind: 'text';
      readonly at: Spot;
      readonly text: string;
      /** Height of the letters, mm. */
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly turned?: boolean;
      readonly bold?: boolean;
    };

/** mm on the paper. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}
