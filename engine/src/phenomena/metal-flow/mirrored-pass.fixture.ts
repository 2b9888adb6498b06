import { imagesOf } from './meshing/images.ts';
import { triMeshOf, wholeXy } from './meshing/whole.ts';
import { withImage } from './passes.fixture.ts';
import type { FlowProblem, FlowRoll } from './problem.ts';
import { type QuadMesh, skin } from './quad-mesh.ts';

/** The pass seen from behind: left and right changed, node by node; of two uprights or none, without a line x. */
export function mirroredPass(problem: FlowProblem): FlowProblem {
  return { ...problem, mesh: mirroredMesh(problem.mesh), rolls: problem.rolls.map(changedSides) };
}

/** Nodes keep their numbers; elements and loop run the other way round, so as to stay counter-clockwise. */
function mirroredMesh(mesh: QuadMesh): QuadMesh {
  const last = mesh.loop.length - 1;
  return {
    ...mesh,
    xy: Float64Array.from(mesh.xy, (value, at) => (at % 2 === 0 ? -value : value)),
    quads: turnedOver(mesh.quads),
    loop: Int32Array.from(mesh.loop).reverse(),
    lies: Int32Array.from(
      mesh.loop,
      (_, i) => mesh.lies[(last - 1 - i + mesh.loop.length) % mesh.loop.length],
    ),
  };
}

const turnedOver = (quads: QuadMesh['quads']): Int32Array =>
  Int32Array.from(quads, (_, at) => quads[4 * (at >> 2) + 3 - (at & 3)]);

const otherSide = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' } as const;

function changedSides(roll: FlowRoll): FlowRoll {
  const isUpright = roll.side === 'left' || roll.side === 'right';
  return {
    ...roll,
    side: otherSide[roll.side],
    axis: isUpright ? -roll.axis : roll.axis,
    profile: Float64Array.from(roll.profile, (value, at) => (at % 2 === 0 ? -value : value)),
  };
}

/** The whole section of a pass of which half is computed: the same mesh and its image joined, no line of symmetry. */
export function wholePass(problem: FlowProblem): FlowProblem {
  const { mesh, rolls, temperature, strain } = problem;
  const [{ of }] = imagesOf(mesh);
  const { boundary, part } = triMeshOf(mesh);
  const image = turnedOver(Int32Array.from(mesh.quads, (node) => of[node]));
  return {
    ...problem,
    mesh: {
      xy: wholeXy(mesh, mesh.xy),
      quads: Int32Array.from([...mesh.quads, ...image]),
      loop: Int32Array.from({ length: boundary.length / 2 }, (_, i) => boundary[2 * i]),
      lies: new Int32Array(boundary.length / 2).fill(skin),
      symmetry: {},
    },
    temperature: Float64Array.from(part, (node) => temperature[node]),
    strain: Float64Array.from(part, (node) => strain[node]),
    rolls: rolls.flatMap(withImage),
  };
}
