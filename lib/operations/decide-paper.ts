import { insertRow } from "#db/queries/row.ts";
import type { PaperWaiver } from "#lib/domain/facts/statutory-paper.ts";
import { sayParty } from "#lib/domain/party/say.ts";
import { papersOn } from "#lib/domain/statutory/papers.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface PaperWord {
  readonly lineId: string;
  readonly paperId: string;
  readonly partyId: string;
  readonly propertyId: string;
  /** False: the paper is to be given after all. */
  readonly givenUp: boolean;
  readonly reason: string;
}

/**
 * A person's decision that a statutory paper is not given to somebody, or is after all. Refuses a paper
 * that is not asked for or was given, and giving one up without a reason.
 */
export function decidePaper(
  act: Act,
  { lineId, paperId, partyId, propertyId, givenUp, reason }: PaperWord,
): Result<{ decisionId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "decide-paper" } as const;
  return changeLine(act, deal, (file) => {
    const due = papersOn(file).find(
      (each) =>
        each.paper.id === paperId && each.partyId === partyId && each.propertyId === propertyId,
    );
    if (due === undefined) return refuse("not-found", "paperId", "the statutory paper");
    if (due.state === "given")
      return refuse("not-in-this-state", "paperId", "It was given already");
    if (givenUp && due.state === "given-up")
      return refuse("already-there", "paperId", `${due.decision?.by} gave it up already`);
    if (!givenUp && due.state !== "given-up")
      return refuse("not-in-this-state", "paperId", "It is to be given already");
    if (givenUp && reason.trim() === "")
      return refuse("missing-value", "reason", "Enter why it is not given");
    const row: PaperWaiver = {
      ...{ id: act.newId(), paperId, partyId, propertyId, givenUp },
      ...{ reason: reason.trim(), by: act.actor.name, on: act.today },
    };
    const to = sayParty(file, partyId);
    return ok({
      value: { decisionId: row.id },
      sentence: givenUp
        ? `Decided not to give “${due.paper.title}” to ${to}: ${row.reason}`
        : `Decided to give “${due.paper.title}” to ${to} after all.`,
      detail: { paper: due.paper, decision: row },
      write: (db) => insertRow(db, "paperWaivers", { lineId, row }),
    });
  });
}
