import { Diamond } from '../ink/Diamond.tsx';
import { LaneName, type LaneProps } from './Lane.tsx';
import { bySeriousness, foremost } from './line-model.ts';
import { placeFindings } from './place-findings.ts';

const rowHeight = 18;
/** Mean width of one letter of the 10.5 px lettering; B612 is wide. */
const letter = 6.1;
/** Letters that a text is cut to where there is no room for more. */
const cuts = [Infinity, 110, 84, 58];

/** The most serious finding of each station under it; what has no room is counted, and told in the station. */
export function FindingsLane({ stops, layout, left, right, top, rows }: LaneProps & { rows: number }) {
  const wishes = stops
    .flatMap((stop, i) => {
      const first = foremost(stop.findings);
      if (!first || stop.state !== 'now') return [];
      const tail = first.others > 0 ? `, and ${first.others} more` : '';
      const texts = [...new Set(cuts.map((most) => shortened(first.finding.text, most)))];
      const widths = texts.map((text) => `${stop.code} ${text}${tail}`.length * letter + 18);
      return [{ ...first, tail, texts, widths, code: stop.code, x: layout.columns[i].middle }];
    })
    .sort((a, b) => bySeriousness(a.finding, b.finding));
  const placed = placeFindings(wishes, rows, [left, right]);
  const unplaced = placed.filter((place) => !place).length;
  return (
    <g>
      <LaneName
        top={top}
        name="Findings"
        notes={unplaced ? [`at ${unplaced} more stations,`, 'marked by a diamond'] : []}
      />
      {wishes.length === 0 && (
        <text x={left + 4} y={top + 4}>
          {stops.some(({ state }) => state === 'now') ? 'No finding.' : ''}
        </text>
      )}
      {wishes.map(({ code, x, finding, texts, tail }, i) => {
        const place = placed[i];
        if (!place) return <Diamond key={code} level={finding.level} x={x} y={top - 10} size={4} />;
        const y = top + place.row * rowHeight;
        const note = finding.level === 'note';
        const way = place.side === 'right' ? 1 : -1;
        return (
          <g key={code}>
            <path className={note ? 'ruled' : 'leader'} d={`M${x} ${top - 10}V${y - 6}`} opacity={0.7} />
            <Diamond level={finding.level} x={x} y={y} />
            <text className={`${note ? '' : 'finding'} ${way < 0 ? 'end' : ''}`} x={x + 10 * way} y={y + 3.8}>
              <tspan fontWeight={700}>{code}</tspan> {texts[place.text]}
              <tspan fill="var(--ink2)">{tail}</tspan>
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** The first sentence, cut between words to what there is room for; all of it stands in the station and the table. */
function shortened(text: string, most: number): string {
  const sentence = text.replace(/\.$/, '');
  if (sentence.length <= most) return sentence;
  const cut = sentence.slice(0, most);
  return `${cut.slice(0, cut.lastIndexOf(' '))} …`;
}
