import { flattened } from '@bloomrail/engine/section/flatten';
import type { Outline } from '@bloomrail/engine/section/outline';
import type { PassRecord } from '@bloomrail/engine/stations/stands/record';

const [width, height] = [760, 470];

/** The finished rail over the nominal one, and the forming passes with their grooves, as one SVG. */
export function pictureOf(
  title: string,
  nominal: Outline,
  rail: Outline,
  passes: readonly PassRecord[],
): string {
  const upright = (outline: Outline) => polygon(outline, (x, y) => [200 + 2000 * x, 400 - 2000 * y]);
  const small = passes.map((pass, i) => {
    const place = (x: number, y: number): [number, number] => [430 + 1000 * x + 40, 95 + 150 * i - 700 * y];
    const rolls = pass.rolls.map(
      ({ profile }) => `<polyline points="${openPoints(profile, place)}" class="roll"/>`,
    );
    const label = `<text x="420" y="${24 + 150 * i}">${pass.code}: fin ${(1e6 * pass.fin).toFixed(0)} mm²</text>`;
    return `${polygon(pass.exit.outline, place, 'bar')}${rolls.join('')}${label}`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="14">
<title>The example by metal flow, ${title}</title>
<style>.bar{fill:#d9d4cc;stroke:#333}.nominal{fill:none;stroke:#b03a2e;stroke-dasharray:5 3}.roll{fill:none;stroke:#1f4e79}</style>
<clipPath id="passes"><rect x="415" y="0" width="345" height="470"/></clipPath>
<rect width="${width}" height="${height}" fill="#fff"/>
${polygon(rail, (x, y) => [200 + 2000 * x, 400 - 2000 * y], 'bar')}
${upright(nominal).replace('class="bar"', 'class="nominal"')}
<text x="40" y="440">finished at 20 °C (filled), 60E1 (dashed)</text>
<g clip-path="url(#passes)">${small.join('\n')}</g>
</svg>
`;
}

type Place = (x: number, y: number) => readonly [number, number];

function polygon(outline: Outline, place: Place, kind = 'bar'): string {
  return `<polygon points="${points(outline, place)}" class="${kind}"/>`;
}

function points(outline: Outline, place: Place): string {
  const corners = flattened(outline, 1e-4);
  const placed: string[] = [];
  for (let i = 0; i < corners.length; i += 2) {
    placed.push(
      place(corners[i], corners[i + 1])
        .map((value) => value.toFixed(1))
        .join(','),
    );
  }
  return placed.join(' ');
}

/** A roll's profile is open: its last corner does not go back to the first. */
const openPoints = ({ vertices }: Outline, place: Place): string => {
  const { x, y } = vertices[vertices.length - 1];
  return `${points({ vertices: [...vertices, { x, y, bulge: 0 }] }, place)} ${place(x, y)
    .map((value) => value.toFixed(1))
    .join(',')}`;
};
