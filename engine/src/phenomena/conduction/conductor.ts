import { analyse, type Symbolic } from '../../numerics/ldlt.ts';
import { patternOfElements } from '../../numerics/pattern.ts';
import type { Field, Indices } from '../../outcome/field.ts';
import { nodeAreas, nodeCount, type TriMesh, triangleArea, triangleCount } from '../../section/mesh.ts';
import { type Skin, skinOf } from './surface.ts';

/** What depends on the mesh alone; made once and shared by head, middle and tail, and by all stations that keep it. */
export interface Conductor {
  readonly mesh: TriMesh;
  readonly skin: Skin;
  /** m², a third of the adjoining triangles for each node. */
  readonly areas: Field;
  readonly area: number;
  readonly symbolic: Symbolic;
  /** Place of each triangle's three off-diagonal pairs (01, 12, 20) in the values of the matrix. */
  readonly pairSlot: Indices;
  /** ∇φa·∇φb · triangle area for those pairs: the conduction between two nodes at unit conductivity. */
  readonly pairShape: Field;
}

/** Linear triangles with lumped capacity; any mesh whose triangles run counter-clockwise. */
export function conductor(mesh: TriMesh): Conductor {
  const map = patternOfElements(nodeCount(mesh), mesh.triangles, 3);
  const areas = nodeAreas(mesh);
  return {
    mesh,
    skin: skinOf(mesh),
    areas,
    area: areas.reduce((sum, a) => sum + a, 0),
    symbolic: analyse(map.pattern, mesh.xy),
    pairSlot: pairSlots(map.slot),
    pairShape: pairShapes(mesh),
  };
}

function pairSlots(slot: Indices): Int32Array {
  const pairs = new Int32Array(slot.length / 3);
  for (let t = 0; t < pairs.length / 3; t++) {
    for (let side = 0; side < 3; side++) pairs[3 * t + side] = slot[9 * t + 3 * side + ((side + 1) % 3)];
  }
  return pairs;
}

/** ∇φa·∇φb A = −cot(angle opposite to ab) / 2. */
function pairShapes(mesh: TriMesh): Float64Array {
  const { xy, triangles } = mesh;
  const shapes = new Float64Array(triangles.length);
  for (let t = 0; t < triangleCount(mesh); t++) {
    const fourAreas = 4 * triangleArea(mesh, t);
    for (let side = 0; side < 3; side++) {
      const a = 2 * triangles[3 * t + side];
      const b = 2 * triangles[3 * t + ((side + 1) % 3)];
      const c = 2 * triangles[3 * t + ((side + 2) % 3)];
      const dot = (xy[a] - xy[c]) * (xy[b] - xy[c]) + (xy[a + 1] - xy[c + 1]) * (xy[b + 1] - xy[c + 1]);
      shapes[3 * t + side] = -dot / fourAreas;
    }
  }
  return shapes;
}
