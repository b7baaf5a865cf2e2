import type { Job } from "#lib/domain/facts/job.ts";
import type { Act } from "./act.ts";

/** The job that prints these letters. */
export function mailingJob(
  act: Act,
  { lineId, noticeIds }: { readonly lineId: string; readonly noticeIds: readonly string[] },
): Job {
  return {
    id: act.newId(),
    lineId,
    kind: "mailing",
    subjectIds: [...noticeIds],
    state: "waiting",
    attempts: 0,
    problem: "",
    uploadId: null,
    by: act.actor.name,
    createdAt: act.now,
    endedAt: null,
  };
}
