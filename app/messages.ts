import type { z } from "zod";
import type { FormState } from "#app/form.ts";
import { refused } from "#app/form.ts";
import type { Refusal, RefusalReason } from "#lib/operations/act.ts";

/** Every reason for which an operation refuses, in words. A new reason does not compile without them. */
const MESSAGES: Record<RefusalReason, (detail: string) => string> = {
  "not-allowed": () =>
    "Not saved: your role does not allow this. Ask an admin to change your role, or to do it for you.",
  "not-found": (detail) =>
    `Not saved: ${detail || "the item"} is no longer in the file. Reload the page to see what is there now.`,
  "changed-meanwhile": (detail) =>
    `Not saved: someone else changed this in the meantime${detail ? ` (${detail})` : ""}. Reload the page, look at their change, and save again.`,
  "bad-value": (detail) => `Not saved. ${sentence(detail) || "That value isn’t valid here."}`,
  "missing-value": (detail) => `Not saved. ${sentence(detail) || "This is required."}`,
  "already-there": (detail) =>
    `Not saved. ${sentence(detail) || "This is already in the file; use another name, or open the one that is there."}`,
  held: (detail) =>
    detail === ""
      ? "Blocked by a hold. Settle its cause, or have a named person waive it, then try again."
      : `Blocked by a hold: ${detail}. Nothing was saved.`,
  "in-use": (detail) =>
    `Not removed. ${sentence(detail) || "Other items in the file depend on it."} Remove or change those first.`,
  frozen: (detail) =>
    `Not changed: ${detail || "this was sent"}, and what was sent is locked. Create a new one instead.`,
  "too-large": (detail) =>
    `Not uploaded: the file is too large${detail ? ` (${detail})` : ""}. Make it smaller and add it again.`,
  "wrong-type": (detail) =>
    `Not uploaded: ${detail || "that file type isn’t accepted"}. Use a PDF, JPEG or PNG.`,
  "wrong-password": () =>
    "Sign-in failed: the email or password is incorrect. Passwords are case-sensitive.",
  "too-many-tries": (detail) =>
    `Sign-in failed: too many attempts${detail ? `. Wait ${detail}` : ""}, then try again.`,
  "not-in-this-state": (detail) =>
    `Not saved. ${sentence(detail) || "This step does not follow from the current status."}`,
};

/** `write a day` → `Write a day.` */
function sentence(words: string): string {
  return words === "" ? "" : `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** A refusal as a sentence: what happened, why, and what to do. */
export function sentenceOf(refusal: Pick<Refusal, "reason" | "detail">): string {
  return MESSAGES[refusal.reason](refusal.detail.replace(/\.\s*$/, ""));
}

/** The first field of a form that is wrong, with its sentence beside it. */
export function refusedBy(error: z.ZodError, form: FormData): FormState {
  const [issue] = error.issues;
  return refused(issue?.message ?? "", form, issue?.path.join(".") ?? "");
}

/**
 * The state of a form over which somebody else saved: who, where theirs stands, and that nothing typed
 * is lost. Its page has to be drawn anew, so that saving again is meant to replace theirs.
 */
export function overtaken(
  by: string,
  { where, form }: { where: string; form: FormData },
): FormState {
  const who = by === "" ? "Someone else" : by;
  return refused(
    `Not saved yet: ${who} saved this since you opened it. Their version is ${where}; what you typed is still here. Save again to replace theirs.`,
    form,
  );
}
