"use server";

import { z } from "zod";
import { formAction, onLine, onLineAt } from "#app/action.ts";
import { checked, id, needed, oneIn, oneInOr, text, textOrNull, texts } from "#app/fields.ts";
import { TIE_IN_KINDS } from "#lib/domain/facts/line.ts";
import { PAIRING_STATES } from "#lib/domain/facts/pairing.ts";
import { acceptAlternative } from "#lib/operations/accept-alternative.ts";
import { acceptProposals } from "#lib/operations/accept-proposals.ts";
import { beginLine } from "#lib/operations/begin-line.ts";
import { decideAlignment, withdrawAlignment } from "#lib/operations/decide-alignment.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { explainEntry } from "#lib/operations/explain-entry.ts";
import { liftWaiver } from "#lib/operations/lift-waiver.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { withdrawPairing } from "#lib/operations/withdraw-pairing.ts";
import { ok } from "#lib/result.ts";
import { appendRows } from "../append-rows.ts";
import { rowFromForm } from "../row-form.ts";
import { signedNumber } from "./line-up/line-up-view.ts";
import { REASON, reasoned, withReason } from "./reason-fields.ts";
import { TEST_BLANK, testColumns } from "./undocumented/test-columns.ts";

/** Accepts or rejects that an entry and a tie-in are the same, with the person's reason. */
export const decideAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({
    entryId: text,
    tieInId: needed("Select the matching tie-in."),
    state: oneIn(PAIRING_STATES, "Select accept or reject."),
    seen: text,
  }),
  does: decidePairing,
  says: (_value, { state }) => (state === "accepted" ? "Accepted." : "Rejected (kept on file)."),
});

/** Accepts, in one go, the proposals that stood on the page as sure: all of them or none. */
export const acceptSureAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({ entryId: texts, tieInId: texts }),
  does: (act, { lineId, entryId, tieInId, reason }) => {
    const pairs = entryId.map((each, at) => ({ entryId: each, tieInId: tieInId[at] ?? "" }));
    return acceptProposals(act, { lineId, pairs, reason });
  },
  says: ({ count }) => (count === 1 ? "1 match accepted." : `${count} matches accepted.`),
});

/** Undoes a decision, with the reason; both stay in the history. */
export const withdrawAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({ pairingId: text }),
  does: withdrawPairing,
  says: "Decision undone.",
});

/** Explains an entry with no matching tie-in; an empty explanation removes it. */
export const explainAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({ entryId: text, seen: text }, "Enter what happened to it."),
  does: (act, { lineId, entryId, reason, seen }) =>
    explainEntry(act, { lineId, entryId, explanation: reason, seen }),
  says: "Explanation saved.",
  theirs: "beside the entry",
});

/** The house of an entry is where the line begins: it gets a tie-in there, matched with the entry. */
export const beginLineAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ entryId: text }),
  does: beginLine,
  says: ({ label }) => `${label} added where the line begins, and matched.`,
});

/** Says what a tie-in is and whose, on the evidence that the person names. */
export const settleAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({
    tieInId: text,
    kind: oneIn(TIE_IN_KINDS, "Select what it carries."),
    propertyId: textOrNull,
    inactive: checked,
    ownerAccepted: checked,
    seen: text,
  }),
  does: settleTieIn,
  says: "Saved, with your name and the day.",
  theirs: "with the tie-in, as settled",
});

/** Lets work go on despite a hold, in the name of the person who says so. */
export const waiveAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    holdKey: text,
    words: needed("Enter why work can proceed; it prints in the packet."),
  }),
  does: (act, { lineId, holdKey, words }) => waiveHold(act, { lineId, holdKey, reason: words }),
  says: "Waived under your name.",
});

/** Withdraws a waiver: the hold is back in effect. */
export const liftWaiverAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ waiverId: text }),
  does: liftWaiver,
  says: "The hold is back in effect.",
});

/** Adds one test of a tie-in. */
export const addTestAction = formAction(onLineAt({ tieInId: id }), {
  may: "record-the-field",
  typed: z.object({}),
  does: (act, { lineId, tieInId }, form) =>
    appendRows(act, { lineId, table: "tests" }, (file) => {
      const row = rowFromForm(testColumns(file), form, TEST_BLANK);
      return row.ok ? ok([{ ...row.value, id: act.newId(), tieInId }]) : row;
    }),
  says: "Added.",
});

/** A shift in feet and a scale in percent where a person typed them; else as they are kept. */
const fitTyped = z
  .object({
    recordId: textOrNull,
    state: oneInOr(["refused"], "accepted"),
    typed: text,
    shift: text,
    scale: text,
    seen: text,
    ...REASON,
  })
  .transform(({ typed, ...fit }, context) => {
    const shift = signedNumber(fit.shift, typed === "" ? 1 : 100);
    const scale = signedNumber(fit.scale, typed === "" ? 1 : 10_000);
    const wrong = (path: string, message: string) =>
      context.addIssue({ code: "custom", path: [path], message });
    if (shift === null) wrong("shift", "Enter feet, e.g. 2.4 or −2.4.");
    if (scale === null) wrong("scale", "Enter a percentage, e.g. 1.5.");
    return { ...fit, shift: shift ?? 0, scale: scale ?? 0 };
  })
  .transform((fit, context) => reasoned(fit, context));

/** Accepts or rejects how the records, or one of them, line up with the camera. */
export const alignAction = formAction(onLine, {
  may: "work-the-file",
  typed: fitTyped,
  does: decideAlignment,
  says: (_value, { state }) =>
    state === "accepted" ? "Accepted." : "Rejected; it is not proposed again.",
  theirs: "on this page",
});

/** Undoes a decision on how they line up. */
export const withdrawAlignmentAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({ alignmentId: text }),
  does: withdrawAlignment,
  says: "Decision undone.",
});

/** Accepts another way to pair. */
export const acceptAlternativeAction = formAction(onLine, {
  may: "work-the-file",
  typed: withReason({ key: text }),
  does: acceptAlternative,
  says: "Accepted in your name.",
});
