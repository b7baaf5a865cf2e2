import { and, desc, eq, gt, lt, lte, or, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { jobs } from "#db/schema.ts";
import type { Job } from "#lib/domain/facts/job.ts";
import type { Instant } from "#lib/domain/time/day.ts";

const COLUMNS = {
  id: jobs.id,
  lineId: jobs.lineId,
  kind: jobs.kind,
  subjectIds: jobs.subjectIds,
  state: jobs.state,
  attempts: jobs.attempts,
  problem: jobs.problem,
  uploadId: jobs.uploadId,
  by: jobs.by,
  createdAt: jobs.createdAt,
  endedAt: jobs.endedAt,
};

export function getJob(db: Db, jobId: string): Job | null {
  return db.select(COLUMNS).from(jobs).where(eq(jobs.id, jobId)).get() ?? null;
}

/** The jobs of a line, newest first. */
export function listJobs(db: Db, lineId: string): Job[] {
  return db
    .select(COLUMNS)
    .from(jobs)
    .where(eq(jobs.lineId, lineId))
    .orderBy(desc(jobs.createdAt), desc(sql`rowid`))
    .all();
}

export function insertJob(db: Db, job: Job): void {
  db.insert(jobs)
    .values({ ...job, nextTryAt: job.createdAt })
    .run();
}

/** Who takes a piece of work, when, and until when it is theirs. */
export interface Claim {
  readonly worker: string;
  readonly now: Instant;
  /** The longest that anybody may have it: what is held for longer was claimed by another clock. */
  readonly until: Instant;
}

/**
 * Takes the next job that waits, or whose worker went silent; null where there is none. No job is put
 * off beyond `latest`: one that is was put off before the clock was set back, and is due.
 */
export function claimJob(
  db: Db,
  { worker, now, until, latest }: Claim & { readonly latest: Instant },
): Job | null {
  return db.transaction(
    (one) => {
      const next = one
        .select({ id: jobs.id })
        .from(jobs)
        .where(
          or(
            and(
              eq(jobs.state, "waiting"),
              or(lte(jobs.nextTryAt, now), gt(jobs.nextTryAt, latest)),
            ),
            and(
              eq(jobs.state, "running"),
              or(lt(jobs.leaseUntil, now), gt(jobs.leaseUntil, until)),
            ),
          ),
        )
        .orderBy(jobs.nextTryAt, sql`rowid`)
        .limit(1)
        .get();
      if (!next) return null;
      one
        .update(jobs)
        .set({
          state: "running",
          lockedBy: worker,
          leaseUntil: until,
          attempts: sql`${jobs.attempts} + 1`,
        })
        .where(eq(jobs.id, next.id))
        .run();
      return getJob(one, next.id);
    },
    { behavior: "immediate" },
  );
}

/** Keeps a job for longer, while it is still this worker's. */
export function keepJob(db: Db, jobId: string, { worker, until }: Claim): void {
  db.update(jobs).set({ leaseUntil: until }).where(isMine(jobId, worker)).run();
}

/** What a job came to; false where it is no longer this worker's, so that nothing is written twice. */
export function endJob(
  db: Db,
  { jobId, worker }: { jobId: string; worker: string },
  end:
    | { readonly state: "done"; readonly uploadId: string; readonly endedAt: Instant }
    | { readonly state: "failed"; readonly problem: string; readonly endedAt: Instant }
    | { readonly state: "waiting"; readonly problem: string; readonly nextTryAt: Instant },
): boolean {
  const ended = db
    .update(jobs)
    .set({ ...end, lockedBy: null, leaseUntil: null })
    .where(isMine(jobId, worker))
    .run();
  return ended.changes > 0;
}

function isMine(jobId: string, worker: string) {
  return and(eq(jobs.id, jobId), eq(jobs.state, "running"), eq(jobs.lockedBy, worker));
}
