import type { Grade } from '../steel/grade.ts';
import { gradeNamed } from '../steel/grades.ts';
import type { Plan } from './plan.ts';

/** The grade that a plan orders; throws on one that readPlan would have refused. */
export function gradeOf({ order }: Plan): Grade {
  const grade = gradeNamed(order.grade);
  if (!grade) throw new Error(`plan with unknown grade ${order.grade}: it was not read by readPlan`);
  return grade;
}
