import type { FormState } from "#app/form.ts";
import { done, refused } from "#app/form.ts";
import type { Refusal, RefusalReason } from "#lib/operations/act.ts";
import type { Result } from "#lib/result.ts";

/** Every reason for which an operation refuses, in words. A new reason does not compile without them. */
const MESSAGES: Record<RefusalReason, (detail: string) => string> = {
  "not-allowed": () =>
    "Nothing was saved: your role in this office does not allow it. Ask an admin to change your role, or to do it for you.",
  "not-found": (detail) =>
    `Nothing was saved: ${detail || "what this was about"} is no longer in the file. Reload the page to see what is there now.`,
  "changed-meanwhile": (detail) =>
    `Nothing was saved: somebody else changed this meanwhile${detail ? ` (${detail})` : ""}. Reload the page, look at their change, and save again.`,
  "bad-value": (detail) =>
    `Nothing was saved. ${sentence(detail) || "This value does not make sense here."}`,
  "missing-value": (detail) => `Nothing was saved. ${sentence(detail) || "This is needed."}`,
  "already-there": (detail) =>
    `Nothing was saved. ${sentence(detail) || "This is in the file already; use another name, or open the one that is there."}`,
  held: (detail) =>
    detail === ""
      ? "Stopped by a hold. Settle its cause, or have a named person waive it, then try again."
      : `Stopped by a hold: ${detail}. Nothing was saved.`,
  "in-use": (detail) =>
    `Nothing was removed. ${sentence(detail) || "Other things in the file rest on it."} Remove or change those first.`,
  frozen: (detail) =>
    `Nothing was changed: ${detail || "this was sent"}, and what was sent stays as it was. Make a new one instead.`,
  "too-large": (detail) =>
    `Nothing was stored: the file is too large${detail ? ` (${detail})` : ""}. Make it smaller and add it again.`,
  "wrong-type": (detail) =>
    `Nothing was stored: ${detail || "this kind of file is not taken"}. Take a PDF, a JPEG or a PNG.`,
  "wrong-password": () =>
    "You were not signed in: name and password do not go together. Type both again; capitals count in the password.",
  "too-many-tries": (detail) =>
    `You were not signed in: too many tries${detail ? `. Wait ${detail}` : ""}, then try again.`,
  "not-in-this-state": (detail) =>
    `Nothing was saved. ${sentence(detail) || "This step does not follow from where it stands."}`,
};

/** `write a day` → `Write a day.` */
function sentence(words: string): string {
  return words === "" ? "" : `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** A refusal as a sentence: what happened, why, and what to do. */
export function sentenceOf(refusal: Pick<Refusal, "reason" | "detail">): string {
  return MESSAGES[refusal.reason](refusal.detail.replace(/\.\s*$/, ""));
}

/**
 * The state of a form over which somebody else saved: who, where theirs stands, and that nothing typed
 * is lost. Its page has to be drawn anew, so that saving again is meant to replace theirs.
 */
export function overtaken(
  by: string,
  { where, form }: { where: string; form: FormData },
): FormState {
  const who = by === "" ? "Somebody else" : by;
  return refused(
    `Not saved yet: ${who} saved this since you opened it. Theirs stands ${where}; what you typed is still here. Save again to put yours in its place.`,
    form,
  );
}

/** The state of a form after its operation: `words` if it was done, else the refusal beside its field. */
export function stateOf<T>(
  result: Result<T, Refusal>,
  { words, form }: { words: string; form: FormData },
): FormState {
  if (result.ok) return done(words);
  return refused(sentenceOf(result.error), form, result.error.path);
}
