import { type QuadMesh, skin } from '../../phenomena/metal-flow/quad-mesh.ts';
import type { FlowSolution } from '../../phenomena/metal-flow/solution.ts';
import type { Path } from '../../section/outline.ts';

/**
 * Stretches of the skin that a roll touches where the bar leaves the exit plane, as chains of straight lines in the
 * whole section: those of the computed part and their mirror images.
 */
export function touchedBy(r: number, { mesh, sections, steps }: FlowSolution): Path[] {
  const at = nearestToExit(sections.map(({ distance }) => distance));
  const { contact } = steps[Math.max(0, at - 1)];
  const touching = new Set(Array.from(contact.node).filter((_, c) => contact.roll[c] === r));
  const own = chains(mesh, touching).map((nodes) => pathThrough(nodes, sections[at].xy));
  return own.flatMap((path) => withImages(path, mesh));
}

function nearestToExit(distances: readonly number[]): number {
  return distances.reduce((best, d, i) => (Math.abs(d) < Math.abs(distances[best]) ? i : best), 0);
}

/** Runs of neighbouring skin nodes that all touch, two or more. */
function chains({ loop, lies }: QuadMesh, touching: ReadonlySet<number>): number[][] {
  const found: number[][] = [];
  for (let i = 0; i < loop.length; i++) {
    const [from, to] = [loop[i], loop[(i + 1) % loop.length]];
    if (lies[i] !== skin || !touching.has(from) || !touching.has(to)) continue;
    const last = found[found.length - 1];
    if (last && last[last.length - 1] === from) last.push(to);
    else found.push([from, to]);
  }
  return found;
}

const pathThrough = (nodes: readonly number[], xy: FlowSolution['sections'][number]['xy']): Path => ({
  vertices: nodes.map((node) => ({ x: xy[2 * node], y: xy[2 * node + 1], bulge: 0 })),
});

/** A path and its images in the lines of symmetry. */
function withImages(path: Path, { symmetry }: QuadMesh): Path[] {
  const flipped = (paths: readonly Path[], line: 'x' | 'y', at: number): Path[] =>
    paths.map(({ vertices }) => ({
      vertices: vertices.map((vertex) => ({ ...vertex, [line]: 2 * at - vertex[line] })),
    }));
  let all = [path];
  for (const line of ['y', 'x'] as const) {
    const at = symmetry[line];
    if (at !== undefined) all = [...all, ...flipped(all, line, at)];
  }
  return all;
}
