import { type Bite, copyOfSlice, copySlice, type Level } from './bite.ts';
import { type Chain, type ChainStep, chainFor, chainStep, followStep } from './chain/chain.ts';
import { type ChainGain, chainGain, renewChainGain } from './chain/chain-gain.ts';
import type { ChainLink } from './chain/link.ts';
import { energyOf } from './energy.ts';
import { type Balanced, balance } from './entry-speed.ts';
import { march } from './march.ts';
import type { MarchRoom } from './march-room.ts';
import { type Broken, isBroken, type March } from './marched.ts';
import type { EnergyBalance } from './solution.ts';

/** How far the marches of a level have come. */
export interface Settling {
  readonly march: March;
  /** With what it was marched: m³/s, and N at every section. The level itself has gone on since. */
  readonly flow: number;
  readonly pull: Float64Array;
  readonly balanced: Balanced;
  /** Relative change of the flow rate, of the pull over σA, of the exit area. */
  readonly flowChange: number;
  readonly pullChange: number;
  readonly areaChange: number;
  /** What the chain of slices asks for, over the rolls' speed; 0 where sections stay plane. */
  readonly warpingChange: number;
  readonly chained: ChainStep | undefined;
  readonly energy: EnergyBalance;
}

export interface LevelOutcome {
  readonly last: Settling | undefined;
  readonly settled: boolean;
  readonly marches: number;
  readonly rejected: number;
  readonly broken: Broken | undefined;
  readonly cancelled: boolean;
}

export interface LevelWishes {
  readonly most: number;
  readonly extrapolation: number;
  /** Whether a finer level follows. */
  readonly isRough: boolean;
  readonly progress: (share: number) => boolean;
}

/** Limits for a level to count as settled, and beyond which a march is a spike. */
const settledFlow = 1e-3;
const settledPull = 0.02;
const settledArea = 5e-4;
const settledWarping = 3e-3;
const settledEnergy = 5e-3;
const steadyEnergy = 1e-3;
const stillEnergy = 0.01;
const spike = 1.5;

/** Tolerance of marches that are only a step on the way. */
const rough = 3;

/** Marches again and again until speed, pull and exit section no longer change. */
export function marchUntilSettled(
  bite: Bite,
  level: Level,
  room: MarchRoom,
  wishes: LevelWishes,
): LevelOutcome {
  const isCold = level.slices[0].isNew;
  const gain: Gain = { share: damping, last: 0 };
  const chain = bite.layout && chainFor(bite.layout, level.slices.length);
  const byChain = chainGain();
  const energies: number[] = [];
  let last: Settling | undefined;
  let [rejected, extrapolation] = [0, wishes.extrapolation];
  const ended = (marches: number, how: Partial<LevelOutcome> = {}): LevelOutcome => ({
    ...{ last, settled: false, marches, rejected, broken: undefined, cancelled: false },
    ...how,
  });
  for (let j = 0; j < wishes.most; j++) {
    const kept = j > 2 ? level.slices.map((slice) => copyOfSlice(bite, slice)) : undefined;
    const takesOver = !isCold && j === 0;
    const carriesOn = j % 2 === 1 && extrapolation > 0;
    const isFirst = isCold && j === 0;
    const isChained = chain !== undefined && !isFirst && !takesOver;
    const tolerance = carriesOn || wishes.isRough ? rough : 1;
    const mode = { isFirst, takesOver, isChained, tolerance, extrapolation: carriesOn ? extrapolation : 0 };
    const made = march(bite, level, room, mode);
    if (isBroken(made)) return ended(j + 1, { broken: made });
    const balanced = balance(made, level, bite.problem.rolls, exitPullOf(bite, made));
    if (takesOver) continue;
    const now = settlingOf(bite, level, chain, made, balanced, last);
    if (kept && now.pullChange > spike && rejected < mostRejected) {
      kept.forEach((slice, i) => {
        copySlice(slice, level.slices[i]);
      });
      rejected++;
      extrapolation = 0;
      continue;
    }
    last = now;
    const isSteady = Math.abs(now.energy.error - (energies[j - 2] ?? 1)) < steadyEnergy;
    energies[j] = now.energy.error;
    const closes = Math.abs(now.energy.error) < (isSteady ? stillEnergy : settledEnergy);
    if (!carriesOn && j > 0 && isSettled(now) && closes) return ended(j + 1, { settled: true });
    if (!wishes.progress((j + 1) / wishes.most)) return ended(j + 1, { cancelled: true });
    // The very first march knows nothing of friction: what it asks for is not to be believed.
    follow(bite, level, balanced, gain, isCold ? (j === 0 ? 0.03 : 0.25) : 0.04);
    if (chain && isChained) followChain(level, chain, now, byChain);
  }
  return ended(wishes.most);
}

/** Spikes that are thrown away before they are taken for the truth. */
const mostRejected = 2;

const isSettled = ({ flowChange, pullChange, areaChange, warpingChange }: Settling): boolean =>
  flowChange < settledFlow &&
  pullChange < settledPull &&
  areaChange < settledArea &&
  warpingChange < settledWarping;

export const exitPullOf = ({ problem: { tension } }: Bite, { sections }: March): number =>
  (tension?.exit ?? 0) * sections[sections.length - 1].area;

function settlingOf(
  bite: Bite,
  level: Level,
  chain: Chain | undefined,
  made: March,
  balanced: Balanced,
  last: Settling | undefined,
): Settling {
  const { sections } = made;
  const area = sections[sections.length - 1].area;
  let pullChange = 0;
  for (let i = 0; i < sections.length; i++) {
    const off = Math.abs(balanced.pull[i] - level.pull[i]) / (bite.scales.stress * sections[i].area);
    pullChange = Math.max(pullChange, off);
  }
  const links = linksOf(made);
  const chained = chain && links.length > 0 ? chainStep(chain, links) : undefined;
  const lastArea = last?.march.sections[sections.length - 1].area ?? 0;
  return {
    march: made,
    flow: level.flow,
    pull: level.pull.slice(),
    balanced,
    flowChange: Math.abs(balanced.ratio - 1),
    pullChange,
    areaChange: Math.abs(area / lastArea - 1),
    warpingChange: chain ? largest(chained?.warping ?? [1]) / bite.scales.speed : 0,
    chained,
    energy: energyOf(bite, level, made, balanced),
  };
}

/** How much of what the balance asks for is done before the next march: more while it keeps asking for the same. */
interface Gain {
  share: number;
  last: number;
}

const damping = 0.85;

function renew(gain: Gain, wanted: number): void {
  const asksOn = wanted * gain.last > 0 && Math.abs(wanted) > 0.4 * Math.abs(gain.last);
  if (asksOn) gain.share = Math.min(4, 1.6 * gain.share);
  else if (wanted * gain.last < 0) gain.share = Math.max(0.5, 0.5 * gain.share);
  gain.last = wanted;
}

/** Speeds, pulls and turning go most of the way to what the balance asks for; velocities keep up with the bar. */
function follow(
  { problem }: Bite,
  level: Level,
  { ratio, turning, pull }: Balanced,
  gain: Gain,
  most: number,
): void {
  renew(gain, Math.log(ratio));
  const change = Math.max(1 - most, Math.min(1 + most, ratio ** gain.share));
  level.flow *= change;
  for (const slice of level.slices) {
    for (let at = 0; at < slice.velocity.length; at++) slice.velocity[at] *= change;
    slice.along *= change;
  }
  problem.rolls.forEach(({ turning: drive }, r) => {
    if (drive === 'idle') level.turning[r] += damping * (turning[r] - level.turning[r]);
  });
  for (let i = 0; i < pull.length; i++) level.pull[i] += damping * (pull[i] - level.pull[i]);
}

const linksOf = ({ steps }: March): ChainLink[] => steps.flatMap(({ link }) => link ?? []);

const largest = (values: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < values.length; i++) most = Math.max(most, Math.abs(values[i]));
  return most;
};

/** Most that the warping may change at once, over the rolls' speed. */
const mostWarping = 0.01;

/** Warping and velocities go some of the way that the chain of slices asks for. */
function followChain(
  level: Level,
  chain: Chain,
  { march, chained, warpingChange }: Settling,
  gain: ChainGain,
): void {
  if (!chained) return;
  renewChainGain(gain, chained.warping);
  const share = gain.share * Math.min(1, mostWarping / warpingChange);
  followStep(chain, level, linksOf(march), chained, share);
}
