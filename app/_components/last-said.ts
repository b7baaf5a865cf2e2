// A form's answer stands at its foot. Where the answer takes the form's part of the page away with
// it, as the last draft that is sent does, the words would go unseen: they are kept here.

/** An answer and the language that its reader was spoken to in. */
export interface Said {
  readonly words: string;
  /** What was typed into a form that was refused, each with its label: the form may be gone with it. */
  readonly typed: readonly string[];
  readonly language: string;
}

let heard: { readonly form: string; readonly said: Said } | null = null;
let left: Said | null = null;
const listeners = new Set<() => void>();

/** A form was answered; it shows the words itself unless it goes first. */
export function hearAnswer(form: string, said: Said): void {
  heard = { form, said };
  leave(null);
}

/** The form showed its answer. */
export function answerShown(form: string): void {
  if (heard?.form === form) heard = null;
}

/** The form is gone; what it was told and did not show is left over. */
export function formGone(form: string): void {
  if (heard?.form !== form) return;
  const { said } = heard;
  heard = null;
  leave(said);
}

export function forgetSaid(): void {
  leave(null);
}

/** What no form shows; null where there is nothing. */
export function lastSaid(): Said | null {
  return left;
}

export function onLastSaid(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function leave(said: Said | null) {
  if (left === said) return;
  left = said;
  for (const listener of listeners) listener();
}
