import type { Field, Indices } from '../../outcome/field.ts';
import type { QuadMesh } from './quad-mesh.ts';

/** A pass that converged. Forces, torques and areas are of the whole section, not of the computed part. SI. */
export interface FlowSolution {
  /** The mesh on entering; sections hold the node places of the same mesh further on. */
  readonly mesh: QuadMesh;
  /** From the first contact to the exit plane: slices + 1 of them. */
  readonly sections: readonly FlowSection[];
  /** Between sections i and i + 1: slices of them. */
  readonly steps: readonly FlowStep[];
  readonly rolls: readonly RollLoads[];
  readonly elongation: number;
  /**
   * Exit speed over the speed of the driven rolls' surface in the middle of the section, less 1; where sections are held
   * plane, corrected for the curvature that they would have.
   */
  readonly forwardSlip: number;
  /** m/s. */
  readonly entrySpeed: number;
  readonly exitSpeed: number;
  /** Of the exit, per node: °C, and equivalent strain gained and remembered. */
  readonly temperature: Field;
  readonly strain: Field;
  /** J/m³ at each node: work of deformation and half of the friction's. */
  readonly heat: Field;
  readonly bending: BendingTendency;
  readonly energy: EnergyBalance;
  readonly quality: FlowQuality;
}

export interface FlowSection {
  /** m before the exit plane. */
  readonly distance: number;
  /** Node places, as in QuadMesh. */
  readonly xy: Field;
  /** m², whole section; m/s. */
  readonly area: number;
  readonly speed: number;
  /** Axial force in the bar, N, whole section, tension positive. */
  readonly pull: number;
  /** °C per node. */
  readonly temperature: Field;
}

export interface FlowStep {
  /** m along the bar. */
  readonly length: number;
  /** Per element: equivalent strain rate 1/s, flow stress Pa, axial shear over shear yield stress. */
  readonly rate: Field;
  readonly flowStress: Field;
  readonly shearShare: Field;
  /** m/s across, two per node; m/s along the bar over the section's mean, one per node. */
  readonly velocity: Field;
  readonly excess: Field;
  /** Nodes in contact, the roll of each, and per node N/m along the bar: pressure and friction. */
  readonly contact: StepContact;
}

export interface StepContact {
  readonly node: Indices;
  readonly roll: Indices;
  /** N per metre of bar, normal to the roll; and Pa over the skin that belongs to the node. */
  readonly force: Field;
  readonly pressure: Field;
  readonly friction: Field;
  /** Axial slip, m/s: bar less roll; negative before the neutral line. */
  readonly slip: Field;
}

export interface RollLoads {
  readonly name: string;
  /** N on the roll, whole section: across its axis (separating), along its axis (lateral). */
  readonly force: number;
  readonly lateral: number;
  /** N·m, and W into the bar. */
  readonly torque: number;
  readonly power: number;
  /** rad/s. */
  readonly turning: number;
  /** m², m; length of the longest line of contact. */
  readonly contactArea: number;
  readonly contactLength: number;
  /** Mean over the contact, and highest, Pa. */
  readonly meanPressure: number;
  readonly highestPressure: number;
  /** Mean distance before the exit plane at which the slip changes sign, m; absent when it does not. */
  readonly neutralLine?: number;
}

/** How an unsymmetric bar wants to leave: by the axial stress that plane sections need at the exit. */
export interface BendingTendency {
  /** N·m about the x axis and about the y axis, whole section; 0 where symmetry forbids. */
  readonly momentX: number;
  readonly momentY: number;
}

/** W. */
export interface EnergyBalance {
  readonly rolls: number;
  readonly tension: number;
  readonly plastic: number;
  readonly friction: number;
  /** (in − out)/in. */
  readonly error: number;
}

export interface FlowQuality {
  readonly nodes: number;
  readonly slices: number;
  readonly marches: number;
  /** Slice marches thrown away for a spike, and passes begun again with other slices: 0 in a sound design. */
  readonly rejected: number;
  readonly restarts: number;
  /** Last changes: of the flow rate (relative), of the pull over σA, of the exit area (relative). */
  readonly flowChange: number;
  readonly pullChange: number;
  readonly areaChange: number;
  /** What the warping of the sections still asks for, over the rolls' speed. */
  readonly warpingChange: number;
  /** ∫ e dx/u against ln(A0/A1), relative to the latter. */
  readonly volumeDrift: number;
  /** Largest axial shear of any element over the shear yield stress; refused when over 1 in 1 % of the bite. */
  readonly largestShear: number;
}
