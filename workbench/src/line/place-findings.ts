/** A finding that wants room in the findings lane: where its station stands, and how wide its words may be. */
export interface Wish {
  readonly x: number;
  /** Widths of its texts, the fullest first. */
  readonly widths: readonly number[];
}

export interface PlacedFinding {
  readonly row: number;
  readonly side: 'left' | 'right';
  /** Which of its texts has room. */
  readonly text: number;
}

interface Fitted {
  readonly x: number;
  readonly width: number;
}

type Place = Omit<PlacedFinding, 'text'>;

interface Taken {
  readonly row: number;
  readonly from: number;
  readonly to: number;
  readonly x: number;
}

/**
 * A row and a side for each finding, given in order of importance, so that no words meet other words or another's
 * leader. Words stand inside: to the right of the mark on the first half of the line, to the left on the second.
 * Where the rows do not suffice for all, the less important ones get no place. All are placed with their shortest
 * text first; then each in turn gets the fullest one for which there is room.
 */
export function placeFindings(
  wishes: readonly Wish[],
  rows: number,
  [left, right]: readonly [number, number],
): (PlacedFinding | undefined)[] {
  const place = (texts: ReadonlyMap<number, number>) =>
    placeAll(
      [...texts].map(([i, text]) => ({ x: wishes[i].x, width: wishes[i].widths[text] })),
      rows,
      left,
      right,
    );
  let texts = new Map<number, number>();
  const take = (i: number, text: number): boolean => {
    const more = new Map(texts).set(i, text);
    if (!place(more)) return false;
    texts = more;
    return true;
  };
  for (const [i, { widths }] of wishes.entries()) take(i, widths.length - 1);
  for (const [i, text] of [...texts]) for (let fuller = 0; fuller < text && !take(i, fuller); ) fuller++;
  const places = place(texts) ?? [];
  const order = [...texts.keys()];
  return wishes.map((_, i) => {
    const found = places[order.indexOf(i)];
    return found && { ...found, text: texts.get(i) ?? 0 };
  });
}

/** Stairs that run down from the middle of the line to both ends: then leaders pass beside all words. */
function placeAll(wishes: readonly Fitted[], rows: number, left: number, right: number): Place[] | undefined {
  const middle = (left + right) / 2;
  const order = wishes
    .map((_, i) => i)
    .sort((a, b) => Math.abs(wishes[a].x - middle) - Math.abs(wishes[b].x - middle));
  const taken: Taken[] = [];
  const placed: Place[] = [];
  for (const i of order) {
    const { x, width } = wishes[i];
    const side = x < middle ? 'right' : 'left';
    const words = side === 'right' ? { from: x - 8, to: x + width } : { from: x - width, to: x + 8 };
    if (words.from < left - 14 || words.to > right + 14) return undefined;
    const row = firstFree({ x, ...words }, taken, rows);
    if (row === undefined) return undefined;
    taken.push({ row, x, ...words });
    placed[i] = { row, side };
  }
  return placed;
}

function firstFree(words: Omit<Taken, 'row'>, taken: readonly Taken[], rows: number): number | undefined {
  for (let row = 0; row < rows; row++) {
    if (!taken.some((other) => meet({ ...words, row }, other))) return row;
  }
  return undefined;
}

/** Same row: the words overlap. Other rows: the leader of the lower one runs through the words of the upper one. */
function meet(a: Taken, b: Taken): boolean {
  if (a.row === b.row) return a.from < b.to && b.from < a.to;
  const [upper, lower] = a.row < b.row ? [a, b] : [b, a];
  return lower.x > upper.from - 3 && lower.x < upper.to + 3;
}
