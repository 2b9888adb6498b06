import { must } from '../../outcome/result.ts';
import { type Corner, filleted } from '../../section/filleted.ts';
import type { Outline } from '../../section/outline.ts';
import { rectangle } from '../../section/rectangle.ts';
import { shida } from '../../steel/shida.ts';
import { evenMesh } from './even-mesh.fixture.ts';
import { lawSteel } from './law-steel.ts';
import { quadMeshOfAbout } from './meshing/quads.ts';
import type { FlowProblem, FlowRoll, FlowSteel, FlowWishes } from './problem.ts';
import { onLineX, type Symmetry } from './quad-mesh.ts';
import { rollProfile } from './roll-profile.ts';

/** How much of a section is computed: all, y ≥ 0, or x ≥ 0 and y ≥ 0. */
export type Part = 'whole' | 'half' | 'quarter';

export const linesOf: Readonly<Record<Part, Symmetry>> = {
  whole: {},
  half: { y: 0 },
  quarter: { x: 0, y: 0 },
};

/** What stands beside the shapes of a pass. */
export interface Conditions {
  readonly part: Part;
  /** About so many in the computed part. */
  readonly nodes: number;
  readonly steel: FlowSteel;
  /** °C. */
  readonly temperature?: number;
  readonly tension?: NonNullable<FlowProblem['tension']>;
  readonly wishes: FlowWishes;
}

/** A pass of an even bar; the rolls given are those of the upper half, mirrored where the lower half is computed too. */
export function passOf(outline: Outline, upper: readonly FlowRoll[], given: Conditions): FlowProblem {
  const { part, nodes, steel, temperature = 1000, tension, wishes } = given;
  const mesh = must(quadMeshOfAbout(outline, linesOf[part], nodes));
  const even = (value: number) => new Float64Array(mesh.xy.length / 2).fill(value);
  return {
    ...{ mesh, temperature: even(temperature), strain: even(0), steel, wishes },
    rolls: part === 'whole' ? upper.flatMap(withImage) : upper,
    ...(tension ? { tension } : {}),
  };
}

/** A horizontal roll has its image below; an upright one reaches through already. */
export const withImage = (roll: FlowRoll): readonly FlowRoll[] =>
  roll.side === 'top' ? [roll, mirroredRoll(roll)] : [{ ...roll, profile: reachingThrough(roll.profile) }];

export const mirroredRoll = (roll: FlowRoll): FlowRoll => ({
  ...roll,
  name: `${roll.name}, below`,
  side: 'bottom',
  axis: -roll.axis,
  profile: Float64Array.from(roll.profile, (value, i) => (i % 2 === 1 ? -value : value)),
});

/** An upright roll's edge above y = 0, joined to its image below; cut where it crosses the line. */
export function reachingThrough(profile: FlowRoll['profile']): Float64Array {
  const above: [number, number][] = [];
  for (let at = 0; at < profile.length; at += 2) {
    const [x, y, x2, y2] = [profile[at], profile[at + 1], profile[at + 2], profile[at + 3]];
    if (y > 0) above.push([x, y]);
    if (y * y2 < 0) above.push([x - (y / (y2 - y)) * (x2 - x), 0]);
  }
  above.sort(([, a], [, b]) => a - b);
  const below = above.filter(([, y]) => y > 0).map(([x, y]) => [x, -y]);
  return Float64Array.from([...below.reverse(), ...above].flat());
}

/** σ = 100 MPa (rate/10)^0.15: the plain steel of the full solutions. */
export const plainSteel: FlowSteel = powerSteel(100e6, 0.15);

export function powerSteel(stress: number, exponent: number, referenceRate = 10): FlowSteel {
  return {
    name: `${stress / 1e6} MPa (rate/${referenceRate})^${exponent}`,
    strength: () => stress,
    exponent: () => exponent,
    referenceRate,
  };
}

/** Hot steel by Shida, carbon in mass %. */
export const shidaSteel = (carbon: number): FlowSteel => lawSteel(shida(carbon));

/** A driven upper roll through corners x, y (radius), m, its surface at `radius` from the axis running at `speed`, m/s. */
export function topRoll(
  corners: readonly Corner[],
  axis: number,
  radius: number,
  speed: number,
  friction: number,
): FlowRoll {
  return {
    ...{ name: 'top', side: 'top', axis, turning: speed / radius, friction },
    profile: pointsThrough(corners),
  };
}

export const pointsThrough = (corners: readonly Corner[]): Float64Array =>
  rollProfile({ vertices: filleted(corners, false) });

export const corner = (x: number, y: number, radius = 0): Corner => ({ x, y, radius });

/** Corners right of x = 0, and their images left of it, as one chain from left to right. */
export const bothSides = (right: readonly Corner[]): Corner[] => [
  ...right.map(({ x, y, radius }) => corner(-x, y, radius)).reverse(),
  ...right,
];

export interface FlatPass {
  /** m: height before and after, width, roll radius, corner radius. */
  readonly h0: number;
  readonly h1: number;
  readonly b0: number;
  readonly R: number;
  readonly corner?: number;
  /** Roll surface, m/s. */
  readonly speed: number;
  readonly friction: number;
}

export function flatPass(pass: FlatPass, given: Conditions): FlowProblem {
  const { h0, h1, b0, R, speed, friction } = pass;
  const barrel = bothSides([corner(4 * b0 + h0, h1 / 2)]);
  return passOf(
    rectangle(b0, h0, pass.corner ?? 0),
    [topRoll(barrel, h1 / 2 + R, R, speed, friction)],
    given,
  );
}

export interface StripPass {
  /** m: height before and after, roll radius. */
  readonly h0: number;
  readonly h1: number;
  readonly R: number;
  readonly speed: number;
  readonly friction: number;
  /** Elements per half height. */
  readonly rows: number;
}

/** A strip of a very wide bar: its sides are held, so that nothing spreads. Forces are those of `stripWidth`. */
export function stripPass(
  { h0, h1, R, speed, friction, rows }: StripPass,
  { steel, wishes, tension }: Pick<Conditions, 'steel' | 'wishes' | 'tension'>,
): FlowProblem {
  const width = stripWidth(h0, rows);
  const mesh = evenMesh({ width: width / 2, height: h0 / 2, columns: 2, rows, sides: { right: onLineX } });
  const even = (value: number) => new Float64Array(mesh.xy.length / 2).fill(value);
  const barrel = bothSides([corner(width, h1 / 2)]);
  return {
    ...{ mesh, temperature: even(1000), strain: even(0), steel, wishes },
    rolls: [topRoll(barrel, h1 / 2 + R, R, speed, friction)],
    ...(tension ? { tension } : {}),
  };
}

/** m: two columns of square elements on each side of the middle. */
export const stripWidth = (h0: number, rows: number): number => (2 * h0) / rows;
