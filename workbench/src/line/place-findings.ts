/** A finding that wants room in the findings lane: where its station stands and how wide its words are. */
export interface Wish {
  readonly x: number;
  readonly width: number;
}

export interface PlacedFinding {
  readonly row: number;
  readonly side: 'left' | 'right';
}

interface Taken {
  readonly row: number;
  readonly from: number;
  readonly to: number;
  readonly x: number;
}

/**
 * A row and a side for each finding, in travel order, so that no words meet other words or another's leader.
 * Words stand inside: to the right of the mark on the first half of the line, to the left on the second.
 * undefined where `rows` do not suffice.
 */
export function placeFindings(
  wishes: readonly Wish[],
  rows: number,
  [left, right]: readonly [number, number],
): (PlacedFinding | undefined)[] {
  const taken: Taken[] = [];
  return wishes.map(({ x, width }) => {
    const sides = x < (left + right) / 2 ? (['right', 'left'] as const) : (['left', 'right'] as const);
    for (let row = 0; row < rows; row++) {
      for (const side of sides) {
        const place = side === 'right' ? { from: x - 8, to: x + width } : { from: x - width, to: x + 8 };
        const candidate = { row, x, ...place };
        if (place.from < left || place.to > right || taken.some((other) => meet(candidate, other))) continue;
        taken.push(candidate);
        return { row, side };
      }
    }
    return undefined;
  });
}

/** Same row: the words overlap. Other rows: the leader of the lower one runs through the words of the upper one. */
function meet(a: Taken, b: Taken): boolean {
  if (a.row === b.row) return a.from < b.to && b.from < a.to;
  const [upper, lower] = a.row < b.row ? [a, b] : [b, a];
  return lower.x > upper.from - 3 && lower.x < upper.to + 3;
}
