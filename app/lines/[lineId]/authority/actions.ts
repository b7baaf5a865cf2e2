"use server";

import { z } from "zod";
import { formAction, jobAction, onLine, onLineAt } from "#app/action.ts";
import { id, oneIn, text, textOrNull } from "#app/fields.ts";
import { PERMIT_KINDS, PERMIT_STATES, REQUIREMENT_STATES } from "#lib/domain/facts/permit.ts";
import { addPermit } from "#lib/operations/add-permit.ts";
import { correctPermit } from "#lib/operations/correct-permit.ts";
import { markRequirement } from "#lib/operations/mark-requirement.ts";
import { postCard } from "#lib/operations/post-card.ts";
import { recordBuilt } from "#lib/operations/record-built.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";

/** What the office says of one requirement, with the paper that meets it. */
export const markRequirementAction = formAction(onLineAt({ requirementId: id }), {
  may: "work-the-file",
  typed: z.object({
    state: oneIn(REQUIREMENT_STATES, "Select the status."),
    uploadId: textOrNull,
    note: text,
    seen: text,
  }),
  does: markRequirement,
  says: "Saved.",
  theirs: "above the form",
});

export const addPermitAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    kind: oneIn(PERMIT_KINDS, "Select the kind of permit."),
    number: text,
    expiresOn: textOrNull,
    note: text,
  }),
  does: addPermit,
  says: "Permit added.",
});

/** What is printed on a permit: its number and its day of expiry, whenever they come. */
export const correctPermitAction = formAction(onLineAt({ permitId: id }), {
  may: "work-the-file",
  typed: z.object({ number: text, expiresOn: textOrNull, note: text, seen: text }),
  does: correctPermit,
  says: "Saved.",
  theirs: "with the permit, above the form",
});

/** What was carried out, on a named person's word; the crew may say it too. */
export const recordBuiltAction = formAction(onLineAt({ itemId: id.nullable() }), {
  may: "record-the-field",
  typed: z.object({ on: text, by: text, words: text, uploadId: textOrNull, seen: text }),
  does: recordBuilt,
  says: "Recorded.",
  theirs: "above the form",
});

const CARD = { postedOn: textOrNull, postedBy: text, postedPlace: text };

/** Since when a permit's card hangs on site, and where. */
export const postCardAction = formAction(onLineAt({ permitId: id }), {
  may: "work-the-file",
  typed: z.object({ ...CARD, seen: text }),
  does: postCard,
  says: "Saved.",
  theirs: "above the form",
});

/** Records where a permit has got to. */
export const stepPermitAction = formAction(onLineAt({ permitId: id }), {
  may: "work-the-file",
  typed: z.object({
    state: oneIn(PERMIT_STATES, "Select the next step."),
    on: text,
    note: text,
    ...CARD,
  }),
  does: (act, { postedOn, postedBy, postedPlace, ...step }) =>
    stepPermit(act, { ...step, card: { postedOn, postedBy, postedPlace } }),
  says: "Recorded.",
});

/** Has the answers to one round of corrections made for the clerk. */
export const printCorrectionsAction = jobAction("corrections", "work-the-file");

/** Has what a permit cost and who paid it made for the file. */
export const printFeesAction = jobAction("fees", "work-the-file");

/** Starts the whole packet being made as one PDF. */
export const buildPacketAction = jobAction("packet", "work-the-file");
