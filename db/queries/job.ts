import { desc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { jobs } from "#db/schema.ts";
import type { Job } from "#lib/domain/facts/job.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { leaseQueue } from "./lease-queue.ts";

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

/** The PDFs that wait to be made. */
export const jobQueue = leaseQueue<
  Job,
  | {
      readonly state: "done";
      /** Null: it is kept outside of the line’s files, as a mailing is. */
      readonly uploadId: string | null;
      readonly endedAt: Instant;
      readonly problem?: string;
    }
  | { readonly state: "failed"; readonly problem: string; readonly endedAt: Instant }
  | { readonly state: "waiting"; readonly problem: string; readonly nextTryAt: Instant }
>(jobs, { get: getJob, held: "running" });
