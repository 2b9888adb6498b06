import { gaussLegendre } from '../../numerics/quadrature.ts';
import { contactLength, draughtOf } from './contact.ts';
import type { FlatPass } from './pass.ts';

/** What the slab method says of a pass, per m of width and per roll. Pressures over 2k; angles rad from the exit plane. */
export interface SlabPass {
  /** Mean pressure over 2k. */
  readonly factor: number;
  readonly neutralAngle: number;
  readonly entryAngle: number;
  /** Pressure over 2k at an angle. */
  readonly pressure: (angle: number) => number;
  /** Lever arm of the force over the contact length. */
  readonly leverArm: number;
}

/**
 * Slab method with slipping friction on the true gap h1 + Rθ²: closed pressures on both sides of the neutral plane,
 * λ = 2√(R/h1) atan(θ√(R/h1)), exit 2k (h/h1) e^{μλ}, entry 2k (h/h0) e^{μ(λ0 − λ)}. Ghosh and Mallik, Manufacturing
 * Science, sample problem 3.2. Only for thin stock (L/h_m > 1) and while μ is small enough to slip. The neutral angle
 * is held at 0 where friction is too weak to pull the bar through.
 */
export function slabMethod(pass: FlatPass): SlabPass {
  const { h0, h1, R, friction } = pass;
  const root = Math.sqrt(R / h1);
  const entryAngle = Math.sqrt(draughtOf(pass) / R);
  const lambda = (angle: number) => 2 * root * Math.atan(angle * root);
  const lambda0 = lambda(entryAngle);
  const lambdaN = Math.max(0, (lambda0 - Math.log(h0 / h1) / friction) / 2);
  const neutralAngle = Math.tan(lambdaN / (2 * root)) / root;
  const height = (angle: number) => h1 + R * angle * angle;
  const exit = (angle: number) => (height(angle) / h1) * Math.exp(friction * lambda(angle));
  const entry = (angle: number) => (height(angle) / h0) * Math.exp(friction * (lambda0 - lambda(angle)));
  const pulledBack = integral(exit, 0, neutralAngle);
  const pulledIn = integral(entry, neutralAngle, entryAngle);
  const L = contactLength(pass);
  return {
    factor: (pulledBack + pulledIn) * (R / L),
    neutralAngle,
    entryAngle,
    pressure: (angle) => (angle < neutralAngle ? exit(angle) : entry(angle)),
    leverArm: (friction * R * (pulledIn - pulledBack)) / (L * (pulledBack + pulledIn)),
  };
}

const gauss = gaussLegendre(16);

function integral(f: (x: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let sum = 0;
  for (let i = 0; i < gauss.points.length; i++) sum += gauss.weights[i] * f(middle + half * gauss.points[i]);
  return sum * half;
}
