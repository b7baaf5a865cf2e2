import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";

/** Whether a gas line may go through the pipe; only `clear` rests on what a camera saw. */
export interface GasCrossing {
  readonly state: "seen" | "cannot-tell" | "clear";
  readonly sentences: readonly string[];
}

/**
 * What is known of a gas line through the pipe: seen; not ruled out; or clear, where every run says
 * that nothing crosses and no hold doubts it. A waived hold is told with who waived it.
 */
export function gasCrossing(
  { runs }: Pick<LineFile, "runs">,
  { holds }: Pick<Report, "holds">,
): GasCrossing {
  const doubts = holds.filter(
    ({ cause }) => cause === "crossing-seen" || cause === "crossing-not-ruled-out",
  );
  const sentences = doubts.map(({ sentence, waiver }) =>
    waiver === null ? sentence : `${sentence} ${waiver.by} let the work go on: ${waiver.reason}`,
  );
  if (doubts.some(({ cause }) => cause === "crossing-seen")) return { state: "seen", sentences };
  if (doubts.length > 0) return { state: "cannot-tell", sentences };
  if (runs.length === 0) return { state: "cannot-tell", sentences: ["No camera run is on file."] };
  if (runs.some(({ crossingSeen }) => crossingSeen !== "no"))
    return { state: "cannot-tell", sentences: ["A camera run could not tell."] };
  return { state: "clear", sentences: [] };
}
