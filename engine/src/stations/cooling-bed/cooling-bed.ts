import type { Bar, ColdState, Place, PlaceName } from '../../bar/bar.ts';
import { balanceOf } from '../../bar/heat-content.ts';
import { snapshotOf } from '../../bar/snapshot.ts';
import { ok, type Result } from '../../outcome/result.ts';
import { bedSteel } from '../../phenomena/bending/bed-steel.ts';
import { type Camber, camber, freeBar, heldBar } from '../../phenomena/bending/camber.ts';
import { curvatureOfRise, rise } from '../../phenomena/bending/closed-forms.ts';
import { fibresOfMesh } from '../../phenomena/bending/fibres.ts';
import { railNodes } from '../../phenomena/bending/rail-nodes.ts';
import { meanOver, type TriMesh } from '../../section/mesh.ts';
import type { Outline } from '../../section/outline.ts';
import { scaled, scaledMesh } from '../../section/transform.ts';
import { hotFactor } from '../../steel/expansion.ts';
import { martensiteStart } from '../../steel/martensite.ts';
import { assumedProof } from '../../steel/yield-curve.ts';
import { type Cooling, cool } from './cooling.ts';
import { coolingTimes, courseOf, fastestCooling, letGo, pearliteAt, turningPoints } from './course.ts';
import { endOffset, energyGained } from './ends.ts';
import type { CoolingBedEquipment } from './equipment.ts';
import { type BedFacts, findingsOf, measuresOf } from './findings.ts';
import { meshedForBed, uprightSection } from './lying-bar.ts';
import type { CoolingBedRecord, SectionPicture } from './record.ts';
import type { CoolingBedSettings } from './settings.ts';

const gravity = 9.81;
/** Camber is followed in this many parts of each step of temperature: 0.01/km from the limit of fine steps. */
const partsOfStep = 2;

/**
 * Cools the bar among its neighbours to straightening temperature and follows how it bends. The section is computed for
 * the middle of the bar, on its hot size; head and tail leave with the offset that their start gives them on the
 * middle's own curve. The bar comes lying (x from the foot to the crown) and leaves upright, cold and shorter.
 */
export function coolingBed(
  hot: Bar,
  settings: CoolingBedSettings,
  equipment: CoolingBedEquipment,
): Result<{ bar: Bar; record: CoolingBedRecord }> {
  const meshed = meshedForBed(hot);
  if (!meshed.ok) return meshed;
  const { bar, correction } = meshed.value;
  const upright = uprightSection(bar);
  const cooled = cool({
    bar,
    mesh: settings.pose === 'standing' ? upright.mesh : bar.mesh,
    air: settings.air,
    emissivity: equipment.emissivity,
    pitch: settings.pitch,
    before: settings.runOut + settings.transfer,
    leaveBelow: settings.leaveBelow,
  });
  if (!cooled.ok) return cooled;
  const bent = bend(bar, upright.mesh, cooled.value, settings, equipment);
  if (!bent.ok) return bent;
  const leaving = leavingBar(bar, upright, cooled.value, bent.value);
  const facts = factsOf(bar, leaving, cooled.value, bent.value, settings, equipment);
  const record: CoolingBedRecord = {
    kind: 'cooling-bed',
    leaving: snapshotOf(leaving),
    balance: balanceOf(hot, leaving, {}, energyGained(bar, leaving, cooled.value)),
    measures: measuresOf(facts, longestPiece(bar), equipment),
    findings: findingsOf(facts, settings, equipment, longestPiece(bar), correction),
    ...facts,
  };
  return ok({ bar: leaving, record });
}

function bend(
  bar: Bar,
  upright: TriMesh,
  cooling: Cooling,
  settings: CoolingBedSettings,
  equipment: CoolingBedEquipment,
): Result<Camber> {
  const { onBed } = cooling;
  const history = {
    times: Array.from(cooling.times).slice(onBed),
    temperature: cooling.temperature.slice(onBed),
    pearlite: cooling.pearlite.slice(onBed),
  };
  const preCamber = curvatureOfRise(settings.preCamber, longestPiece(bar));
  return camber(
    fibresOfMesh(upright),
    bedSteel(assumedProof(bar.grade)),
    history,
    holdOf(bar, settings, equipment),
    [preCamber, 0],
    partsOfStep,
  );
}

/** Weight holds the plane that is upright, friction the one that lies flat, each with what half the bar can give. */
function holdOf(bar: Bar, { support, pose }: CoolingBedSettings, { friction }: CoolingBedEquipment) {
  if (support === 'free') return freeBar;
  if (support === 'held') return heldBar;
  const weight = (weightPerMetre(bar) * (longestPiece(bar) / 2) ** 2) / 2;
  return pose === 'on-side'
    ? { height: friction * weight, side: weight }
    : { height: weight, side: friction * weight };
}

const weightPerMetre = (bar: Bar): number => (gravity * bar.mass) / bar.length;
const longestPiece = (bar: Bar): number => Math.max(...bar.pieces);

/** Upright, at the size of its mean temperature, with what the straightener must know. */
function leavingBar(
  bar: Bar,
  { outline, mesh }: { readonly outline: Outline; readonly mesh: TriMesh },
  cooling: Cooling,
  bent: Camber,
): Bar {
  const last = cooling.temperature.length - 1;
  const place = ({ clock, temperature }: Place): Place => {
    const offset = endOffset(mesh, temperature, cooling);
    return {
      clock: clock + cooling.times[last],
      temperature: Float64Array.from(cooling.temperature[last], (T) => T + offset),
    };
  };
  const places = { head: place(bar.head), middle: place(bar.middle), tail: place(bar.tail) };
  const shrunk = sizeOf(bar, mesh, places) / sizeOf(bar, mesh, bar);
  const cold: ColdState = {
    heightCurvature: bent.released[0],
    sideCurvature: bent.released[1],
    stress: bent.stress,
    pearlite: cooling.pearlite[last],
  };
  return {
    ...bar,
    ...places,
    outline: scaled(outline, shrunk),
    mesh: scaledMesh(mesh, shrunk),
    length: bar.length * shrunk,
    pieces: bar.pieces.map((each) => each * shrunk),
    cold,
  };
}

/** Hot dimension over cold at the mean temperature of the three places. */
function sizeOf(bar: Bar, mesh: TriMesh, { head, middle, tail }: Pick<Bar, PlaceName>): number {
  const mean = [head, middle, tail].reduce(
    (sum, { temperature }) => sum + meanOver(mesh, temperature) / 3,
    0,
  );
  return hotFactor(bar.grade, mean);
}

function factsOf(
  bar: Bar,
  leaving: Bar,
  cooling: Cooling,
  bent: Camber,
  settings: CoolingBedSettings,
  equipment: CoolingBedEquipment,
): BedFacts {
  const mesh = leaving.mesh;
  const course = courseOf(mesh, railNodes(mesh), cooling);
  const length = longestPiece(leaving);
  const [onBedAt, leavesAt] = [cooling.times[cooling.onBed], cooling.times[cooling.times.length - 1]];
  const barsOnBed = Math.max(1, Math.floor(equipment.travel / settings.pitch));
  const [height, side] = bent.released;
  const preCamber = curvatureOfRise(settings.preCamber, longestPiece(bar)) - height;
  const straightBefore = new Array<number>(cooling.onBed).fill(0);
  return {
    ...letGo(course),
    heightCamber: [...straightBefore, ...bent.height, height],
    sideCamber: [...straightBefore, ...bent.side, side],
    coolingTimes: coolingTimes(course),
    reversals: turningPoints(bent.height, 3e-4),
    onBedAt,
    leavesAt,
    bedTimeNeeded: leavesAt - onBedAt,
    bedTimeGiven: barsOnBed * settings.rhythm,
    barsOnBed,
    hotLength: bar.length,
    coldLength: leaving.length,
    finalHeightCamber: height,
    finalSideCamber: side,
    finalRise: rise(height, length),
    preCamberForStraight: preCamber,
    preRiseForStraight: rise(preCamber, longestPiece(bar)),
    hookLength: hookLength(bar, bent, settings, equipment),
    pearliteLeast: pearliteAt(cooling, martensiteStart),
    fastestCooling: fastestCooling(cooling),
    nodeX: Array.from(mesh.xy).filter((_, i) => i % 2 === 0),
    nodeY: Array.from(mesh.xy).filter((_, i) => i % 2 === 1),
    triangles: Array.from(mesh.triangles),
    pictures: pictures(cooling),
    stress: Array.from(bent.stress),
  };
}

/** Where friction on the rest of the bar is too weak to hold the largest moment seen: μ q s² / 2 from the end. */
function hookLength(
  bar: Bar,
  { largestMoment }: Camber,
  { support, pose }: CoolingBedSettings,
  { friction }: CoolingBedEquipment,
): number {
  const half = longestPiece(bar) / 2;
  if (support !== 'friction') return 0;
  const grip = (pose === 'on-side' ? friction : 1) * weightPerMetre(bar);
  return grip > 0 ? Math.min(half, Math.sqrt((2 * largestMoment) / grip)) : half;
}

/** The section on the bed at its start, in the two changes of phase and when it leaves. */
function pictures({ times, temperature, pearlite, onBed }: Cooling): SectionPicture[] {
  const last = times.length - 1;
  const moments = [0, 300, 840, 2400, Number.POSITIVE_INFINITY];
  return moments.map((after) => {
    let row = onBed;
    while (row < last && times[row] - times[onBed] < after) row++;
    return {
      time: times[row],
      temperature: Array.from(temperature[row]),
      pearlite: Array.from(pearlite[row], (share) => Math.min(1, Math.max(0, share))),
    };
  });
}
