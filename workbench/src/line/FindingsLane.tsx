import { Diamond } from '../ink/Diamond.tsx';
import { LaneName, type LaneProps } from './Lane.tsx';
import { foremost } from './line-model.ts';
import { placeFindings } from './place-findings.ts';

const rowHeight = 20;
/** Mean width of one letter of the 10.5 px lettering; B612 is wide. */
const letter = 6.1;

/** The most serious finding of each station under it; what has no room is counted, and told in the station. */
export function FindingsLane({ stops, layout, left, right, top, rows }: LaneProps & { rows: number }) {
  const wishes = stops.flatMap((stop, i) => {
    const first = foremost(stop.findings);
    if (!first || stop.state !== 'now') return [];
    const text = shortened(first.finding.text);
    const tail = first.others > 0 ? `, and ${first.others} more` : '';
    const words = `${stop.code} ${text}${tail}`;
    return [
      {
        ...first,
        text,
        tail,
        code: stop.code,
        x: layout.columns[i].middle,
        width: words.length * letter + 18,
      },
    ];
  });
  const ranked = [...wishes].sort((a, b) => rank(a.finding.level) - rank(b.finding.level));
  const placed = placeFindings(ranked, rows, [left, right]);
  const unplaced = placed.filter((place) => !place).length;
  return (
    <g>
      <LaneName
        top={top}
        name="Findings"
        notes={unplaced ? [`${unplaced} more stations`, 'marked by a diamond'] : []}
      />
      {wishes.length === 0 && (
        <text x={left + 4} y={top + 4}>
          {stops.some(({ state }) => state === 'now') ? 'No finding.' : ''}
        </text>
      )}
      {ranked.map(({ code, x, finding, text, tail }, i) => {
        const place = placed[i];
        const y = top + (place ? place.row : 0) * rowHeight;
        if (!place) return <Diamond key={code} level={finding.level} x={x} y={top - 10} size={4} />;
        const way = place.side === 'right' ? 1 : -1;
        return (
          <g key={code}>
            <path className="leader" d={`M${x} ${top - 10}V${y - 6}`} opacity={0.7} />
            <Diamond level={finding.level} x={x} y={y} />
            <text className={way < 0 ? 'finding end' : 'finding'} x={x + 10 * way} y={y + 3.8}>
              <tspan fontWeight={700}>{code}</tspan> {text}
              <tspan fill="var(--ink2)">{tail}</tspan>
            </text>
          </g>
        );
      })}
    </g>
  );
}

const rank = (level: string): number => ['outside', 'near', 'note'].indexOf(level);

/** The first sentence, cut between words to what a lane holds; all of it stands in the station and in the table. */
function shortened(text: string, most = 58): string {
  const sentence = text.replace(/\.$/, '');
  if (sentence.length <= most) return sentence;
  const cut = sentence.slice(0, most);
  return `${cut.slice(0, cut.lastIndexOf(' '))} …`;
}
