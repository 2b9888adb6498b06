import type { Field, Indices } from '../../outcome/field.ts';
import type { Bite } from './bite.ts';
import type { Settling } from './march-until.ts';
import type { March, MarchStep } from './marched.ts';
import { copies, quadArea, type Symmetry } from './quad-mesh.ts';
import { rollLoads } from './roll-loads.ts';
import type { BendingTendency, FlowSection, FlowSolution, FlowStep } from './solution.ts';
import type { Solved } from './solved.ts';
import { lagOfSkin } from './speed-profile.ts';

/** What a settled pass says of the whole section. */
export function solutionOf(bite: Bite, { level, last, ...effort }: Solved): FlowSolution {
  const { march, balanced, energy } = last;
  const { mesh } = bite.problem;
  const whole = copies(mesh.symmetry);
  const flow = last.flow * balanced.ratio;
  const sections: FlowSection[] = march.sections.map(({ xy, area, temperature }, i) => ({
    distance: level.distance[i],
    xy,
    area: whole * area,
    speed: flow / area,
    pull: whole * balanced.pull[i],
    temperature,
  }));
  const [first, exit] = [march.sections[0], march.sections[march.sections.length - 1]];
  const lag = bite.modes.length > 0 ? 0 : lagOfSkin(bite, march);
  return {
    mesh,
    sections,
    steps: march.steps.map(stepOf),
    rolls: rollLoads(bite, last),
    elongation: first.area / exit.area,
    forwardSlip: (flow / exit.area / surfaceSpeed(bite, march, balanced.turning)) * (1 - lag) - 1,
    entrySpeed: flow / first.area,
    exitSpeed: (flow / exit.area) * (1 - lag),
    temperature: exit.temperature,
    strain: exit.strain,
    heat: exit.heat,
    bending: bendingOf(bite, march),
    energy,
    quality: qualityOf(bite, last, effort),
  };
}

function stepOf({ length, rate, flowStress, shearShare, velocity, excess, touching }: MarchStep): FlowStep {
  return {
    length,
    rate,
    flowStress,
    shearShare,
    velocity,
    excess,
    contact: {
      node: touching.node,
      roll: touching.roll,
      force: touching.pressure,
      pressure: touching.pressure.map((force, c) => force / touching.share[c]),
      friction: touching.friction,
      slip: touching.slip,
    },
  };
}

/** Speed of the driven rolls' surface in the middle of the leaving section, m/s: at the groove's bottom, or on the web. */
function surfaceSpeed(
  { rolls, problem: { mesh } }: Bite,
  { sections }: March,
  turning: ArrayLike<number>,
): number {
  const { xy } = sections[sections.length - 1];
  const middle = middleOf(mesh.quads, xy, mesh.symmetry);
  const speeds = rolls.flatMap(({ roll, profile, across }, r) =>
    roll.turning === 'idle'
      ? []
      : [turning[r] * Math.abs(roll.axis - acrossAt(profile, across, middle[1 - across]))],
  );
  return speeds.length > 0 ? Math.max(...speeds) : Number.POSITIVE_INFINITY;
}

/** Where a roll's outline stands, across its axis, at a place along it. */
function acrossAt(profile: Float64Array, across: number, place: number): number {
  const along = 1 - across;
  for (let i = 0; i + 3 < profile.length; i += 2) {
    const [a, b] = [profile[i + along], profile[i + 2 + along]];
    if ((a - place) * (b - place) > 0 || a === b) continue;
    return profile[i + across] + ((place - a) / (b - a)) * (profile[i + 2 + across] - profile[i + across]);
  }
  return profile[across];
}

function middleOf(quads: Indices, xy: Field, { x, y }: Symmetry): [number, number] {
  let [area, sx, sy] = [0, 0, 0];
  for (let k = 0; 4 * k < quads.length; k++) {
    const own = quadArea(quads, xy, k);
    area += own;
    for (let a = 0; a < 4; a++) {
      sx += (own * xy[2 * quads[4 * k + a]]) / 4;
      sy += (own * xy[2 * quads[4 * k + a] + 1]) / 4;
    }
  }
  return [x ?? sx / area, y ?? sy / area];
}

/** Moments of the stress along the bar over the last fifth of the bite, where it leaves its mark. */
function bendingOf({ grid, problem, length }: Bite, { sections, steps }: March): BendingTendency {
  const { symmetry } = problem.mesh;
  let [momentX, momentY, weight, left] = [0, 0, 0, 0];
  for (let i = steps.length - 1; i >= 0 && left < length / 5; i--) {
    const moments = momentsOf(grid.quads, sections[i].xy, steps[i]);
    momentX += steps[i].length * moments.x;
    momentY += steps[i].length * moments.y;
    weight += steps[i].length;
    left += steps[i].length;
  }
  return {
    momentX: symmetry.y === undefined ? momentX / weight : 0,
    momentY: symmetry.x === undefined ? ((symmetry.y === undefined ? 1 : 2) * momentY) / weight : 0,
  };
}

/** ∫ σ y dA and ∫ σ x dA about the middle of the area, N·m. */
function momentsOf(quads: Indices, xy: Float64Array, { axialStress }: MarchStep) {
  let [area, mx, my, sx, sy, force] = [0, 0, 0, 0, 0, 0];
  for (let k = 0; k < axialStress.length; k++) {
    const [a, b, c, d] = [0, 1, 2, 3].map((corner) => 2 * quads[4 * k + corner]);
    const own = quadArea(quads, xy, k);
    const [x, y] = [(xy[a] + xy[b] + xy[c] + xy[d]) / 4, (xy[a + 1] + xy[b + 1] + xy[c + 1] + xy[d + 1]) / 4];
    area += own;
    sx += own * x;
    sy += own * y;
    force += own * axialStress[k];
    mx += own * axialStress[k] * y;
    my += own * axialStress[k] * x;
  }
  return { x: mx - (force * sy) / area, y: my - (force * sx) / area };
}

function qualityOf(bite: Bite, last: Settling, effort: Pick<Solved, 'marches' | 'rejected' | 'restarts'>) {
  const { march, flowChange, pullChange, areaChange, warpingChange } = last;
  return {
    nodes: bite.grid.nodes,
    slices: march.steps.length,
    ...effort,
    flowChange,
    pullChange,
    areaChange,
    warpingChange,
    volumeDrift: driftOf(march),
    largestShear: largestShear(march),
  };
}

const largestShear = ({ steps }: March): number =>
  steps.reduce((most, { shearShare }) => shearShare.reduce((m, s) => Math.max(m, s), most), 0);

/** ∫ e dt against the logarithm of the areas. */
function driftOf({ sections, steps }: March): number {
  const stretched = steps.reduce((sum, { along, duration }) => sum + along * duration, 0);
  const elongated = Math.log(sections[0].area / sections[sections.length - 1].area);
  return elongated === 0 ? 0 : stretched / elongated - 1;
}
