/** How a command ends, for scripts. */
export const exitCode = {
  computed: 0,
  /** With --strict: a finding stands with which the line must not be run. */
  stopped: 1,
  badInput: 2,
  noAnswer: 3,
} as const;
export type ExitCode = (typeof exitCode)[keyof typeof exitCode];
