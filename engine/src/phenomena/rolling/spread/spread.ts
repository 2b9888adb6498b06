import { outsideValidity } from '../../../steel/law.ts';
import { type LawRange, rangeOf } from '../force.ts';
import type { RubbedDraught } from '../pass.ts';
import { bakhtinov } from './bakhtinov.ts';
import { beese } from './beese.ts';
import { ekelundSpread } from './ekelund-spread.ts';
import { elKalaySparling } from './el-kalay-sparling.ts';
import { helmiAlexander } from './helmi-alexander.ts';
import { hill } from './hill.ts';
import { shibahara } from './shibahara.ts';
import { shinokuraTakai } from './shinokura-takai.ts';
import { siebelSpread } from './siebel.ts';
import { sparling } from './sparling.ts';
import { type SpreadLaw, spreadInputs } from './spread-law.ts';
import { tafelSedlaczek } from './tafel-sedlaczek.ts';
import { wusatowski } from './wusatowski.ts';

/**
 * Width after a flat pass, m, by every law of this room. They disagree: for a bloom by a factor of 2.5 in the gain, and
 * no measured rows were at hand to choose by. Used is Sparling, which lies nearest the middle of all; show the range.
 */
export function spreadRange(draught: RubbedDraught): LawRange {
  const laws = spreadLaws.map((law) => ({
    name: law.name,
    value: law.width(draught),
    holds: outsideValidity(law, spreadInputs(draught)).length === 0,
  }));
  return rangeOf(sparling.name, sparling.width(draught), laws);
}

/** Every spread law of the room, for lists and documents. */
export const spreadLaws: readonly SpreadLaw[] = [
  sparling,
  wusatowski,
  ekelundSpread,
  siebelSpread,
  bakhtinov,
  hill,
  helmiAlexander,
  elKalaySparling('smooth, light'),
  elKalaySparling('smooth, heavy'),
  elKalaySparling('rough, light'),
  elKalaySparling('rough, heavy'),
  beese,
  shibahara,
  shinokuraTakai,
  tafelSedlaczek,
];
