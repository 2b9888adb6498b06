import type { Field } from '../outcome/field.ts';
import type { Box } from './box.ts';

/**
 * ∂residual[i] / ∂parameter[j] by forward differences, m × n, row after row; backward where the high bound is near.
 * The step is √ε of the parameter or of its typical size, whichever is larger.
 */
export function differenceJacobian(
  residuals: (parameters: Field) => Field,
  scale: Field,
  { high }: Box,
): (parameters: Field, here: Field) => Float64Array {
  return (parameters, here) => {
    const n = parameters.length;
    const jacobian = new Float64Array(here.length * n);
    const moved = Float64Array.from(parameters);
    for (let j = 0; j < n; j++) {
      const size = Math.sqrt(Number.EPSILON) * Math.max(Math.abs(parameters[j]), scale[j]);
      moved[j] += high && parameters[j] + size > high[j] ? -size : size;
      const there = residuals(moved);
      const step = moved[j] - parameters[j];
      for (let i = 0; i < here.length; i++) jacobian[i * n + j] = (there[i] - here[i]) / step;
      moved[j] = parameters[j];
    }
    return jacobian;
  };
}
