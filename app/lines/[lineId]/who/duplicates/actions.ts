"use server";

import { z } from "zod";
import { formAction, onLine, onLineAt } from "#app/action.ts";
import { id, needed, oneIn, text } from "#app/fields.ts";
import { judgeParties, undoSameParty } from "#lib/operations/merge-parties.ts";

/** Says of two people on the list that they are one, under which name, or that they are two. */
export const judgePartiesAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    a: needed("Choose a person."),
    b: needed("Choose the other person."),
    keep: oneIn(["a", "b", "two"], "Choose which name is kept, or that they are two."),
    reason: text,
  }),
  does: (act, { lineId, a, b, keep, reason }) => {
    const [partyId, intoId] = keep === "b" ? [a, b] : [b, a];
    return judgeParties(act, { lineId, partyId, intoId, same: keep !== "two", reason });
  },
  says: (_value, { keep }) =>
    keep === "two" ? "Kept as two people." : "Merged. You can undo it below.",
});

/** Takes back what was said of two people. */
export const undoSamePartyAction = formAction(onLineAt({ wordId: id }), {
  may: "work-the-file",
  typed: z.object({}),
  does: undoSameParty,
  says: "Undone.",
});
