import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { sectionProperties } from '../../../section/properties.ts';
import { triangulate } from '../../../section/triangulate.ts';
import type { QuadMesh, Symmetry } from '../quad-mesh.ts';
import { computedPart } from './computed-part.ts';
import { matchArea } from './match-area.ts';
import { settleInside } from './settle-inside.ts';
import { sidesOf } from './sides.ts';
import { smoothOutline } from './smooth-outline.ts';
import { splitInThree } from './split-in-three.ts';

export interface QuadWishes {
  /** Edge length of the triangles, each of which becomes three elements half as wide; away from small radii, m. */
  readonly size: number;
  /** Shortest triangle edge asked for at small radii, m; a third of the size unless given. */
  readonly smallest?: number;
  readonly symmetry: Symmetry;
}

/** How far the skin may be from an outline of short edges, as a share of the size. */
const simplification = 0.01;

/**
 * Four-node elements over the computed part of a section: triangles, each split in three. The area is the outline's to
 * round-off, nodes on lines of symmetry stand on them to the last digit, and rows of short edges (an outline that came
 * out of a pass) are meshed as the curve that they stand for. Fails where the outline cannot be meshed or the lines of
 * symmetry do not divide it.
 */
export function quadMesh(outline: Outline, { symmetry, ...wishes }: QuadWishes): Result<QuadMesh> {
  const part = computedPart(outline, symmetry);
  if (!part.ok) return part;
  const { size, smallest = size / 3 } = wishes;
  const smoothed = smoothOutline(part.value, symmetry, { within: simplification * size, size, smallest });
  const mesh = meshOver(smoothed, part.value, wishes, symmetry);
  // Smoothing may close a narrow gap; then the outline as it stands has to do.
  return mesh.ok ? mesh : meshOver(part.value, part.value, wishes, symmetry);
}

function meshOver(
  shape: Outline,
  part: Outline,
  wishes: Omit<QuadWishes, 'symmetry'>,
  symmetry: Symmetry,
): Result<QuadMesh> {
  const triangles = triangulate(shape, wishes);
  if (!triangles.ok) return triangles;
  const { xy, quads, loop } = splitInThree(triangles.value, shape);
  const sides = sidesOf({ xy, quads, loop }, symmetry);
  if (!sides.ok) return sides;
  matchArea(xy, loop, sides.value, sectionProperties(part).area);
  settleInside(xy, quads, loop);
  return ok({ xy, quads, loop, lies: sides.value, symmetry });
}

/** Meshing goes on until the count of nodes is met to this share. */
const nearEnough = 0.07;
const mostMeshings = 4;

/**
 * The mesh of about so many nodes in the computed part: within 15 % where the section allows it, in at most four
 * meshings; else the nearest of these. Thin walls need a number of nodes however coarse the rest is.
 */
export function quadMeshOfAbout(outline: Outline, symmetry: Symmetry, nodes: number): Result<QuadMesh> {
  const part = computedPart(outline, symmetry);
  if (!part.ok) return part;
  const { area } = sectionProperties(part.value);
  if (!(area > 0 && nodes >= 4)) return nothingToMesh(nodes);
  const tried: Trial[] = [];
  let best: Result<QuadMesh> | undefined;
  for (let size = Math.sqrt((9 * area) / nodes); tried.length < mostMeshings; size = nextSize(tried)) {
    const mesh = quadMesh(part.value, { size, symmetry });
    if (!mesh.ok) return best ?? mesh;
    const trial = { size, excess: Math.log(mesh.value.xy.length / 2 / nodes) };
    if (tried.every(({ excess }) => Math.abs(excess) > Math.abs(trial.excess))) best = mesh;
    tried.push(trial);
    if (Math.abs(trial.excess) < nearEnough) break;
  }
  return best ?? nothingToMesh(nodes);
}

const nothingToMesh = (nodes: number) =>
  fail({ model: 'mesh', reason: `The outline encloses no area, or ${nodes} nodes are too few for a mesh.` });

/** A size in m and the logarithm of the nodes it gave over those wanted. */
interface Trial {
  readonly size: number;
  readonly excess: number;
}

/** Nodes go with a power of the size: that of a bulky section at first, then the one found; between two sizes if known. */
function nextSize(tried: readonly Trial[]): number {
  const last = tried[tried.length - 1];
  const tooFew = tried.filter(({ excess }) => excess < 0).sort((p, q) => q.excess - p.excess)[0];
  const tooMany = tried.filter(({ excess }) => excess > 0).sort((p, q) => p.excess - q.excess)[0];
  if (tooFew && tooMany) return between(tooFew, tooMany);
  const before = tried[tried.length - 2];
  const power = before ? (last.excess - before.excess) / Math.log(before.size / last.size) : usualPower;
  return last.size * Math.exp(last.excess / Math.min(2, Math.max(0.7, power)));
}

const usualPower = 1.5;

function between(tooFew: Trial, tooMany: Trial): number {
  const share = tooMany.excess / (tooMany.excess - tooFew.excess);
  return tooMany.size * (tooFew.size / tooMany.size) ** Math.min(0.9, Math.max(0.1, share));
}
