import type { QuadMesh } from '../quad-mesh.ts';
import { carryAlong } from './carry-along.ts';
import { elementShape } from './element-shape.ts';
import { type Freedom, freedomOf, unevenBy, unevenness } from './freedom.ts';
import { type Moving, moveNode } from './move-node.ts';
import { elementsAround } from './neighbours.ts';
import { type Patch, patchOver } from './patch.ts';

/**
 * Smooths node places in place where elements have become sharp, and carries nodal fields along: one number or more per
 * node, those of a node together. Returns how many nodes moved; 0 means that nothing was touched.
 */
export type Relax = (xy: Float64Array, fields: readonly Float64Array[]) => number;

/** An element whose shape is worse than this is smoothed, with two rings around it … */
const sharp = 0.35;
/** … or below this share of what it was born with, where that was less. */
const shareOfBirth = 0.9;
/** Sweeps over the patch, and when an element is about to fold: below `folding`. */
const [sweeps, moreSweeps, folding] = [4, 12, 0.12];

/**
 * Local smoothing of a mesh that moves with the steel (arbitrary Lagrangian-Eulerian), for any node places of this mesh.
 * Nodes inside go to the mean of the middles of their elements; skin nodes slide parallel to the chord of their
 * neighbours, which keeps the area exactly; corners of the skin that turn more than 35° stay, and nodes on a line of
 * symmetry stay on it. Shape is the smallest corner sine, or how flat an element
 * is pressed; no node makes the worst shape around it worse, unless that stays good.
 */
export function relaxer(mesh: QuadMesh): Relax {
  const quads = Int32Array.from(mesh.quads);
  const nodes = mesh.xy.length / 2;
  const moving: Moving = { quads, around: elementsAround(quads, nodes), freedom: freedomOf(mesh) };
  const floors = Float64Array.from({ length: quads.length / 4 }, (_, k) =>
    Math.min(sharp, shareOfBirth * elementShape(quads, mesh.xy, k)),
  );
  const patch = patchOver(quads, moving.around);
  const before = new Float64Array(2 * nodes);
  return (xy, fields) => {
    const smallest = start(patch, quads, floors, moving.freedom, xy);
    if (patch.size === 0) return 0;
    patch.grow();
    patch.grow();
    before.set(xy);
    for (let sweep = 0; sweep < (smallest < folding ? moreSweeps : sweeps); sweep++) {
      for (let i = 0; i < patch.size; i++) moveNode(moving, xy, patch.nodes[i]);
    }
    return carryAlong(moving, patch, before, xy, fields);
  };
}

/** Puts the nodes of poor elements and of an uneven boundary into the patch; returns the worst shape. */
function start(
  patch: Patch,
  quads: Int32Array,
  floors: Float64Array,
  freedom: Freedom,
  xy: Float64Array,
): number {
  patch.clear();
  let smallest = 1;
  for (let k = 0; k < floors.length; k++) {
    const shape = elementShape(quads, xy, k);
    if (shape < smallest) smallest = shape;
    if (shape < floors[k]) for (let corner = 4 * k; corner < 4 * k + 4; corner++) patch.add(quads[corner]);
  }
  for (const node of freedom.sliding) if (unevenness(freedom, xy, node) > unevenBy) patch.add(node);
  return smallest;
}
