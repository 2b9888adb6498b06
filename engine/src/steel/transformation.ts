import type { Law } from './law.ts';

/**
 * Austenite to pearlite on cooling: Johnson-Mehl-Avrami-Kolmogorov in its isokinetic form, for which Scheil's
 * additivity is exact. One state ψ per point, 0 at the start, carries the whole history:
 *
 *     share X = 1 − exp(−ψⁿ)        dψ/dt = rate(T) = (ln 2)^(1/n) / t50(T)
 *     t50(T) = A / [(Ae1 − T)³ exp(−Q/RT)], A such that t50(nose) is the half time given there
 *
 * T in °C, times in s. Below Ae1 the rate rises to the nose and falls again; at and above Ae1 it is zero.
 * The form is Kirkaldy's, from memory, unconfirmed; its four numbers are typical, not those of a measured grade.
 */
export interface PearliteKinetics extends Law {
  readonly exponent: number;
  /** s to half transformation at a held temperature; infinite at and above Ae1. */
  readonly halfTime: (T: number) => number;
  /** dψ/dt, 1/s. */
  readonly rate: (T: number) => number;
  /** d(dψ/dt)/dT, 1/sK. */
  readonly rateSlope: (T: number) => number;
  /** Share of pearlite, 0 to 1. */
  readonly share: (psi: number) => number;
  /** dX/dψ. */
  readonly shareSlope: (psi: number) => number;
  /** ψ at a share below 1; the inverse of `share`. */
  readonly stateOf: (share: number) => number;
}

export interface KineticsChoice {
  /** Avrami's n. */
  readonly exponent: number;
  /** Ae1, °C. */
  readonly equilibrium: number;
  /** Q, J/mol. */
  readonly activation: number;
  /** °C of the fastest change, and the s to half transformation there. */
  readonly nose: number;
  readonly noseHalfTime: number;
}

/** An air-cooled rail steel without chromium; Q puts the nose at 550 °C. Chromium moves the nose to longer times. */
export const railSteel: KineticsChoice = {
  exponent: 2.2,
  equilibrium: 723,
  activation: 96.5e3,
  nose: 550,
  noseHalfTime: 6,
};

export function pearliteKinetics(choice: KineticsChoice = railSteel): PearliteKinetics {
  const { exponent: n, equilibrium, nose, noseHalfTime } = choice;
  const activated = choice.activation / gasConstant;
  const drive = (T: number) => {
    const under = equilibrium - T;
    return under * under * under * Math.exp(-activated / (T + 273.15));
  };
  const atNose = drive(nose);
  const scale = Math.LN2 ** (1 / n) / (noseHalfTime * atNose);
  const rate = (T: number) => (T < equilibrium ? scale * drive(T) : 0);
  return {
    name: 'Pearlite by Avrami with additivity',
    source: 'Kirkaldy form of the half time; n, Ae1, Q and the 6 s at the nose are typical values',
    status: 'from memory, unconfirmed',
    validity: { temperature: { low: 450, high: equilibrium, unit: 'C' } },
    exponent: n,
    halfTime: (T) => (T < equilibrium ? (noseHalfTime * atNose) / drive(T) : Number.POSITIVE_INFINITY),
    rate,
    rateSlope: (T) =>
      T < equilibrium ? rate(T) * (activated / (T + 273.15) ** 2 - 3 / (equilibrium - T)) : 0,
    share: (psi) => -Math.expm1(-(psi ** n)),
    shareSlope: (psi) => n * psi ** (n - 1) * Math.exp(-(psi ** n)),
    stateOf: (share) => (-Math.log1p(-share)) ** (1 / n),
  };
}

/** J/molK. */
export const gasConstant = 8.314462618;
