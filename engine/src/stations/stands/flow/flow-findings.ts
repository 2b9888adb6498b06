import type { Finding } from '../../../outcome/finding.ts';
import { print } from '../../../units/unit.ts';
import type { Flowed } from './flow-pass.ts';

/** Beyond these a solved pass is still doubtful. */
const [doubtfulEnergy, yielding] = [0.01, 1];

/** What a roller should know about how metal flow found the pass. */
export function flowFindings({ solution: { energy, quality } }: Flowed): Finding[] {
  const findings: Finding[] = [];
  const note = (check: string, text: string, advice: string) =>
    findings.push({ level: 'note', check, text, advice });
  if (Math.abs(energy.error) > doubtfulEnergy) {
    note(
      'flow-energy',
      `Power of the rolls and power used differ by ${print(energy.error, 'percent')} in the metal flow.`,
      'Take its loads with that much care, or ask for more nodes and slices.',
    );
  }
  if (quality.restarts + quality.rejected > 0) {
    note(
      'unsound-design',
      `The metal flow settled only after ${quality.restarts} new beginnings and ${quality.rejected} rejected marches.`,
      'The pass asks much at one place: look for a bar wider than its groove, a groove too deep, or a fin.',
    );
  }
  if (quality.largestShear > yielding) {
    note(
      'axial-shear',
      `Friction asks ${print(quality.largestShear, 'one')} of the shear yield stress at one place of the section.`,
      'Pressures beside it are uncertain; the rest of the pass is not.',
    );
  }
  return findings;
}
