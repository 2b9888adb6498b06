import { clock, figure } from '../ink/numbers.ts';
import { foremost, type Stop } from './line-model.ts';

/** A station in one breath, for readers that do not see the picture. */
export function stopInWords({ code, title, state, failed, bar, findings }: Stop): string {
  const first = foremost(findings);
  const parts = [`${code}, ${title}`];
  if (failed) parts.push('the model has no answer here');
  if (state === 'absent' || !bar) parts.push('not computed');
  else parts.push(`mean ${figure(bar.mean, 'C')} °C, ${figure(bar.length, 'm')} m`);
  if (state === 'old') parts.push('out of date');
  if (first) parts.push(`${first.finding.level}: ${first.finding.text}`);
  return parts.join('; ');
}

/** The line's own finding in one sentence, under the picture for those who do not see it. */
export function lineInWords(stops: readonly Stop[]): string {
  const bars = stops.flatMap(({ bar }) => (bar ? [bar] : []));
  if (bars.length === 0) return 'The line, not computed yet.';
  const [first, last] = [bars[0], bars[bars.length - 1]];
  return (
    `The bar's way through ${bars.length} of ${stops.length} stations: ` +
    `from ${figure(first.mean, 'C')} °C and ${figure(first.length, 'm')} m ` +
    `to ${figure(last.mean, 'C')} °C and ${figure(last.length, 'm')} m, ${clock(last.clock)} after the furnace door.`
  );
}
