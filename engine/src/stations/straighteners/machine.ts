import { ok, type Result } from '../../outcome/result.ts';
import { rise } from '../../phenomena/bending/closed-forms.ts';
import { type ColdSection, firstYield, type Plane } from '../../phenomena/bending/cold-section.ts';
import { type RollerLine, rollerLine, stepsPerSpan } from '../../phenomena/bending/rollers.ts';
import {
  curvatureOut,
  offsetSensitivity,
  type Straightened,
  straighten,
} from '../../phenomena/bending/straighten.ts';
import { type Yielded, yieldedAlong } from '../../phenomena/bending/yielded.ts';
import type { StraightenersEquipment } from './equipment.ts';
import type { MachineRecord, RollerRecord } from './record.ts';
import type { StraightenersSettings } from './settings.ts';

/** One machine as it is set. */
export interface Machine {
  readonly line: RollerLine;
  /** m: straightedge on which its sensitivities are told. */
  readonly base: number;
}

export const machinesOf = (
  settings: StraightenersSettings,
  { height, side }: StraightenersEquipment,
): Record<Plane, Machine> => ({
  height: {
    line: rollerLine('height', height.rollers, height.pitch, settings.heightOffsets, settings.heightLast),
    base: 3,
  },
  side: { line: rollerLine('side', side.rollers, side.pitch, settings.sideOffsets), base: 1.5 },
});

/** The bar through both machines; its memory goes along. */
export interface Passed {
  readonly height: Straightened;
  readonly side: Straightened;
}

export function throughBoth(
  section: ColdSection,
  { height, side }: Record<Plane, Machine>,
  near?: Passed,
): Result<Passed> {
  const first = straighten(section, height.line, { near: near?.height });
  if (!first.ok) return first;
  const second = straighten(first.value.section, side.line, { near: near?.side });
  return second.ok ? ok({ height: first.value, side: second.value }) : second;
}

/** The bar as it comes, and all bars of the spread with it. */
export interface OverSpread {
  readonly nominal: Passed;
  readonly all: readonly Passed[];
}

/** The bar as it comes and, one after the other, with its camber at the four corners of the spread. */
export function overSpread(
  section: ColdSection,
  machines: Record<Plane, Machine>,
  { heightSpread, sideSpread }: StraightenersSettings,
): Result<OverSpread> {
  const nominal = throughBoth(section, machines);
  if (!nominal.ok) return nominal;
  const all = [nominal.value];
  const [mean, height, side] = section.strain;
  for (const [up, right] of corners(heightSpread, sideSpread)) {
    const passed = throughBoth(
      { ...section, strain: [mean, height + up, side + right] },
      machines,
      nominal.value,
    );
    if (!passed.ok) return passed;
    all.push(passed.value);
  }
  return ok({ nominal: nominal.value, all });
}

function corners(height: number, side: number): readonly (readonly [number, number])[] {
  if (height === 0 && side === 0) return [];
  return [
    [-height, -side],
    [-height, side],
    [height, -side],
    [height, side],
  ];
}

/**
 * Share of a change of height camber, made by moving the last even roller of the height machine by 0.1 mm, that is left
 * behind the side machine: side bending wipes out about a quarter. 1 where the moved case has no answer.
 */
export function carriedBySide(
  section: ColdSection,
  machines: Record<Plane, Machine>,
  nominal: Passed,
): number {
  const { line, base } = machines.height;
  const offset = Float64Array.from(line.offset);
  offset[offset.length - 1 - (offset.length % 2)] += 1e-4;
  const moved = throughBoth(section, { ...machines, height: { line: { ...line, offset }, base } }, nominal);
  if (!moved.ok) return 1;
  const before = moved.value.height.section.strain[1] - nominal.height.section.strain[1];
  const behind = moved.value.side.section.strain[1] - nominal.side.section.strain[1];
  return Math.abs(before) > 1e-9 ? behind / before : 1;
}

/** The record of one machine: the nominal run point by point, and what leaves over the spread. */
export function machineRecord(
  section: ColdSection,
  { line, base }: Machine,
  nominal: Straightened,
  all: readonly Straightened[],
  speed: number,
): { readonly record: MachineRecord; readonly work: number } {
  const yields = firstYield(section.fibres, section.law, line.plane);
  const yielded = yieldedAlong(section, line, nominal);
  const sensitivity = offsetSensitivity(section, line, nominal);
  const out = all.map(curvatureOut);
  const pitch = line.position[1] - line.position[0];
  const record = {
    firstYieldMoment: yields.moment,
    firstYieldCurvature: yields.curvature,
    rollers: rollersOf(line, nominal, yielded, yields.moment, sensitivity, base),
    along: Array.from(nominal.curvature, (_, point) => (point * pitch) / stepsPerSpan),
    moment: Array.from(yielded.moment, (moment) => moment / yields.moment),
    curvature: Array.from(nominal.curvature),
    yieldedUpper: Array.from(yielded.upper),
    yieldedLower: Array.from(yielded.lower),
    curvatureIn: nominal.curvature[0],
    curvatureOut: curvatureOut(nominal),
    curvatureOutLow: Math.min(...out),
    curvatureOutHigh: Math.max(...out),
    power: yielded.work * speed,
    unstraightenedEnd: 2 * pitch,
    iterations: nominal.iterations,
    residual: nominal.residual * pitch,
  };
  return { record, work: yielded.work };
}

function rollersOf(
  line: RollerLine,
  nominal: Straightened,
  yielded: Yielded,
  yieldMoment: number,
  sensitivity: Float64Array,
  base: number,
): RollerRecord[] {
  return Array.from(line.position, (position, i) => ({
    number: i + 1,
    position,
    offset: pressing(i) * line.offset[i],
    touches: nominal.touching.includes(i),
    force: nominal.press[i],
    moment: nominal.moment[i] / yieldMoment,
    plastified: yielded.share[i * stepsPerSpan],
    sensitivity: rise(pressing(i) * sensitivity[i] * 1e-4, base),
  }));
}

/** Deflection is counted toward the foot: even rollers press that way, odd ones against it. */
const pressing = (index: number): number => (index % 2 ? 1 : -1);
