import { figure } from '../../ink/numbers.ts';

/** A stretch of the bar between two cuts; a coloured one goes on, an open one is scrap or sample. */
export interface Part {
  readonly name: string;
  readonly length: number;
  readonly colour?: string;
}

interface Props {
  readonly width: number;
  /** m, of the whole bar. */
  readonly length: number;
  readonly parts: readonly Part[];
  readonly sentence: string;
}

const [top, thick] = [52, 18];

/** One bar with its cuts, true to scale along its length. Words of narrow parts move up so that they do not meet. */
export function CutBar({ width, length, parts, sentence }: Props) {
  const scale = (width - 4) / length;
  let at = 2;
  const placed = parts.map((part) => {
    const from = at;
    at += part.length * scale;
    return { ...part, from, width: part.length * scale };
  });
  return (
    <svg width={width} height={top + thick + 26} role="img" aria-label={sentence}>
      {placed.map((part, i) => (
        <g key={`${part.name} ${part.from}`}>
          <rect
            x={part.from}
            y={top}
            width={Math.max(1, part.width - 1)}
            height={thick}
            fill={part.colour ?? 'var(--field)'}
            stroke="var(--ink)"
            strokeWidth={0.9}
            strokeDasharray={part.colour ? undefined : '3 2'}
          />
          <Words part={part} level={levelOf(placed, i, width)} end={width} />
        </g>
      ))}
    </svg>
  );
}

type Placed = Part & { readonly from: number; readonly width: number };

function Words({ part, level, end }: { part: Placed; level: number; end: number }) {
  const middle = part.from + part.width / 2;
  const words = wordsOf(part);
  if (!isNarrow(part)) {
    return (
      <text className="mid" x={middle} y={top + thick + 15}>
        {part.name} <tspan fontWeight={700}>{figure(part.length, 'm', 2)}</tspan>
      </text>
    );
  }
  const atRight = middle > end / 2;
  const y = top - 10 - 13 * level;
  return (
    <g>
      <path className="thin" d={`M${middle} ${top - 2}V${y + 3}`} />
      <text className={atRight ? 'end' : ''} x={middle + (atRight ? -3 : 3)} y={y}>
        {words}
      </text>
    </g>
  );
}

const wordsOf = ({ name, length }: Part): string => `${name} ${figure(length, 'm', 2)}`;

const isNarrow = (part: Placed): boolean => part.width <= 6 * wordsOf(part).length;

/** Narrow parts nearest to an end of the bar have their words highest, so that no leader runs through words. */
function levelOf(parts: readonly Placed[], index: number, end: number): number {
  const atRight = (part: Placed) => part.from + part.width / 2 > end / 2;
  const side = atRight(parts[index]);
  return parts.filter(
    (other, i) => isNarrow(other) && atRight(other) === side && (side ? i < index : i > index),
  ).length;
}
