import { contactRatio } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';

/** Orowan and Pascoe 1946, sticking hot rolling: 0.8 + L/(4 h_m), mean pressure over 2k. */
export const orowanPascoe = fromFactor(
  {
    name: 'Orowan-Pascoe',
    source: 'Orowan and Pascoe 1946',
    status: 'from memory, unconfirmed',
    validity: { [ratioName]: { low: 1, high: 15, unit: 'one' } },
  },
  (pass) => 0.8 + contactRatio(pass) / 4,
);
