/** What became of one random pass. */
export interface Outcome {
  readonly seed: number;
  readonly kind: string;
  readonly part: string;
  /** Tangent of the largest bite angle over friction: above 1 the rolls do not take the bar by themselves. */
  readonly bite: number;
  readonly says: string;
  /** CPU time, s. */
  readonly seconds: number;
  readonly energy?: number;
  readonly volumeDrift?: number;
  readonly restarts?: number;
  readonly rejected?: number;
  readonly finite?: boolean;
  readonly reason?: string;
  readonly crash?: string;
}

const isAnswered = ({ energy }: Outcome): boolean => energy !== undefined;
const count = (outcomes: readonly Outcome[], holds: (each: Outcome) => boolean): number =>
  outcomes.filter(holds).length;
const percent = (share: number): string => `${(100 * share).toFixed(2).replace('-', '−')} %`;

export function robustnessTable(all: readonly Outcome[], wanted: number): string {
  const outcomes = [...all].sort((a, b) => a.seed - b.seed);
  const skids = count(outcomes, ({ reason }) => reason?.includes('skid') ?? false);
  const steady = outcomes.length - skids;
  const answered = count(outcomes, isAnswered);
  return `# Random passes by metal flow

\`npx tsx test/studies/metal-flow/robustness.ts\`

${outcomes.length} of ${wanted} passes were run${outcomes.length < wanted ? '; the study was broken off there' : ''}. Pass i is drawn from seed i: flat, box, oval, diamond, universal, knife in turn; friction
0.22 to 0.45, carbon 0.3 to 0.8 %, 950 to 1200 °C, whole, half or quarter of the section. A bite may be drawn up to 1.25 times what
friction takes by itself. Nothing here was compared with a mill.

| | passes |
|---|---|
| answered | ${answered} |
| refused: the rolls skid | ${skids} |
| refused for another reason | ${count(outcomes, ({ reason }) => reason !== undefined) - skids} |
| crash | ${count(outcomes, ({ crash }) => crash !== undefined)} |
| a force, torque, elongation or energy that is not finite | ${count(outcomes, ({ finite }) => finite === false)} |
| answered, of those that do not skid | ${percent(answered / steady)} (wanted: 98 %) |

${kindTable(outcomes)}

${qualityTable(outcomes.filter(isAnswered))}

CPU time of a pass, this machine, shared: ${timesOf(outcomes)}.

## Refused

${refusedTable(outcomes.filter((each) => !isAnswered(each)))}
`;
}

function kindTable(outcomes: readonly Outcome[]): string {
  const rows = [...new Set(outcomes.map(({ kind }) => kind))].map((kind) => {
    const these = outcomes.filter((each) => each.kind === kind);
    const worst = Math.max(0, ...these.map(({ energy = 0 }) => Math.abs(energy)));
    const restarted = count(these, ({ restarts = 0 }) => restarts > 0);
    return `| ${kind} | ${these.length} | ${count(these, isAnswered)} | ${restarted} | ${percent(worst)} |`;
  });
  return `| kind | run | answered | begun again | largest energy error |\n|---|---|---|---|---|\n${rows.join('\n')}`;
}

function qualityTable(answers: readonly Outcome[]): string {
  const beyond = (limit: number) => count(answers, ({ energy = 0 }) => Math.abs(energy) > limit);
  const drifting = count(answers, ({ volumeDrift = 0 }) => Math.abs(volumeDrift) > 0.003);
  return `| of the answers | passes |
|---|---|
| energy off by more than 1 % | ${beyond(0.01)} |
| energy off by more than 3 % (an answer must not be) | ${beyond(0.03)} |
| volume drift beyond 0.3 % of ln λ | ${drifting} |
| begun again with other slices | ${count(answers, ({ restarts = 0 }) => restarts > 0)} |
| a slice march thrown away | ${count(answers, ({ rejected = 0 }) => rejected > 0)} |`;
}

function timesOf(outcomes: readonly Outcome[]): string {
  const times = outcomes.map(({ seconds }) => seconds).sort((a, b) => a - b);
  const at = (share: number) =>
    times[Math.min(times.length - 1, Math.floor(share * times.length))].toFixed(2);
  return `median ${at(0.5)} s, nine of ten within ${at(0.9)} s, longest ${at(1)} s`;
}

function refusedTable(refused: readonly Outcome[]): string {
  const rows = refused.map(
    ({ seed, part, bite, says, reason, crash }) =>
      `| ${seed} | ${part} | ${says} | ${bite.toFixed(2)} | ${reason ?? crash} |`,
  );
  return `| seed | part | pass | bite/μ | why |\n|---|---|---|---|---|\n${rows.join('\n')}`;
}
