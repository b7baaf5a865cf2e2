"use server";

import { z } from "zod";
import { formAction, onLineAt } from "#app/action.ts";
import { checked, text } from "#app/fields.ts";
import { decidePaper } from "#lib/operations/decide-paper.ts";

const paper = { paperId: z.string(), partyId: z.string(), propertyId: z.string() };

/** Records that a statutory paper is not given to somebody, with the reason, or is after all. */
export const decidePaperAction = formAction(onLineAt(paper), {
  may: "work-the-file",
  typed: z.object({ reason: text, after: checked }),
  does: (act, { after, ...word }) => decidePaper(act, { ...word, givenUp: !after }),
  says: "Recorded.",
});
