import type { FlowStressLaw } from './flow-stress.ts';
import type { Validity } from './law.ts';

/**
 * Misaka and Yoshimoto 1967, mean deformation resistance of carbon steels from drop-forging tests; coefficients from
 * memory, unconfirmed. Carbon in mass %, up to 1.2. The stress at a strain is the derivative of strain times mean,
 * 1.21 of the mean. It hardens with carbon where Shida hardly does: 143 against 121 MPa at 0.72 % C, 1000 °C, 10 1/s.
 * Outside its range, wide of most rail passes in rate, all factors are carried on.
 */
export function misaka(C: number): FlowStressLaw {
  const constant = 0.126 - 1.75 * C + 0.594 * C * C;
  const slope = 2851 + 2968 * C - 1120 * C * C;
  const mean = (strain: number, rate: number, T: number) =>
    9.80665e6 * Math.exp(constant + slope / (T + 273)) * strain ** strainExponent * rate ** rateExponent;
  return {
    name: 'Misaka',
    source: 'Misaka and Yoshimoto 1967, mean resistance from drop forging',
    status: 'from memory, unconfirmed',
    validity,
    stress: (strain, rate, T) => (1 + strainExponent) * mean(strain, rate, T),
    mean,
    rateExponent: () => rateExponent,
  };
}

const strainExponent = 0.21;
const rateExponent = 0.13;

const validity: Validity = {
  carbon: { low: 0, high: 1.2, unit: 'one' },
  temperature: { low: 750, high: 1200, unit: 'C' },
  rate: { low: 30, high: 200, unit: 'perS' },
  strain: { low: 0, high: 0.5, unit: 'one' },
};
