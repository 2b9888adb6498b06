import { solveDense } from '../../numerics/dense.ts';
import type { Field } from '../../outcome/field.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { asColdSection } from './bend.ts';
import { type ColdSection, firstYield } from './cold-section.ts';
import { type Closeness, closeness, type Passing, settledContact } from './contact.ts';
import { fibreSums } from './fibres.ts';
import { layered } from './layers.ts';
import { type Passage, passage } from './passage.ts';
import { exitSensitivity, type RollerMoments, rollerMoments } from './roller-moments.ts';
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
  /** Of the moments, with all sets of touching rollers that were tried on the section that answers. */
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
 * pull is let go, one that the bar would run into is taken back. Searched on layers, whose answer and slopes then serve
 * the full section; which rollers touch, the full section decides. Where contact or moments do not settle there is no
 * answer. Beam with fibre memory; deflections in their exact Galerkin form; rollers do not give way, so offsets are
 * positions under load. Ends shorter than two pitches are outside the model.
 */
export function straighten(
  section: ColdSection,
  line: RollerLine,
  options: StraightenOptions = {},
): Result<Straightened> {
  const machine = { line, section, yieldMoment: firstYield(section.fibres, section.law, line.plane).moment };
  const layers = passage(layered(section, line.plane), line);
  const start = options.near ?? fromNothing(machine);
  const guess = onLayers(machine, layers, start);
  if (options.coarse) return guess.ok ? ok(straightened(layers, line, guess.value)) : guess;
  const bar = passage(section, line);
  const passing = onFibres(machine, bar, layers, guess.ok ? guess.value : start);
  return passing.ok ? ok(straightened(bar, line, passing.value)) : passing;
}

/** One machine and the section that enters it; moment at first yield in N·m. */
interface Entering {
  readonly line: RollerLine;
  readonly section: ColdSection;
  readonly yieldMoment: number;
}

type Start = Pick<Passing, 'touching' | 'moment'>;
type OnLayers = Passing & Pick<RollerMoments, 'slopes'>;

const fromNothing = ({ section, line, yieldMoment }: Entering): Start => ({
  touching: Array.from(line.position, (_, i) => i),
  moment: elasticMoments(section, line, yieldMoment),
});

function onLayers(machine: Entering, layers: Passage, start: Start): Result<OnLayers> {
  return settledContact(machine.line, start, closeOf(machine, kinkTolerance.layers), (touching, moment) =>
    passed(machine, layers, touching, moment, kinkTolerance.layers),
  );
}

/** Every set of touching rollers is passed on layers first, for moments near the answer and for the slopes. */
function onFibres(
  machine: Entering,
  bar: Passage,
  layers: Passage,
  start: Start | OnLayers,
): Result<Passing> {
  return settledContact(machine.line, start, closeOf(machine, kinkTolerance.fibres), (touching, moment) => {
    const known = 'slopes' in start && touching === start.touching ? ok(start) : undefined;
    const guess = known ?? passed(machine, layers, touching, moment, kinkTolerance.layers);
    const from = guess.ok ? guess.value : { moment, slopes: undefined };
    return passed(machine, bar, touching, from.moment, kinkTolerance.fibres, from.slopes);
  });
}

/** rad: kinks missing by less are met. */
const kinkTolerance = { layers: 1e-7, fibres: 1e-8 };

/** Contact cannot be told more finely than kinks are met: five times their worth over one pitch. */
const closeOf = ({ line, section }: Entering, kink: number): Closeness =>
  closeness(5 * kink * (line.position[1] - line.position[0]), bendingStiffness(section, line), line);

/** Moments with which the bar passes these rollers, and the slopes they were found with. */
function passed(
  { line, yieldMoment }: Entering,
  bar: Passage,
  touching: readonly number[],
  moment: Field,
  tolerance: number,
  slopes?: Float64Array,
): Result<OnLayers> {
  const search = { tolerance, longestStep: 0.4 * yieldMoment, maxIterations: 60 };
  const solved = rollerMoments(bar, touching, innerOf(moment, touching), slopes, search);
  if (!solved.ok) return solved;
  const { inner, ...rest } = solved.value;
  return ok({ ...rest, touching, moment: spreadMoments(line, touching, inner), curvature: bar.curvature });
}

/**
 * Change of the curvature that leaves for each roller's offset, 1/m per m. On the full section: layers forget what the
 * other plane's machine left in their fibres, and can miss even the sign where the first rollers bend hard.
 */
export function offsetSensitivity(
  section: ColdSection,
  line: RollerLine,
  { touching, moment }: Straightened,
): Float64Array {
  const step = 1e-4 * firstYield(section.fibres, section.law, line.plane).moment;
  return exitSensitivity(passage(section, line), touching, innerOf(moment, touching), step);
}

/** Curvature that leaves, in the machine's plane, 1/m. */
export const curvatureOut = ({ curvature }: Straightened): number => curvature[curvature.length - 1];

const innerOf = (moment: Field, touching: readonly number[]): Float64Array =>
  Float64Array.from(touching.slice(1, -1), (roller) => moment[roller]);

/** Moments of an elastic beam over the same rollers, cut off a little above first yield: where the search begins. */
function elasticMoments(section: ColdSection, line: RollerLine, yieldMoment: number): Float64Array {
  const { position } = line;
  const inner = position.length - 2;
  const stiffness = bendingStiffness(section, line);
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

/** EI in the machine's plane, N·m². */
const bendingStiffness = ({ law, fibres }: ColdSection, { plane }: RollerLine): number =>
  law.modulus * fibreSums(fibres)[plane];

/** The answer, in copies that a next run leaves alone. */
const straightened = (bar: Passage, line: RollerLine, passing: Passing): Straightened => ({
  section: asColdSection(bar.section),
  moment: passing.moment,
  press: pressForces(line, passing.moment),
  touching: passing.touching,
  curvature: Float64Array.from(passing.curvature),
  iterations: passing.iterations,
  residual: passing.residual,
});
