import { insertJob } from "#db/queries/job.ts";
import { JOB_KINDS, type Job, type JobKind } from "#lib/domain/file/job.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface JobOrder {
  readonly lineId: string;
  readonly kind: JobKind;
  /** For letters: which, in this order. */
  readonly noticeIds: readonly string[];
}

const KIND_WORDS: Record<JobKind, string> = {
  letters: "a PDF of letters",
  packet: "the packet",
};

/** Has a PDF made outside of the request; the packet is made whatever is missing, and says so first. */
export function startJob(
  act: Act,
  { lineId, kind, noticeIds }: JobOrder,
): Result<{ jobId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "start-job" } as const;
  return changeLine(act, deal, (file) => {
    if (!JOB_KINDS.includes(kind)) return refuse("bad-value", "kind", "Choose what to make");
    const known = new Set(file.notices.map(({ id }) => id));
    if (noticeIds.some((id) => !known.has(id)))
      return refuse("not-found", "noticeIds", "one of the letters");
    if (kind === "letters" && noticeIds.length === 0)
      return refuse("missing-value", "noticeIds", "Choose a letter");
    const job: Job = {
      id: act.newId(),
      lineId,
      kind,
      noticeIds: [...noticeIds],
      state: "waiting",
      attempts: 0,
      problem: "",
      uploadId: null,
      by: act.actor.name,
      createdAt: act.now,
      endedAt: null,
    };
    return ok({
      value: { jobId: job.id },
      sentence: `Asked for ${KIND_WORDS[kind]}.`,
      detail: { jobId: job.id, noticeIds },
      write: (db) => insertJob(db, job),
    });
  });
}
