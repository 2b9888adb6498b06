import type { Field } from '../../outcome/field.ts';
import type { ThermalLaw } from '../../steel/thermal.ts';
import type { PearliteKinetics } from '../../steel/transformation.ts';
import type { SurfaceHeat } from './surface.ts';

/** What conducts, and what it gives to or takes from its surroundings. */
export interface HeatProblem {
  /** kg per metre of bar. The nodes share it by their areas, so that heat closes whatever the meshed area is. */
  readonly massPerMetre: number;
  /** Heat in the steel; with `change`, that of the phase which is there before. */
  readonly law: ThermalLaw;
  readonly change?: PhaseChange;
  readonly surface: SurfaceHeat;
}

/** A change of phase that goes one way, by a state ψ per node that starts at 0 and grows by dψ/dt = rate(T). */
export interface PhaseChange {
  /** Heat in the phase that forms, from the same zero as `HeatProblem.law`. */
  readonly product: ThermalLaw;
  readonly kinetics: Pick<PearliteKinetics, 'rate' | 'rateSlope' | 'share' | 'shareSlope'>;
}

/** The state of a section. psi, one per node, belongs to a phase change; left out, nothing has changed yet. */
export interface HeatState {
  /** °C at each node. */
  readonly temperature: Field;
  readonly psi?: Field;
}

/** The end of a computation that converged. */
export interface Conducted {
  readonly temperature: Float64Array;
  readonly psi: Float64Array;
  /** Share of the phase that formed, 0 to 1, at each node. */
  readonly share: Float64Array;
  /** Heat taken up through each channel of the surface, J per metre of bar; negative when given off. */
  readonly gained: Readonly<Record<string, number>>;
  /** Rise of the heat content less what was taken up, J per metre of bar: what iteration left open. */
  readonly residual: number;
  readonly steps: number;
  readonly iterations: number;
}
