import { bench } from 'vitest';
import { gradeNamed } from './grades.ts';
import { heatingLaw } from './heating.ts';
import { pearliteKinetics } from './transformation.ts';

const grade = gradeNamed('R260');
if (!grade) throw new Error('R260 is missing');
const law = heatingLaw(grade);
const kinetics = pearliteKinetics();

function tenThousand(f: (i: number) => number): number {
  let sum = 0;
  for (let i = 0; i < 10_000; i++) sum += f(i);
  return sum;
}

bench('heat content, 20 to 1270 °C, 10 000 times', () => {
  tenThousand((i) => law.enthalpy(20 + i * 0.125));
});
bench('heat capacity, 20 to 1270 °C, 10 000 times', () => {
  tenThousand((i) => law.heatCapacity(20 + i * 0.125));
});
bench('temperature of a heat content, 10 000 times', () => {
  tenThousand((i) => law.temperatureOf(i * 83));
});
bench('rate of pearlite, 10 000 times', () => {
  tenThousand((i) => kinetics.rate(450 + i * 0.025));
});
bench('making the law', () => {
  heatingLaw(grade);
});
