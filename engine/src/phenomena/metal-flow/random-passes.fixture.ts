import type { Random } from '../../numerics/random.ts';
import { filleted } from '../../section/filleted.ts';
import type { Outline } from '../../section/outline.ts';
import { rectangle } from '../../section/rectangle.ts';
import { turned } from '../../section/transform.ts';
import {
  bothSides,
  type Conditions,
  corner,
  flatPass,
  type Part,
  passOf,
  pointsThrough,
  shidaSteel,
  topRoll,
} from './passes.fixture.ts';
import type { FlowProblem, FlowRoll } from './problem.ts';

/** A pass drawn at random, and what is told of it when it fails. */
export interface DrawnPass {
  readonly kind: PassKind;
  readonly part: Part;
  /** Tangent of the largest bite angle over friction: above 1 the rolls do not take the bar by themselves. */
  readonly bite: number;
  readonly says: string;
  readonly problem: FlowProblem;
}

export const passKinds = ['flat', 'box', 'oval', 'diamond', 'universal', 'knife'] as const;
export type PassKind = (typeof passKinds)[number];

/** One pass of the kind: friction 0.22 to 0.45, carbon 0.3 to 0.8 %, 950 to 1200 °C, whole, half or quarter. */
export function drawnPass(kind: PassKind, random: Random): DrawnPass {
  const draw: Draw = (low, high) => low + (high - low) * random();
  const friction = draw(0.22, 0.45);
  const carbon = draw(0.3, 0.8);
  const temperature = draw(950, 1200);
  const parts: readonly Part[] = kind === 'universal' ? ['half', 'whole'] : ['quarter', 'half', 'whole'];
  const part = parts[Math.floor(random() * parts.length)];
  const nodes = Math.round(nodesOf[part] * draw(0.6, 1.5));
  const slices = Math.round(draw(12, 24));
  const given: Conditions = { part, nodes, temperature, steel: shidaSteel(carbon), wishes: { slices } };
  const { problem, bite, says } = draws[kind](draw, friction, given);
  const about = `${says}, μ ${friction.toFixed(3)}, ${carbon.toFixed(2)} % C, ${temperature.toFixed(0)} °C, ${nodes} nodes, ${slices} slices`;
  return { kind, part, bite: bite / friction, says: about, problem };
}

type Draw = (low: number, high: number) => number;

interface Drawn {
  readonly problem: FlowProblem;
  /** Tangent of the largest bite angle. */
  readonly bite: number;
  readonly says: string;
}

const nodesOf: Readonly<Record<Part, number>> = { quarter: 200, half: 320, whole: 480 };

const draws: Readonly<Record<PassKind, (draw: Draw, friction: number, given: Conditions) => Drawn>> = {
  flat: drawnFlat,
  box: drawnBox,
  oval: drawnOval,
  diamond: drawnDiamond,
  universal: drawnUniversal,
  knife: drawnKnife,
};

/** Draught for a bite angle drawn up to beyond what friction takes by itself, m; not more than `share` of the height. */
function draught(draw: Draw, friction: number, R: number, height: number, share: number): number {
  const angle = Math.atan(friction) * draw(0.3, 1.25);
  return Math.min(2 * R * (1 - Math.cos(angle)), share * height);
}

/** Tangent of the bite angle of a draught. */
const biteOf = (dh: number, R: number): number => Math.tan(Math.acos(1 - dh / (2 * R)));

const mm = (value: number): string => (1e3 * value).toFixed(1);

function drawnFlat(draw: Draw, friction: number, given: Conditions): Drawn {
  const h0 = draw(0.04, 0.3);
  const b0 = h0 * draw(0.6, 3.5);
  const R = draw(0.2, 0.55);
  const h1 = h0 - draught(draw, friction, R, h0, 0.35);
  const speed = draw(1, 4);
  const problem = flatPass({ h0, h1, b0, R, corner: 0.1 * Math.min(h0, b0), speed, friction }, given);
  return {
    problem,
    bite: biteOf(h0 - h1, R),
    says: `flat ${mm(b0)} × ${mm(h0)} → ${mm(h1)}, R ${mm(R)}`,
  };
}

function drawnBox(draw: Draw, friction: number, given: Conditions): Drawn {
  const b0 = draw(0.1, 0.3);
  const h0 = b0 * draw(0.8, 1.25);
  const R = draw(0.3, 0.55);
  const dh = draught(draw, friction, R, h0, 0.3);
  const bottom = (h0 - dh) / 2;
  const gap = 0.08 * bottom;
  const slope = draw(0.1, 0.2);
  const half = (b0 / 2) * draw(0.94, 1.04);
  const parting = half + slope * (bottom - gap);
  const corners = [corner(half, bottom, 0.08 * b0), corner(parting, gap, 0.05 * b0), corner(2 * b0, gap)];
  const problem = passOf(
    rectangle(Math.min(b0, 2 * parting), h0, 0.08 * b0),
    [topRoll(bothSides(corners), bottom + R, R, draw(1, 4), friction)],
    given,
  );
  return {
    problem,
    bite: biteOf(dh, R),
    says: `box ${mm(b0)} × ${mm(h0)} → ${mm(h0 - dh)}, bottom ${mm(2 * half)}, slope ${slope.toFixed(2)}, R ${mm(R)}`,
  };
}

function drawnOval(draw: Draw, friction: number, given: Conditions): Drawn {
  const side = draw(0.02, 0.09);
  const R = draw(0.12, 0.35);
  const dh = draught(draw, friction, R, side, 0.38);
  const [y, x] = [(side - dh) / 2, (side * draw(1.45, 1.9)) / 2];
  const gap = 0.06 * side;
  const arc = arcThrough(x, y - gap, gap);
  const profile = Float64Array.from([-3 * x, gap, ...arc, 3 * x, gap]);
  const roll: FlowRoll = {
    ...{ name: 'top', side: 'top', axis: y + R, turning: draw(2, 8) / R, friction },
    profile,
  };
  return {
    problem: passOf(rectangle(side, side, 0.1 * side), [roll], given),
    bite: biteOf(dh, R),
    says: `square ${mm(side)} → oval ${mm(2 * y)} × ${mm(2 * x)}, R ${mm(R)}`,
  };
}

/** Points of the arc over ±x that rises by `rise` above `base`. */
function arcThrough(x: number, rise: number, base: number): number[] {
  const radius = (x * x + rise * rise) / (2 * rise);
  return Array.from({ length: 49 }, (_, i) => {
    const at = x * (i / 24 - 1);
    return [at, base + rise - radius + Math.sqrt(radius * radius - at * at)];
  }).flat();
}

function drawnDiamond(draw: Draw, friction: number, given: Conditions): Drawn {
  const side = draw(0.03, 0.1);
  const R = draw(0.15, 0.35);
  const rounding = 0.15 * side;
  const bar = turned(rectangle(side, side, rounding), Math.PI / 4);
  const height = Math.SQRT2 * side - 2 * (Math.SQRT2 - 1) * rounding;
  const dh = draught(draw, friction, R, height, 0.25);
  const half = (draw(95, 115) / 360) * Math.PI;
  const blunt = rounding * (1 / Math.sin(half) - 1);
  const apex = (height - dh) / 2 + blunt;
  const gap = 0.05 * side;
  const corners = [corner((apex - gap) * Math.tan(half), gap, 0.05 * side), corner(3 * side, gap)];
  const chain = [...bothSides(corners).slice(0, 2), corner(0, apex, rounding), ...corners];
  return {
    problem: passOf(bar, [topRoll(chain, apex - blunt + R, R, draw(2, 6), friction)], given),
    bite: biteOf(dh, R),
    says: `square ${mm(side)} on edge → diamond ${mm(2 * apex)}, ${((360 * half) / Math.PI).toFixed(0)}°, R ${mm(R)}`,
  };
}

/** The knife that opens a bloom: a wedge of about 90°, pressed in from above and below. */
function drawnKnife(draw: Draw, friction: number, given: Conditions): Drawn {
  const [b0, h0, R] = [draw(0.26, 0.36), draw(0.2, 0.3), draw(0.4, 0.55)];
  const deep = (h0 / 2) * draw(0.06, 0.32);
  const half = (draw(80, 100) / 360) * Math.PI;
  const rounding = draw(0.008, 0.02);
  const tip = h0 / 2 - deep - rounding * (1 / Math.sin(half) - 1);
  const top = h0 / 2 + 0.06;
  const wing = corner((top - tip) * Math.tan(half), top);
  const chain = [corner(-wing.x, wing.y), corner(0, tip, rounding), wing];
  return {
    problem: passOf(
      rectangle(b0, h0, 0.02),
      [topRoll(chain, h0 / 2 - deep + R, R, draw(1, 3), friction)],
      given,
    ),
    bite: biteOf(2 * deep, R),
    says: `knife ${((360 * half) / Math.PI).toFixed(0)}°, ${mm(deep)} deep into ${mm(b0)} × ${mm(h0)}, r ${mm(rounding)}, R ${mm(R)}`,
  };
}

/** A rail blank between two horizontal and two upright rolls, web, foot and head reduced about alike. */
function drawnUniversal(draw: Draw, friction: number, given: Conditions): Drawn {
  const scale = draw(0.8, 1.1);
  const web = draw(0.05, 0.3);
  const foot = web * draw(0.8, 1.2);
  const head = web * draw(0.7, 1.1);
  const blank = railBlank(9 / (1 - web), (21.5 * foot) / (1 - foot), (51 * head) / (1 - head), scale);
  const speed = draw(2, 5);
  const at = (x: number, y: number, radius = 0) =>
    corner(1e-3 * scale * x, 1e-3 * scale * y, 1e-3 * scale * radius);
  const rolls: FlowRoll[] = [
    topRoll(
      [at(8.5, 95), at(30, 9, 14), at(122, 9, 14), at(143.5, 95)],
      1e-3 * scale * 9 + 0.55,
      0.55,
      speed,
      friction,
    ),
    { ...idleRoll('foot roll', 'left', [at(0, -2), at(0, 95)], -0.4), friction },
    {
      ...idleRoll(
        'head roll',
        'right',
        [at(176, -2), at(175.7, 20), at(172.5, 60)],
        1e-3 * scale * 176 + 0.4,
      ),
      friction,
    },
  ];
  return {
    problem: passOf(blank, rolls, given),
    bite: biteOf(2e-3 * scale * (9 / (1 - web) - 9), 0.55),
    says: `universal, scale ${scale.toFixed(2)}, web ${(100 * web).toFixed(0)} %, foot ${(100 * foot).toFixed(0)} %, head ${(100 * head).toFixed(0)} %`,
  };
}

const idleRoll = (
  name: string,
  side: 'left' | 'right',
  corners: Parameters<typeof pointsThrough>[0],
  axis: number,
) => ({ name, side, axis, profile: pointsThrough(corners), turning: 'idle' }) as const;

/** mm before scaling: half the web, and what foot and head are to lose in thickness, a sixth of it at the flanks. */
function railBlank(web: number, foot: number, head: number, scale: number): Outline {
  const [back, crown] = [-0.84 * foot, 176 + 0.9 * head];
  const footRoot = 30 - 0.25 * (web - 9) + 0.16 * foot;
  const headRoot = 122 + 0.25 * (web - 9) - 0.1 * head;
  const upper = [
    [crown, 38, 2],
    [headRoot + 0.25 * (38 - web), 38, 2],
    [headRoot, web, 12],
    [footRoot, web, 12],
    [footRoot - 0.25 * (75 - web), 75, 2],
    [back, 75, 2],
  ];
  const lower = upper.map(([x, y, radius]) => [x, -y, radius]).reverse();
  const corners = [...lower, ...upper].map(([x, y, radius]) =>
    corner(1e-3 * scale * x, 1e-3 * scale * y, 1e-3 * scale * radius),
  );
  return { vertices: filleted(corners, true) };
}
