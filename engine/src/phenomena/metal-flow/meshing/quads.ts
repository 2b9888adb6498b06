import { fail, ok, type Result } from '../../../outcome/result.ts';
import type { Outline } from '../../../section/outline.ts';
import { type SectionProperties, sectionProperties } from '../../../section/properties.ts';
import { type MeshWishes, triangulate } from '../../../section/triangulate.ts';
import type { QuadMesh, Symmetry } from '../quad-mesh.ts';
import { computedPart } from './computed-part.ts';
import { smallestCornerSine } from './element-shape.ts';
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
/** Corner sine that every element should have; the outline may have sharper corners of its own. */
const wide = 0.3;
/** What sizes are multiplied with where one gave a sharp element: a radius was too small for it. */
const finer = [1, 0.8, 0.65, 0.5];

/**
 * Four-node elements over the computed part of a section: triangles, each split in three. The area is the outline's to
 * round-off, nodes on lines of symmetry stand on them to the last digit, and rows of short edges (an outline that came
 * out of a pass) are meshed as the curve that they stand for. Where an element comes out sharper than it should, smaller
 * sizes are tried. Fails where the outline cannot be meshed or the lines of symmetry do not divide it.
 */
export function quadMesh(
  outline: Outline,
  { symmetry, size, smallest = size / 3 }: QuadWishes,
): Result<QuadMesh> {
  const part = computedPart(outline, symmetry);
  if (!part.ok) return part;
  let best: Sized | undefined;
  for (const share of finer) {
    const mesh = meshOfSize(part.value, symmetry, size * share, smallest * share);
    if (!mesh.ok) return best ? ok(best.mesh) : mesh;
    const sine = smallestCornerSine(mesh.value.quads, mesh.value.xy);
    if (!best || sine > best.sine) best = { mesh: mesh.value, sine };
    if (sine >= wide) break;
  }
  return best && best.sine > 0 ? ok(best.mesh) : tooSharp(size);
}

interface Sized {
  readonly mesh: QuadMesh;
  readonly sine: number;
}

const tooSharp = (size: number) =>
  fail({
    model: 'mesh',
    reason: `Elements fold at a size of ${(1e3 * size).toFixed(1)} mm and at half of it.`,
  });

function meshOfSize(part: Outline, symmetry: Symmetry, size: number, smallest: number): Result<QuadMesh> {
  const smoothed = smoothOutline(part, symmetry, { within: simplification * size, size });
  const mesh = meshOver(smoothed, part, { size, smallest }, symmetry);
  // Smoothing may close a narrow gap; then the outline as it stands has to do.
  return mesh.ok ? mesh : meshOver(part, part, { size, smallest }, symmetry);
}

function meshOver(shape: Outline, part: Outline, wishes: MeshWishes, symmetry: Symmetry): Result<QuadMesh> {
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
  const properties = sectionProperties(part.value);
  if (!(properties.area > 0 && nodes >= 4)) return nothingToMesh(nodes);
  const tried: Trial[] = [];
  let best: Result<QuadMesh> | undefined;
  for (let size = firstSize(properties, nodes); tried.length < mostMeshings; size = nextSize(tried)) {
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

/** Nodes in a square of the mean thickness below which walls decide on their number; found by trial on sections. */
const thin = 15;

/** Nine times the area over the square of the size for bulky sections; thin walls are finer than the size asked for. */
function firstSize({ area, perimeter }: SectionProperties, nodes: number): number {
  const nodesPerThickness = (nodes * 4 * area) / (perimeter * perimeter);
  return Math.sqrt((9 * area) / nodes) * (1 + (thin / nodesPerThickness) ** 2);
}

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
  return last.size * Math.exp(last.excess / Math.min(2, Math.max(0.5, power)));
}

const usualPower = 1.2;

function between(tooFew: Trial, tooMany: Trial): number {
  const share = tooMany.excess / (tooMany.excess - tooFew.excess);
  return tooMany.size * (tooFew.size / tooMany.size) ** Math.min(0.9, Math.max(0.1, share));
}
