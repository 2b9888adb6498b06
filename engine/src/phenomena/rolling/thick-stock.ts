import { contactRatio } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';

/**
 * Tselikov and Zyuzin's factor for thick stock, (L/h_m)^−0.4, mean pressure over 2k: 1.32 where the slip-line field
 * gives 1.21 (L/h_m = 0.5). 1 above L/h_m = 1.
 */
export const thickStock = fromFactor(
  {
    name: 'Thick stock, Tselikov-Zyuzin',
    source: 'Tselikov and Zyuzin, power of the contact ratio',
    status: 'from memory, unconfirmed',
    validity: { [ratioName]: { low: 0.05, high: 1, unit: 'one' } },
  },
  (pass) => Math.max(1, contactRatio(pass) ** -0.4),
);
