/** One drawing entity: its kind and its group codes with their values, in the order of the file. */
export interface Entity {
  readonly kind: string;
  readonly line: number;
  readonly pairs: readonly Pair[];
}

/** A DXF file is pairs of lines: a group code that says what the value below it means. */
export interface Pair {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

/** What $INSUNITS numbers mean, m per drawing unit (AutoCAD DXF reference, HEADER section). */
const insertionUnits: Readonly<Record<string, number>> = {
  1: 0.0254,
  2: 0.3048,
  4: 1e-3,
  5: 1e-2,
  6: 1,
  8: 2.54e-8,
  13: 1e-6,
  14: 0.1,
};

/** The entities of an ASCII DXF text, the length of its unit in m, and what is wrong with the text. */
export function entitiesOf(text: string): { entities: Entity[]; unit: number; problems: string[] } {
  if (text.startsWith('AutoCAD Binary DXF')) {
    return { entities: [], unit: 1e-3, problems: ['the drawing is a binary DXF; save it as ASCII'] };
  }
  const { pairs, problems } = pairsOf(text);
  const entities = entitiesIn(sectionNamed(pairs, 'ENTITIES'));
  if (entities.length === 0) problems.push('there is no ENTITIES section with anything in it');
  const header = sectionNamed(pairs, 'HEADER');
  const at = header.findIndex(({ code, value }) => code === 9 && value === '$INSUNITS');
  const unit = at >= 0 ? (insertionUnits[header[at + 1]?.value ?? ''] ?? 1e-3) : 1e-3;
  return { entities, unit, problems };
}

function pairsOf(text: string): { pairs: Pair[]; problems: string[] } {
  const lines = text.split(/\r\n|\r|\n/);
  const [pairs, problems]: [Pair[], string[]] = [[], []];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = lines[i].trim();
    if (!/^-?\d+$/.test(code)) {
      problems.push(`line ${i + 1} should be a group code, but is “${code.slice(0, 20)}”`);
      break;
    }
    pairs.push({ code: Number(code), value: lines[i + 1].trim(), line: i + 1 });
  }
  return { pairs, problems };
}

/** What stands between 0 SECTION, 2 NAME and the next 0 ENDSEC. */
function sectionNamed(pairs: readonly Pair[], name: string): Pair[] {
  const start = pairs.findIndex(
    ({ code, value }, i) => code === 2 && value === name && pairs[i - 1]?.value === 'SECTION',
  );
  if (start < 0) return [];
  const end = pairs.findIndex(({ code, value }, i) => i > start && code === 0 && value === 'ENDSEC');
  return pairs.slice(start + 1, end < 0 ? undefined : end);
}

function entitiesIn(pairs: readonly Pair[]): Entity[] {
  const starts = pairs.flatMap(({ code }, i) => (code === 0 ? [i] : []));
  return starts.map((start, k) => ({
    kind: pairs[start].value,
    line: pairs[start].line,
    pairs: pairs.slice(start + 1, starts[k + 1]),
  }));
}
