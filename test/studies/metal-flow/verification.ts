// The metal-flow solver against exact cases, slip lines, Sims, own full 3-D solutions and published laws; mesh and slices.
//     npx tsx test/studies/metal-flow/verification.ts [blocks|strips|solids|spread|grooves|symmetry|scatter]   one part: printed only
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { blockRows } from './block-rows.ts';
import { grooveRows } from './groove-rows.ts';
import { type Row, tableOf } from './rows.ts';
import { meshed, scatterRows, scatterTable, symmetryRows } from './scatter-rows.ts';
import { solidRows } from './solid-rows.ts';
import { spreadRows } from './spread-rows.ts';
import { stripRows } from './strip-rows.ts';

interface Part {
  readonly title: string;
  readonly rows: readonly Row[];
  readonly after?: string;
}

const parts: Readonly<Record<string, () => Part>> = {
  blocks: () => ({ title: 'One slice: blocks between plates', rows: blockRows() }),
  strips: () => ({ title: 'Plane strain: strips, and moments', rows: stripRows() }),
  solids: () => ({ title: 'Full 3-D solutions', rows: solidRows() }),
  spread: () => ({ title: 'Spread and force of flat passes', rows: spreadRows() }),
  grooves: () => ({ title: 'Ovals and diamonds', rows: grooveRows() }),
  symmetry: () => ({ title: 'Mirror image and whole section', rows: symmetryRows() }),
  scatter,
};

function scatter(): Part {
  const byNodes = [150, 200, 300, 600].map((nodes) => meshed(nodes, 20));
  const bySlices = [10, 12, 16, 24, 28, 32, 40].map((slices) => meshed(300, slices));
  return {
    title: 'Mesh and slices, universal rail pass',
    rows: [
      ...scatterRows('150 to 600 nodes', byNodes),
      ...scatterRows('12 to 40 slices', [byNodes[2], ...bySlices.slice(1)]),
    ],
    after: `Slices are not made thinner than the section can follow: 32 and 40 wished are the same slices taken. 10 are a preview and not held.\n\n${scatterTable([...byNodes, ...bySlices])}`,
  };
}

const written = (name: string, { title, rows, after }: Part): string =>
  [`## ${title}`, `\`npx tsx test/studies/metal-flow/verification.ts ${name}\``, tableOf(rows), after ?? '']
    .filter((block) => block !== '')
    .join('\n\n');

function whole(): string {
  const made = Object.entries(parts).map(([name, make]) => ({ name, part: make() }));
  const held = made.flatMap(({ part }) => part.rows).filter(({ holds }) => holds !== undefined);
  const missed = held.filter(({ holds }) => !holds);
  return `# The metal-flow solver against what is known

\`npx tsx test/studies/metal-flow/verification.ts\`

${held.length - missed.length} of ${held.length} rows hold. A row that misses stays in bold until it holds. Bands without a source of their own are what a trial
of the model reached, with its scatter. Two things were changed after a first look: the mirror image is held to 0.1 %, not 0.01 %, because marches
stop when the speed changes by less than 0.1 %; and the strips have an exponent of 0.01, not 0.05, because Sims knows no rate (at 0.05 forward slip stood 5 to 8 % higher
than his, and the pressure factor at L/h 1.28 held). Nothing here was compared with a mill.

Why rows miss: elements that stick to plates reach the slip lines with about the first power of their size. Sims's arcs near L/h 1 stand 4 to 6 % higher
than his, of which the screened axial shear made about 2 in that trial. The rail runs 0.017 faster before the rolls than in the full solution: it has to leave the
exit plane straight, which the full solution does not ask of it.

${made.map(({ name, part }) => written(name, part)).join('\n\n')}
`;
}

const chosen = process.argv[2];
if (chosen) console.log(written(chosen, parts[chosen]()));
else writeFileSync(fileURLToPath(new URL('./verification.md', import.meta.url)), whole());
