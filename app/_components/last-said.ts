// A form's answer stands at its foot. Where the answer takes the form's part of the page away with
// it, as the last draft that is sent does, the words would go unseen: they are kept here.

let heard: { readonly form: string; readonly words: string } | null = null;
let left = "";
const listeners = new Set<() => void>();

/** A form was answered; it shows the words itself unless it goes first. */
export function hearAnswer(form: string, words: string): void {
  heard = { form, words };
  leave("");
}

/** The form showed its answer. */
export function answerShown(form: string): void {
  if (heard?.form === form) heard = null;
}

/** The form is gone; what it was told and did not show is left over. */
export function formGone(form: string): void {
  if (heard?.form !== form) return;
  const { words } = heard;
  heard = null;
  leave(words);
}

export function forgetSaid(): void {
  leave("");
}

/** The words that no form shows; empty where there are none. */
export function lastSaid(): string {
  return left;
}

export function onLastSaid(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function leave(words: string) {
  if (left === words) return;
  left = words;
  for (const listener of listeners) listener();
}
