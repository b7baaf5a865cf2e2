"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState, useTransition } from "react";
import { type JobView, readJob, wordsOf } from "./job.ts";
import { unanswered } from "./unanswered.ts";

/** What an action that starts a job answers. */
export type JobStart =
  | { readonly ok: true; readonly jobId: string }
  | { readonly ok: false; readonly message: string };

interface JobButtonProps {
  readonly start: () => Promise<JobStart>;
  readonly children: string;
  /** Said while it runs: `Building the packet`. */
  readonly working: string;
  readonly main?: boolean;
  /** Address under which the finished paper opens: its id is put behind. */
  readonly paper: string;
  /** A job that was started elsewhere and is told about from the first. */
  readonly running?: string;
}

/**
 * Starts a paper being made in the background and says how far it is; the page may be left, the
 * paper is in the list when it is done.
 */
export function JobButton({
  start,
  children,
  working,
  main = false,
  paper,
  running,
}: JobButtonProps) {
  const [jobId, setJobId] = useState<string | null>(running ?? null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [starting, begin] = useTransition();
  const view = useJob(jobId);
  const busy = starting || view?.state === "waiting" || view?.state === "running";

  function press() {
    if (busy) return;
    setRefusal(null);
    begin(async () => {
      const started = await start().catch((error: unknown) => ({
        ok: false as const,
        message: unanswered(error),
      }));
      if (started.ok) setJobId(started.jobId);
      else setRefusal(started.message);
    });
  }

  return (
    <span className="cluster">
      <button
        type="button"
        className={main ? "button button-main" : "button"}
        aria-disabled={busy}
        onClick={press}
      >
        {busy ? `${working} …` : children}
      </button>
      <span role="status">
        {refusal === null ? null : <span className="mend">{refusal}</span>}
        {refusal === null && view !== null ? <JobWords view={view} paper={paper} /> : null}
      </span>
    </span>
  );
}

/** How a job that was started elsewhere stands; the page is drawn anew when it ends. */
export function JobStatus({ jobId }: { readonly jobId: string }) {
  const view = useJob(jobId);
  return (
    <span role="status">
      {view === null ? null : <span className="muted">{wordsOf(view)}</span>}
    </span>
  );
}

function JobWords({ view, paper }: { readonly view: JobView; readonly paper: string }) {
  if (view.state === "done" && view.uploadId !== null) {
    return <a href={`${paper}/${view.uploadId}`}>Open it</a>;
  }
  return <span className={view.state === "failed" ? "mend" : "muted"}>{wordsOf(view)}</span>;
}

/** Asks after a job until it is done or has failed. */
function useJob(jobId: string | null): JobView | null {
  const [view, setView] = useState<JobView | null>(null);
  const router = useRouter();
  useEffect(() => {
    if (jobId === null) return;
    let asked = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function ask() {
      const next = await readJob(`/jobs/${jobId}`);
      if (!asked) return;
      setView(next);
      if (next.state === "done" || next.state === "failed") router.refresh();
      else timer = setTimeout(ask, 1000);
    }
    setView({ state: "waiting", uploadId: null, message: "" });
    void ask();
    return () => {
      asked = false;
      clearTimeout(timer);
    };
  }, [jobId, router]);
  return view;
}
