import { contactLength } from '../contact.ts';
import { fromExponent, remembered } from './spread-law.ts';

/** Hill 1955: S = 0.5 exp(−0.525 b0/L): one half for a narrow bar, nothing for a wide one, as exact theory asks. */
export const hill = fromExponent(
  remembered('Hill', 'Hill 1955', 0.5, 20),
  (draught) => 0.5 * Math.exp((-0.525 * draught.b0) / contactLength(draught)),
);
