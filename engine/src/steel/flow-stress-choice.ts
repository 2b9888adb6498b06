import { type FlowStressLaw, withOwnFactor } from './flow-stress.ts';
import type { Grade } from './grade.ts';
import { misaka } from './misaka.ts';
import { shida } from './shida.ts';

export const flowStressNames = ['shida', 'misaka'] as const;
export type FlowStressName = (typeof flowStressNames)[number];

/** The chosen law for a steel. Neither knows Mn, Si, Cr or V; with those expect a few per cent more. */
export function flowStressOf(grade: Grade, name: FlowStressName = 'shida', factor?: number): FlowStressLaw {
  const law = name === 'shida' ? shida(grade.composition.C) : misaka(grade.composition.C);
  return withOwnFactor(law, factor);
}

/** Between the two laws lie 18 % for a rail steel at 1000 °C and 10 1/s: show this spread until the mill calibrates. */
export const flowStressDoubt = 0.18;
