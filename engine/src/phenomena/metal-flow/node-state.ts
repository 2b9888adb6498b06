import type { Bite } from './bite.ts';

/** What the steel carries along: at each node strain, °C, and J/m³ that work has brought. */
export interface NodeState {
  readonly strain: Float64Array;
  readonly temperature: Float64Array;
  readonly heat: Float64Array;
}

export const stateOf = ({ problem, grid }: Bite): NodeState => ({
  strain: Float64Array.from(problem.strain),
  temperature: Float64Array.from(problem.temperature),
  heat: new Float64Array(grid.nodes),
});

export const copyOfState = ({ strain, temperature, heat }: NodeState): NodeState => ({
  strain: strain.slice(),
  temperature: temperature.slice(),
  heat: heat.slice(),
});
