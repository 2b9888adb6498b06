import { contactRatio } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';

/** Ford and Alexander's straight line for sticking hot rolling: 0.785 + 0.25 L/h_m, mean pressure over 2k. */
export const fordAlexander = fromFactor(
  {
    name: 'Ford-Alexander',
    source: 'Ford and Alexander 1963, approximation of the sticking solution',
    status: 'from memory, unconfirmed',
    validity: { [ratioName]: { low: 1, high: 15, unit: 'one' } },
  },
  (pass) => 0.785 + 0.25 * contactRatio(pass),
);
