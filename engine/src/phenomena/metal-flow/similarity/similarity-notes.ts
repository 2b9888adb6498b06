import type { Field } from '../../../outcome/field.ts';
import type { Finding } from '../../../outcome/finding.ts';
import type { FlowProblem } from '../problem.ts';
import { type CompareAt, flowStressOf, hotSide, stressRatio, whereLeadIsKnown } from './model-block.ts';

/**
 * What of similarity a model block lacks: one note for each thing that must be equal and is not, with the difference it
 * makes, and one for what the model does not have at all. Geometry is similar by making (scaledDown).
 *
 * hot, model   the pass on the hot bar and on the block.
 * at           mean strain and rate of the pass, about which hardening and rates are compared.
 */
export const similarityNotes = (
  hot: FlowProblem,
  model: FlowProblem,
  at: CompareAt = whereLeadIsKnown,
): Finding[] => [
  ...frictionNotes(hot, model),
  ...exponentNote(hot, model),
  ...hardeningNote(hot, model, at),
  ...temperatureNote(hot, at),
];

const note = (check: string, text: string, advice: string, value: number, limit: number): Finding => ({
  level: 'note',
  check,
  text,
  advice,
  value,
  limit,
  unit: 'one',
});

function frictionNotes(hot: FlowProblem, model: FlowProblem): Finding[] {
  return hot.rolls.flatMap(({ name, friction, shearLimit = 1 }, i) => {
    const other = model.rolls[i];
    if (other === undefined) return [];
    const [value, most] = [other.friction, other.shearLimit ?? 1];
    if (friction === value && shearLimit === most) return [];
    const text = `Friction on ${name} is ${value} on the block and ${friction} on the hot bar, its share of shear at most ${most} and ${shearLimit}.`;
    return note(
      'similar-friction',
      text,
      'Compare the block with a hot pass computed with the friction of the block.',
      value,
      friction,
    );
  });
}

/** Differences below this share are lost in the doubt of either law. */
const alike = 0.02;

function exponentNote(hot: FlowProblem, model: FlowProblem): Finding[] {
  const [m, own] = [hot, model].map((problem) => {
    const { steel, temperature } = hotSide(problem);
    return steel.exponent(temperature);
  });
  const change = 10 ** (m - own) - 1;
  if (Math.abs(change) < alike) return [];
  const text = `The rate exponent is ${own.toFixed(3)} for the block and ${m.toFixed(3)} for the hot bar: over a tenfold rate their flow stresses part by ${percent(change)}.`;
  return [
    note('similar-rate', text, 'Take the ratio of the flow stresses at the mean rate of the pass.', own, m),
  ];
}

function hardeningNote(hot: FlowProblem, model: FlowProblem, { strain, rate }: CompareAt): Finding[] {
  const [bar, block] = [hotSide(hot), hotSide(model)];
  const middle = stressRatio(bar, block, { strain, rate });
  const parts = [0.5, 1.5].map(
    (share) => stressRatio(bar, block, { strain: share * strain, rate }) / middle - 1,
  );
  const [low, high] = parts;
  const worst = Math.abs(low) > Math.abs(high) ? low : high;
  if (Math.abs(worst) < alike) return [];
  const text = `Hardening differs: from a strain of ${strain.toFixed(2)} to half and one and a half of it the ratio of the flow stresses changes by ${percent(low)} and ${percent(high)}.`;
  return [
    note(
      'similar-hardening',
      text,
      'Take the ratio of the flow stresses at the mean strain of the pass.',
      1 + worst,
      1,
    ),
  ];
}

/** Cold skin and hot core of the bar, and the chill of the rolls: a block at room temperature has none of them. */
function temperatureNote(hot: FlowProblem, at: CompareAt): Finding[] {
  const [low, high] = [least(hot.temperature), -least(Float64Array.from(hot.temperature, (T) => -T))];
  const [cold, warm] = [low, high].map((temperature) => flowStressOf({ steel: hot.steel, temperature }, at));
  const spread = `${low.toFixed(0)} to ${high.toFixed(0)} °C in the bar, flow stress ${percent(cold / warm - 1)} higher at the cold end`;
  const chill = hot.heat ? 'the chill of the rolls' : 'any chill of the rolls';
  const text = `The block has one temperature; these are not in it: ${spread}, and ${chill}.`;
  const advice = 'Compare with a pass computed with the temperatures of the bar.';
  return [note('similar-temperature', text, advice, cold / warm, 1)];
}

const least = (values: Field): number => {
  let found = Number.POSITIVE_INFINITY;
  for (const value of values) found = Math.min(found, value);
  return found;
};

const percent = (share: number): string => `${share < 0 ? '−' : ''}${Math.abs(100 * share).toFixed(0)} %`;
