import { gradeNames } from '../../steel/grades.ts';
import { type Issue, issuesOf } from '../../units/issue.ts';
import { CaseRoll } from './case-roll.ts';
import { EnteringSection, outlineOfSection } from './entering-section.ts';
import { FlowCase } from './flow-case.ts';
import { type NumberedRoll, senseOfRoll, senseOfRolls } from './rolls-sense.ts';
import { senseOfSection } from './section-sense.ts';

export type FlowCaseReading =
  | { readonly ok: true; readonly value: FlowCase }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads a case file's content: the case in SI, or every issue at once, of single values and of how they fit. */
export function readFlowCase(content: unknown): FlowCaseReading {
  if (member(content, 'station') !== undefined && member(content, 'model') === undefined)
    return stationCase(content);
  const parsed = FlowCase.safeParse(content);
  const issues = [...(parsed.error ? issuesOf(parsed.error, content) : []), ...senseOf(content)];
  return parsed.success && issues.length === 0 ? { ok: true, value: parsed.data } : { ok: false, issues };
}

/** A handbook case asks other questions: one sentence says more than a list of everything that is missing. */
function stationCase(content: unknown): FlowCaseReading {
  const limit = 'a case with "model": "flow", an entering section and rolls as curves';
  const message = `this is a station case (${String(member(content, 'station'))}), computed by handbook laws; the metal-flow model takes ${limit}`;
  return { ok: false, issues: [{ path: 'model', limit, message }] };
}

/** What no value alone can tell. Looks at the parts that can be read and skips the others. */
function senseOf(content: unknown): Issue[] {
  const symmetry = FlowCase.shape.symmetry.safeParse(member(content, 'symmetry')).data;
  const section = EnteringSection.safeParse(member(content, 'section')).data;
  const ofSection = section ? senseOfSection(section, symmetry) : [];
  const rolls = rollsIn(content);
  const ofEach = rolls.flatMap(senseOfRoll);
  const outline = section && ofSection.length === 0 ? outlineOfSection(section) : undefined;
  const complete = rolls.length > 0 && rolls.length === listed(content).length && ofEach.length === 0;
  return [
    ...ofSection,
    ...ofEach,
    ...(complete && symmetry ? senseOfRolls(rolls, symmetry, outline) : []),
    ...unknownGrade(member(content, 'steel')),
  ];
}

const listed = (content: unknown): unknown[] => {
  const rolls = member(content, 'rolls');
  return Array.isArray(rolls) ? rolls : [];
};

const rollsIn = (content: unknown): NumberedRoll[] =>
  listed(content).flatMap((written, number) => {
    const roll = CaseRoll.safeParse(written).data;
    return roll ? [{ number, roll }] : [];
  });

function unknownGrade(steel: unknown): Issue[] {
  const value = member(steel, 'grade');
  if (typeof value !== 'string' || gradeNames.includes(value)) return [];
  const limit = `one of ${gradeNames.join(', ')}`;
  return [
    { path: 'steel.grade', value, limit, message: `steel.grade is ${value || 'empty'}; allowed: ${limit}` },
  ];
}

const member = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
