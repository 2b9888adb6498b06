import { barsBetween } from './frame-bars.ts';

/** A drawing's window on the section plane: metres at its edges, and where they lie on the screen. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Screen position of the drawing's own zero, from which the bars of the frame are counted. */
  readonly zeroX: number;
  readonly zeroY: number;
  /** Screen units of one bar of the frame. */
  readonly bar: number;
}

const wide = 5;

/** Graduated frame: two thin lines 5 px apart, bars alternately black and open, counted from the drawing's zero. */
export function Frame({ left, top, width, height, zeroX, zeroY, bar }: Window) {
  const across = barsBetween(left, left + width, zeroX, bar);
  const down = barsBetween(top, top + height, zeroY, bar);
  return (
    <g>
      <rect className="thin" x={left} y={top} width={width} height={height} />
      <rect
        className="thin"
        x={left - wide}
        y={top - wide}
        width={width + 2 * wide}
        height={height + 2 * wide}
      />
      {across.map(([from, to]) => (
        <path
          key={from}
          fill="var(--ink)"
          d={`M${from} ${top - wide}H${to}v${wide}H${from}ZM${from} ${top + height}H${to}v${wide}H${from}Z`}
        />
      ))}
      {down.map(([from, to]) => (
        <path
          key={from}
          fill="var(--ink)"
          d={`M${left - wide} ${from}V${to}h${wide}V${from}ZM${left + width} ${from}V${to}h${wide}V${from}Z`}
        />
      ))}
    </g>
  );
}
