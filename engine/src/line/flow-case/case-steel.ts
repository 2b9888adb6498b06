import { z } from 'zod';
import { fail, ok, type Result } from '../../outcome/result.ts';
import { lawSteel } from '../../phenomena/metal-flow/law-steel.ts';
import type { BiteHeat, FlowSteel } from '../../phenomena/metal-flow/problem.ts';
import { density } from '../../steel/expansion.ts';
import type { FlowStressLaw } from '../../steel/flow-stress.ts';
import { flowStressNames, flowStressOf } from '../../steel/flow-stress-choice.ts';
import { gradeNamed } from '../../steel/grades.ts';
import { en1993 } from '../../steel/thermal-en1993.ts';
import { choice, group, optionalQuantity, quantity } from '../../units/group.ts';

const temperature = quantity('C', 'Temperature on entering', 0, 1350);
const strain = optionalQuantity('one', 'Strain still remembered on entering, 0 when left out', 0, 3);

/** What the bar is made of: a steel of the library by one of the handbook laws, or a plain power of the rate. */
export const CaseSteel = choice('law', [
  group({
    law: z.enum(flowStressNames).meta({ title: 'Flow stress law' }),
    grade: z.string().meta({ title: 'Steel grade of the library' }),
    factor: optionalQuantity('one', "The mill's own factor on the law", 0.3, 3),
    temperature,
    strain,
  }),
  group(
    {
      law: z.literal('power'),
      a: quantity('MPa', 'Flow stress at the reference rate', 0.1, 2000),
      b: quantity('perS', 'Reference rate', 0.001, 1000),
      m: quantity('one', 'Exponent of the rate', 0.005, 0.9),
      temperature,
      strain,
    },
    'σ = a (rate/b)^m, the same at every strain and temperature.',
  ),
]);
export type CaseSteel = z.output<typeof CaseSteel>;

/** The steel as the flow model takes it. Fails when the grade is not in the library. */
export function flowSteelOf(given: CaseSteel): Result<FlowSteel> {
  if (given.law === 'power') return ok(powerSteel(given));
  const law = lawOf(given);
  if (!law.ok) return law;
  const steel = lawSteel(law.value);
  return ok({ ...steel, name: `${given.grade}, ${steel.name}` });
}

/** The handbook law of a case. */
export function lawOf(given: Exclude<CaseSteel, { law: 'power' }>): Result<FlowStressLaw> {
  const grade = gradeNamed(given.grade);
  if (!grade) return fail({ model: 'case', reason: `grade ${given.grade} is not in the library` });
  return ok(flowStressOf(grade, given.law, given.factor));
}

const powerSteel = ({ a, b, m }: Extract<CaseSteel, { law: 'power' }>): FlowSteel => ({
  name: `${(a / 1e6).toFixed(0)} MPa (rate/${b})^${m}`,
  strength: () => a,
  exponent: () => m,
  referenceRate: b,
});

/** What the steel carries of heat at its entry temperature, by EN 1993-1-2 whatever the flow stress law. */
export const steelHeat = ({
  temperature: T,
}: CaseSteel): Pick<BiteHeat, 'heatCapacity' | 'conductivity'> => ({
  heatCapacity: density(T) * en1993.heatCapacity(T),
  conductivity: en1993.conductivity(T),
});
