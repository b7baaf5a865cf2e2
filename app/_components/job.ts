/** How a job stands, as the page shows it. */
export interface JobView {
  readonly state: "waiting" | "running" | "done" | "failed";
  readonly uploadId: string | null;
  readonly message: string;
}

const LOST: JobView = { state: "waiting", uploadId: null, message: "" };

/** Asks the job's address once. Where nothing comes back, it counts as waiting still. */
export async function readJob(address: string): Promise<JobView> {
  try {
    const answer = await fetch(address, { cache: "no-store" });
    if (!answer.ok) return LOST;
    return viewOf(await answer.json());
  } catch {
    return LOST;
  }
}

/** Reads what the address answers; unknown words count as waiting. */
export function viewOf(answer: unknown): JobView {
  if (typeof answer !== "object" || answer === null) return LOST;
  const job: Record<string, unknown> = { ...answer };
  const text = (name: string) => (typeof job[name] === "string" ? job[name] : null);
  const state = text("state");
  if (state !== "running" && state !== "done" && state !== "failed") return LOST;
  return { state, uploadId: text("uploadId"), message: text("message") ?? "" };
}

const STATE_WORDS: Record<JobView["state"], string> = {
  waiting: "In line. You can leave this page.",
  running: "Working on it. You can leave this page.",
  done: "Done.",
  failed: "It could not be created.",
};

export function wordsOf(view: JobView): string {
  const words = STATE_WORDS[view.state];
  return view.message === "" ? words : `${words} ${view.message}`;
}
