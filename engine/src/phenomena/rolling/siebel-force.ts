import { contactRatio } from './contact.ts';
import { fromFactor, ratioName } from './force-law.ts';

/** Siebel, friction hill cut to its first term: 1 + μL/(2 h_m), mean pressure over 2k (over σ for narrow stock). */
export const siebelForce = fromFactor(
  {
    name: 'Siebel',
    source: 'Siebel 1932, first term of the friction hill',
    status: 'from memory, unconfirmed',
    validity: { [ratioName]: { low: 0.5, high: 5, unit: 'one' } },
  },
  (pass) => 1 + (pass.friction * contactRatio(pass)) / 2,
);
