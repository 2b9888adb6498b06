import type { PassRecord } from '@bloomrail/engine/stations/stands/record';
import type { LawRow } from '../sheet/laws-model.ts';

const byFlow = (value: number): LawRow => ({ law: 'metal flow', value, within: true, used: true });

/** Force of the horizontal rolls by every law, N; by metal flow first where it computed the pass. */
export function forceRows({ forceLaws, forceLaw, forceFactor, flow, places }: PassRecord): LawRow[] {
  const byLaws = forceLaws.map(({ law, force, within }) => ({
    ...{ law, value: force, within },
    used: !flow && law === forceLaw,
    factor: forceFactor,
  }));
  return flow ? [byFlow(places.middle.force), ...byLaws] : byLaws;
}

/**
 * Spread by every law, m; by metal flow first where it computed the pass. Vertical rolls press the bar narrower: what
 * it leaves with between them is no spread, and stands beside no law.
 */
export function spreadRows({
  spreadLaws,
  spreadLaw,
  spreadFactor,
  flow,
  entry,
  exit,
  places,
}: PassRecord): LawRow[] {
  const byLaws = spreadLaws.map(({ law, spread, within }) => ({
    ...{ law, value: spread, within },
    used: !flow && law === spreadLaw,
    factor: spreadFactor,
  }));
  const { footForce, headForce } = places.middle;
  const isFree = footForce === undefined && headForce === undefined;
  return flow && isFree ? [byFlow(exit.width - entry.width), ...byLaws] : byLaws;
}
