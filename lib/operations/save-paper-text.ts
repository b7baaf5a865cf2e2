import type { Db } from "#db/open.ts";
import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { getLastOfficeEntry } from "#db/queries/history.ts";
import type { StatutoryPaper } from "#lib/domain/facts/statutory-paper.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { changedSince, fieldsSeen } from "./seen.ts";

interface PaperPlace {
  readonly authorityId: string;
  readonly paperId: string;
}

/** The texts of a paper, as the form was filled in from them. */
export function paperSeen(paper: StatutoryPaper) {
  return fieldsSeen(paper, ["text", "textEs"]);
}

/**
 * Saves the office's text of a statutory paper, in English and in Spanish. A text that changed is
 * looked at against the statute anew. Refuses where somebody saved another text since the form was
 * filled in (`seen`: `seenOf(paperSeen(paper))`).
 */
export function savePaperText(
  act: Act,
  {
    text,
    textEs,
    seen,
    ...place
  }: PaperPlace & {
    readonly text: string;
    readonly textEs: string;
    readonly seen?: string | undefined;
  },
): Result<null, Refusal> {
  return changePaper(act, { ...place, action: "save-paper-text" }, (paper, db) => {
    const last = getLastOfficeEntry(db, "save-paper-text") ?? getLastOfficeEntry(db);
    const changed = changedSince(seen, { now: paperSeen(paper), last });
    if (changed !== null) return changed;
    const after = { ...paper, text: asKept(text), textEs: asKept(textEs) };
    if (after.text === paper.text && after.textEs === paper.textEs) return ok(null);
    return ok({
      after: { ...after, confirmedBy: "", confirmedOn: null },
      sentence: `Changed the text of “${paper.title}”.`,
    });
  });
}

/** An admin's word that the text of a paper was compared with the statute. Refuses an empty text. */
export function confirmPaperText(
  act: Act,
  { text, textEs, ...place }: PaperPlace & { readonly text: string; readonly textEs: string },
): Result<null, Refusal> {
  return changePaper(act, { ...place, action: "confirm-paper-text" }, (paper) => {
    if (paper.text.trim() === "")
      return refuse("missing-value", "text", "Enter the text of the paper first");
    if (paper.citation.trim() === "")
      return refuse("missing-value", "text", "Enter the citation of the statute first");
    if (paper.text !== asKept(text) || paper.textEs !== asKept(textEs))
      return refuse(
        "not-in-this-state",
        "text",
        "The text was changed meanwhile: look at it again",
      );
    if (paper.confirmedBy !== "") return ok(null);
    return ok({
      after: { ...paper, confirmedBy: act.actor.name, confirmedOn: act.today },
      sentence: `Confirmed the text of “${paper.title}” against ${paper.citation}.`,
    });
  });
}

/** A browser without scripts sends other ends of lines. */
function asKept(text: string): string {
  return text.replaceAll("\r\n", "\n").trim();
}

interface Changed {
  readonly after: StatutoryPaper;
  readonly sentence: string;
}

function changePaper(
  act: Act,
  { authorityId, paperId, action }: PaperPlace & { readonly action: string },
  decide: (paper: StatutoryPaper, db: Db) => Result<Changed | null, Refusal>,
): Result<null, Refusal> {
  return changeOffice(act, { deed: "run-the-office", action }, (db) => {
    const authority = getAuthority(db, authorityId);
    if (authority === null) return refuse("not-found", "", "the authority");
    const paper = authority.statutoryPapers.find(({ id }) => id === paperId);
    if (paper === undefined) return refuse("not-found", "", "the statutory paper");
    const decided = decide(paper, db);
    if (!decided.ok) return decided;
    const { after, sentence } = decided.value ?? { after: paper, sentence: null };
    return ok({
      value: null,
      sentence,
      detail: { before: paper, after },
      write: (one) =>
        putAuthority(one, {
          ...authority,
          statutoryPapers: authority.statutoryPapers.map((each) =>
            each.id === paperId ? after : each,
          ),
        }),
    });
  });
}
