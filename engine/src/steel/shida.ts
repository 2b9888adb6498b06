import type { FlowStressLaw } from './flow-stress.ts';
import type { Validity } from './law.ts';

/**
 * Shida 1969, hot flow stress of carbon steels; coefficients from memory, unconfirmed, but they fit together at the
 * boundary of the two branches. Carbon in mass % (0.07 to 1.2). Two branches meet at 0.95 (C + 0.41)/(C + 0.32),
 * thousands of kelvin: 759 °C for 0.72 % C, so that rails are finished on the austenite branch.
 *
 * Outside: above a strain of 0.7 the hardening stays as it is there; above 100 and 1000 1/s the author's two further
 * rate factors apply (low confidence); temperatures are carried on.
 */
export function shida(carbon: number): FlowStressLaw {
  const law = shidaParts(carbon);
  return {
    name: 'Shida',
    source: 'Shida 1969, for carbon steels',
    status: 'from memory, unconfirmed',
    validity,
    stress: (strain, rate, T) => law.temperature(T) * law.hardening(strain) * law.rate(rate, T),
    mean: (strain, rate, T) => law.temperature(T) * law.meanHardening(strain) * law.rate(rate, T),
    rateExponent: (rate, T) =>
      law.exponent(T) * (1 + (rate > 100 ? 1 / 2.4 : 0) + (rate > 1000 ? 1 / 15 : 0)),
  };
}

/** The factors of the law, for kernels that hold some of them constant: σ = temperature(T)·hardening(ε)·rate(ε̇, T). */
export interface ShidaParts {
  /** Pa, at 10 1/s and hardening 1. */
  readonly temperature: (T: number) => number;
  readonly hardening: (strain: number) => number;
  readonly meanHardening: (strain: number) => number;
  readonly rate: (rate: number, T: number) => number;
  /** m of the rate factor (rate/10)^m, below 100 1/s. */
  readonly exponent: (T: number) => number;
}

export function shidaParts(C: number): ShidaParts {
  const boundary = (0.95 * (C + 0.41)) / (C + 0.32);
  const n = 0.41 - 0.07 * C;
  const unit = 0.28 * 9.80665e6;
  const carbonTerm = 0.01 / (C + 0.05);
  const below = unit * Math.exp((C + 0.32) / (0.19 * (C + 0.41)) - carbonTerm);
  const dip = (0.95 * (C + 0.49)) / (C + 0.42);
  const floor = (C + 0.06) / (C + 0.09);

  const temperature = (T: number) => {
    const K = (T + 273) / 1000;
    if (K >= boundary) return unit * Math.exp(5 / K - carbonTerm);
    return below * (30 * (C + 0.9) * (K - dip) * (K - dip) + floor);
  };
  const exponent = (T: number) => {
    const K = (T + 273) / 1000;
    if (K >= boundary) return (-0.019 * C + 0.126) * K + (0.075 * C - 0.05);
    return (0.081 * C - 0.154) * K + (-0.019 * C + 0.207) + 0.027 / (C + 0.32);
  };
  const rate = (perSecond: number, T: number) => {
    const m = exponent(T);
    const base = (perSecond / 10) ** m;
    if (perSecond <= 100) return base;
    const fast = base * (perSecond / 100) ** (m / 2.4);
    return perSecond <= 1000 ? fast : fast * (perSecond / 1000) ** (m / 15);
  };
  const formula = (strain: number) => 1.3 * (5 * strain) ** n - 1.5 * strain;
  const meanFormula = (strain: number) => (1.3 * (5 * strain) ** n) / (n + 1) - 0.75 * strain;
  const [atLimit, meanAtLimit] = [formula(strainLimit), meanFormula(strainLimit)];
  const hardening = (strain: number) => (strain < strainLimit ? formula(strain) : atLimit);
  const meanHardening = (strain: number) => {
    if (strain < strainLimit) return meanFormula(strain);
    return atLimit + (strainLimit / strain) * (meanAtLimit - atLimit);
  };
  return { temperature, hardening, meanHardening, rate, exponent };
}

const strainLimit = 0.7;

const validity: Validity = {
  carbon: { low: 0.07, high: 1.2, unit: 'one' },
  temperature: { low: 700, high: 1200, unit: 'C' },
  rate: { low: 0.1, high: 100, unit: 'perS' },
  strain: { low: 0, high: strainLimit, unit: 'one' },
};
