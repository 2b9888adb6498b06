import { placeNames } from '../../bar/bar.ts';
import { deepestNode, snapshotOf, temperaturesOf } from '../../bar/snapshot.ts';
import type { BarSnapshot } from '../../bar/station.ts';
import { contactLength } from '../../phenomena/rolling/contact.ts';
import { spreadRange } from '../../phenomena/rolling/spread/spread.ts';
import type { Outline } from '../../section/outline.ts';
import { sectionProperties } from '../../section/properties.ts';
import type { Stand } from './equipment.ts';
import { filling } from './filling.ts';
import { findingsOf } from './findings.ts';
import { flowFilling } from './flow/flow-filling.ts';
import { flowRecordOf } from './flow/flow-recording.ts';
import type { Happened } from './happened.ts';
import { forceOfLaws, forwardSlipOf, type LoadedElement } from './loads.ts';
import { measuresOf } from './measures.ts';
import type { Prepared } from './prepare.ts';
import type { ElementRecord, PassRecord, PlaceRecord, RollRecord } from './record.ts';
import { byPlace } from './timing.ts';
import type { VisitOfPlace } from './visits.ts';

export function recordOf(happened: Happened): PassRecord {
  const { leaving, settings, stand, prepared, course, visits } = happened;
  const { timing, speed, elongation, bites } = course;
  const { loads } = visits[1];
  const { entry, rolled, groove } = prepared;
  const forwardSlip = happened.flow?.solution.forwardSlip ?? forwardSlipOf(loads);
  const exitSpeed = speed * (1 + forwardSlip);
  const laws = forceOfLaws(visits[1].handbook, stand.model);
  const flowed = happened.flow ? { ...happened.flow, filling: flowFilling(prepared, course) } : undefined;
  const fill = flowed?.filling ?? filling(prepared);
  const stretch = loads.force / stand.stiffness;
  const numbers = {
    laws,
    ...fill,
    rmsPower: loads.power * Math.sqrt(timing.rollingTime / settings.rhythm),
    gapToSet: settings.gap - stretch,
  };
  const measures = measuresOf(happened, numbers);
  const snapshot = snapshotOf(leaving);
  const core = deepestNode(entry.mesh);
  return {
    kind: 'pass',
    leaving: snapshot,
    balance: happened.balance,
    measures,
    findings: findingsOf(happened, measures, flowed?.filling),
    code: settings.code,
    stand: stand.code,
    groove: groove.name,
    family: groove.family,
    turned: (settings.turn * Math.PI) / 180,
    firstEnd: settings.direction === 'forward' ? 'head' : 'tail',
    entry: sideOf(entry.outline, entry.length, exitSpeed / elongation),
    exit: sideOf(leaving.outline, leaving.length, exitSpeed),
    rolls: rollRecords(prepared, stand),
    elements: loads.elements.map(elementRecord),
    places: byPlace((name) => placeRecord(happened, visits[placeNames.indexOf(name)], snapshot, core)),
    forceLaws: laws.laws,
    forceLaw: stand.model.forceLaw,
    forceFactor: stand.model.force,
    spreadLaw: stand.model.spreadLaw,
    spreadFactor: stand.model.spread * (groove.spread ?? 1),
    spreadLaws: spreadLawsOf(rolled.spreads[0], stand.friction),
    elongation,
    mismatch: course.mismatch,
    contactLength: bites.length,
    biteAngle: bites.horizontal,
    fill: fill.fill,
    fin: fill.fin,
    rollTurning: speed / prepared.workingRadius,
    forwardSlip,
    interpass: settings.interpass,
    firstIn: timing.firstIn,
    lastOut: timing.lastOut,
    rollingTime: timing.rollingTime,
    gap: settings.gap,
    stretch,
    gapToSet: numbers.gapToSet,
    rmsPower: numbers.rmsPower,
    ...(flowed ? { flow: flowRecordOf(flowed, course, flowed.filling, visits[1]) } : {}),
    heatCorrection: happened.corrections.reduce(
      (worst, each) => (Math.abs(each) > Math.abs(worst) ? each : worst),
      0,
    ),
  };
}

function sideOf(outline: Outline, length: number, speed: number) {
  const { area, bounds } = sectionProperties(outline);
  return {
    outline,
    area,
    width: bounds.right - bounds.left,
    height: bounds.top - bounds.bottom,
    length,
    speed,
  };
}

function rollRecords({ rolls }: Prepared, stand: Stand): RollRecord[] {
  return rolls.rolls.map(({ name, idle, axis, profile }) => ({
    name,
    idle,
    axis,
    diameter: idle ? (stand.verticalDiameter ?? 0.75) : stand.rollDiameter,
    profile,
  }));
}

function elementRecord({ element, pass, rate, force, pressure }: LoadedElement): ElementRecord {
  const { name, roll, entryArea, exitArea, h0, h1, b0, b1 } = element;
  return {
    name,
    roll,
    entryArea,
    exitArea,
    elongation: exitArea > 0 ? entryArea / exitArea : 1,
    entryThickness: h0,
    exitThickness: h1,
    entryWidth: b0,
    exitWidth: b1,
    contactLength: force > 0 ? contactLength(pass) : 0,
    strainRate: rate,
    temperature: pass.temperature,
    flowStress: pass.flowStress,
    pressure,
    force,
  };
}

function placeRecord(
  { prepared, bar, course, stand }: Happened,
  { name, loads, biting }: VisitOfPlace,
  after: BarSnapshot,
  core: number,
): PlaceRecord {
  const { mesh } = prepared.entry;
  return {
    arriving: temperaturesOf(mesh, bar[name], core),
    biting: temperaturesOf(mesh, { clock: course.timing.bite[name], temperature: biting }, core),
    leaving: after.places[name],
    force: loads.force,
    ...(prepared.rolls.footFace === undefined ? {} : { footForce: loads.footForce }),
    ...(prepared.rolls.headFace === undefined ? {} : { headForce: loads.headForce }),
    torque: loads.torque,
    power: loads.power,
    stretch: loads.force / stand.stiffness,
  };
}

function spreadLawsOf(
  { b0, h0, h1, R }: { b0: number; h0: number; h1: number; R: number },
  friction: number,
) {
  if (!(h1 < h0 - 1e-6)) return [];
  return spreadRange({ b0, h0, h1, R, friction }).laws.map(({ name, value, holds }) => ({
    law: name,
    spread: value - b0,
    within: holds,
  }));
}
