import type { Bar } from '../../bar/bar.ts';
import { balanceOf, heatContent } from '../../bar/heat-content.ts';
import { withPieces } from '../../bar/shorten.ts';
import { snapshotOf } from '../../bar/snapshot.ts';
import { sum } from '../../numerics/sum.ts';
import type { Finding } from '../../outcome/finding.ts';
import { type Failure, fail, ok, type Result } from '../../outcome/result.ts';
import { meanOver } from '../../section/mesh.ts';
import { hotFactor } from '../../steel/expansion.ts';
import { print } from '../../units/unit.ts';
import type { SawEquipment } from './equipment.ts';
import type { SawRecord } from './record.ts';
import type { SawSettings } from './settings.ts';

/**
 * Crops both ends, takes test pieces and cuts the hot bar into pieces that have the wanted lengths when cold.
 * The time of the cuts is counted where the bar waits, in the run-out to the cooling bed.
 */
export function saws(
  bar: Bar,
  settings: SawSettings,
  equipment: SawEquipment,
): Result<{ bar: Bar; record: SawRecord }> {
  const cuts = layOut(bar, settings, equipment);
  if (cuts.hotPieces.length === 0) return fail(nothingLeft(bar, settings));
  const leaving = withPieces(bar, cuts.hotPieces);
  const { hotPieces, ...lengths } = cuts;
  const record: SawRecord = {
    kind: 'saws',
    leaving: snapshotOf(leaving),
    balance: balance(bar, leaving, cuts),
    measures: [],
    findings: findingsOf(cuts, settings, equipment),
    lengthIn: bar.length,
    hotPieces,
    ...lengths,
  };
  return ok({ bar: leaving, record });
}

type Cuts = Pick<
  SawRecord,
  | 'headCrop'
  | 'tailCrop'
  | 'samples'
  | 'kerfs'
  | 'remainder'
  | 'hotPieces'
  | 'coldPieces'
  | 'shrinkage'
  | 'time'
>;

/**
 *   head │crop│sample│ piece 1 │ piece 2 │ … │ remainder │crop│ tail      every │ is one kerf
 * Both crops go first, then samples, then pieces in their order. A bar that is too short gives what is left of it.
 */
function layOut(bar: Bar, settings: SawSettings, { kerf, cutTime }: SawEquipment): Cuts {
  const growth = hotFactor(bar.grade, meanTemperature(bar));
  let [left, kerfs, cuts] = [bar.length, 0, 0];
  const take = (length: number): number => {
    const taken = Math.min(length, left);
    left -= taken;
    return taken;
  };
  const cutOff = (length: number): number => {
    const taken = take(length);
    if (taken > 0) [kerfs, cuts] = [kerfs + take(kerf), cuts + 1];
    return taken;
  };
  const headCrop = cutOff(settings.headCrop);
  const tailCrop = cutOff(settings.tailCrop);
  const samples = sum(Array.from({ length: settings.samples }, () => cutOff(settings.sampleLength)));
  const hotPieces = settings.coldLengths.map((cold) => cutOff(cold * growth)).filter((piece) => piece > 0);
  return {
    headCrop,
    tailCrop,
    samples,
    kerfs,
    remainder: left,
    hotPieces,
    coldPieces: hotPieces.map((piece) => piece / growth),
    shrinkage: 1 - 1 / growth,
    time: cuts * cutTime,
  };
}

const meanTemperature = (bar: Bar): number =>
  sum([bar.head, bar.middle, bar.tail].map(({ temperature }) => meanOver(bar.mesh, temperature))) / 3;

/** What leaves takes its share of the heat along. */
function balance(bar: Bar, leaving: Bar, cuts: Cuts) {
  const perMetre = bar.mass / bar.length;
  const lost = {
    crop: (cuts.headCrop + cuts.tailCrop) * perMetre,
    sample: cuts.samples * perMetre,
    kerf: cuts.kerfs * perMetre,
    remainder: cuts.remainder * perMetre,
  };
  return balanceOf(bar, leaving, lost, { leftWithMass: heatContent(leaving) - heatContent(bar) });
}

function findingsOf(cuts: Cuts, settings: SawSettings, equipment: SawEquipment): Finding[] {
  const wanted = sum(settings.coldLengths);
  const made = sum(cuts.coldPieces);
  const findings: Finding[] = [];
  if (made < wanted - 1e-6) findings.push(tooShort(wanted, made));
  const longest = Math.max(0, ...cuts.hotPieces);
  if (longest > equipment.longestPiece) findings.push(tooLongForBed(longest, equipment.longestPiece));
  if (cuts.remainder > WASTEFUL_REMAINDER) findings.push(wasteful(cuts.remainder));
  return findings;
}

const nothingLeft = (bar: Bar, { coldLengths }: SawSettings): Failure => ({
  model: 'hot saw',
  reason:
    coldLengths.length === 0
      ? 'No piece is wanted of the bar; give at least one cold length.'
      : `Crops, test pieces and kerfs take the whole bar of ${print(bar.length, 'm')}; no piece is left.`,
});

const tooShort = (wanted: number, made: number): Finding => ({
  level: 'outside',
  check: 'bar-too-short',
  text: `Pieces of ${print(made, 'm')} can be cut, ${print(wanted, 'm')} are wanted.`,
  advice: `Charge a bloom ${Math.ceil((wanted / Math.max(made, 1e-3) - 1) * 1000) / 10} % longer, or take ${print(wanted - made, 'm')} off the wanted lengths.`,
  value: made,
  limit: wanted,
  unit: 'm',
  stop: true,
  setting: 'settings.saws.coldLengthsM',
});

const tooLongForBed = (longest: number, limit: number): Finding => ({
  level: 'outside',
  check: 'piece-longer-than-bed',
  text: `Longest piece ${print(longest, 'm')}, the cooling bed takes ${print(limit, 'm')}.`,
  advice: 'Divide the bar at the hot saw.',
  value: longest,
  limit,
  unit: 'm',
  stop: true,
  setting: 'settings.saws.coldLengthsM',
});

const wasteful = (remainder: number): Finding => ({
  level: 'note',
  check: 'long-remainder',
  text: `${print(remainder, 'm')} of good bar are scrapped behind the last piece.`,
  advice: 'Add a piece, or shorten the bloom.',
  value: remainder,
  limit: WASTEFUL_REMAINDER,
  unit: 'm',
  setting: 'settings.saws.coldLengthsM',
});

/** m, common practice, no source: about what one crop takes. */
const WASTEFUL_REMAINDER = 3;
