import type { Job } from "#lib/domain/facts/job.ts";
import type { Act } from "./act.ts";

/** A job that waits for the worker, asked for by whoever acts. */
export function waitingJob(
  act: Act,
  { lineId, kind, subjectIds }: Pick<Job, "lineId" | "kind" | "subjectIds">,
): Job {
  return {
    id: act.newId(),
    lineId,
    kind,
    subjectIds: [...subjectIds],
    state: "waiting",
    attempts: 0,
    problem: "",
    uploadId: null,
    by: act.actor.name,
    createdAt: act.now,
    endedAt: null,
  };
}
