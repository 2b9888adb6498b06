/** What other programs use: read a plan, run it, look at one station, one pass or one section. */
export { readCase, runCase } from './line/case.ts';
export { readFlowCase } from './line/flow-case/read-flow-case.ts';
export { writeFlowRecord } from './line/flow-case/record.ts';
export { runFlowCase } from './line/flow-case/run-flow-case.ts';
export { writePlan } from './line/plan.ts';
export { readPlan } from './line/read-plan.ts';
export { writeRecord, writeRun } from './line/records.ts';
export { runLine, runWholeLine } from './line/run-line.ts';
export { outlineOf, profileNamed, profileNames } from './section/profile-library.ts';
export { sectionProperties } from './section/properties.ts';
export { sectionReport } from './section/section-report.ts';
export { gradeNamed, gradeNames } from './steel/grades.ts';
