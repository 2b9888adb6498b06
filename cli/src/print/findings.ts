import type { Visit } from '@bloomrail/engine/line/visit';
import type { Finding } from '@bloomrail/engine/outcome/finding';

/** One sign for each level, as in the picture of the line. */
export const signs = { outside: '◆', near: '◈', note: '◇' } as const;
const order = ['outside', 'near', 'note'] as const;

/** Findings in order of level, then of travel; what it is, then what to change. */
export function findingsText(visits: readonly Visit[]): string {
  const all = visits.flatMap(({ code, record }) => record.findings.map((finding) => ({ code, finding })));
  if (all.length === 0) return 'No finding on the line.';
  const sorted = order.flatMap((level) => all.filter(({ finding }) => finding.level === level));
  return sorted.map(({ code, finding }) => line(code, finding)).join('\n');
}

function line(code: string, { level, text, advice, stop, setting }: Finding): string {
  const head = `${`${signs[level]} ${level}`.padEnd(10)} ${code.padEnd(3)} ${text}${stop ? ' Do not run the line like this.' : ''}`;
  const where = setting ? ` (${setting})` : '';
  return advice ? `${head}\n${' '.repeat(15)}${advice}${where}` : `${head}${where}`;
}
