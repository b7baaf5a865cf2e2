import type { Run } from "#lib/domain/facts/run.ts";

/** The run that an address names, or the first one. */
export function runNamed(runs: readonly Run[], id: string | string[] | undefined): Run | undefined {
  return runs.find((run) => run.id === id) ?? runs[0];
}
