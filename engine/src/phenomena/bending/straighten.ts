import { solveDense } from '../../numerics/dense.ts';
import type { Field } from '../../outcome/field.ts';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { asColdSection } from './bend.ts';
import { type ColdSection, firstYield } from './cold-section.ts';
import { nextContact } from './contact.ts';
import { fibreSums } from './fibres.ts';
import { layered } from './layers.ts';
import { type Passage, passage } from './passage.ts';
import { exitSensitivity, type MomentSearch, type RollerMoments, rollerMoments } from './roller-moments.ts';
import { kinkMissing, pressForces, type RollerLine, spreadMoments } from './rollers.ts';

/** A section that has passed one machine. Moments N·m and press forces N per roller; press is positive. */
export interface Straightened {
  readonly section: ColdSection;
  readonly moment: Field;
  readonly press: Field;
  /** Numbers (from 0) of the rollers that touch the bar. */
  readonly touching: readonly number[];
  /** 1/m at the points of each span, see `stepsPerSpan`. */
  readonly curvature: Field;
  readonly iterations: number;
  /** rad: largest kink missing at a roller. */
  readonly residual: number;
}

export interface StraightenOptions {
  /** Starts from the answer of nearly the same case. */
  readonly near?: Straightened | undefined;
  /** Stays with the condensed section: for searches. */
  readonly coarse?: boolean;
}

/**
 * Bends a section through a machine: moments with which the bar passes every roller that touches; a roller that would
 * pull is let go, one that the bar would run into is taken back. Solved on layers, whose slopes then serve the full
 * section. Where contact cycles or the moments do not settle there is no answer.
 * Beam with fibre memory; deflections in their exact Galerkin form. Ends shorter than two pitches are outside the model.
 */
export function straighten(
  section: ColdSection,
  line: RollerLine,
  options: StraightenOptions = {},
): Result<Straightened> {
  const yieldMoment = firstYield(section.fibres, section.law, line.plane).moment;
  const coarse = passage(layered(section, line.plane), line);
  const full = options.coarse ? undefined : passage(section, line);
  const forceTolerance = (1e-6 * yieldMoment) / (line.position[1] - line.position[0]);
  const seen = new Set<string>();
  let touching = options.near?.touching ?? Array.from(line.position, (_, i) => i);
  let moment: Field = options.near?.moment ?? elasticMoments(section, line, yieldMoment);
  let iterations = 0;
  while (!seen.has(touching.join())) {
    seen.add(touching.join());
    let solved: Result<RollerMoments> | undefined;
    let next: readonly number[] | undefined;
    for (const bar of full ? [coarse, full] : [coarse]) {
      const slopes = solved?.ok ? solved.value.slopes : undefined;
      solved = rollerMoments(
        bar,
        touching,
        innerOf(moment, touching),
        slopes,
        howClose(yieldMoment, bar === full),
      );
      if (!solved.ok) return solved;
      iterations += solved.value.iterations;
      moment = spreadMoments(line, touching, solved.value.inner);
      next = nextContact(bar.curvature, line, touching, moment, forceTolerance);
      if (next) break;
    }
    if (!next && solved?.ok) {
      return ok(answer(full ?? coarse, line, touching, moment, iterations, solved.value.residual));
    }
    touching = next ?? touching;
  }
  return fail({
    model: 'straightener',
    reason: `Contact does not settle: after ${seen.size} changes the same rollers let go and touch again.`,
    residual: 1,
    iterations,
  });
}

/** Change of the curvature that leaves for each roller's offset, 1/m per m, on the condensed section. */
export function offsetSensitivity(
  section: ColdSection,
  line: RollerLine,
  solved: Straightened,
): Float64Array {
  const yieldMoment = firstYield(section.fibres, section.law, line.plane).moment;
  const bar = passage(layered(section, line.plane), line);
  return exitSensitivity(bar, solved.touching, innerOf(solved.moment, solved.touching), 1e-4 * yieldMoment);
}

/** Curvature that leaves, in the machine's plane, 1/m. */
export const curvatureOut = ({ curvature }: Straightened): number => curvature[curvature.length - 1];

const howClose = (yieldMoment: number, full: boolean): MomentSearch => ({
  tolerance: full ? 1e-8 : 1e-7,
  longestStep: 0.4 * yieldMoment,
  maxIterations: 60,
});

const innerOf = (moment: Field, touching: readonly number[]): Float64Array =>
  Float64Array.from(touching.slice(1, -1), (roller) => moment[roller]);

/** Moments of an elastic beam over the same rollers, cut off a little above first yield: where the search begins. */
function elasticMoments(section: ColdSection, line: RollerLine, yieldMoment: number): Float64Array {
  const { position } = line;
  const inner = position.length - 2;
  const stiffness = section.law.modulus * fibreSums(section.fibres)[line.plane];
  const slopes = new Float64Array(inner * inner);
  const asked = new Float64Array(inner);
  const start = passage(section, line).curvature;
  for (let i = 0; i < inner; i++) {
    asked[i] = -kinkMissing(start, line, i, i + 1, i + 2);
    slopes[i * inner + i] = (position[i + 2] - position[i]) / (3 * stiffness);
    if (i > 0) slopes[i * inner + i - 1] = (position[i + 1] - position[i]) / (6 * stiffness);
    if (i < inner - 1) slopes[i * inner + i + 1] = (position[i + 2] - position[i + 1]) / (6 * stiffness);
  }
  const solved = solveDense(slopes, asked);
  const elastic = solved.ok ? solved.value : asked;
  const most = 1.2 * yieldMoment;
  return Float64Array.of(0, ...elastic.map((m) => Math.max(-most, Math.min(most, m))), 0);
}

function answer(
  bar: Passage,
  line: RollerLine,
  touching: readonly number[],
  moment: Field,
  iterations: number,
  residual: number,
): Straightened {
  return {
    section: asColdSection(bar.section),
    moment,
    press: pressForces(line, moment),
    touching,
    curvature: Float64Array.from(bar.curvature),
    iterations,
    residual,
  };
}
