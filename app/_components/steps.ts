/** What was there before each change and after each undo; nothing is kept beyond the last changes. */
export interface Steps<T> {
  readonly past: readonly T[];
  readonly future: readonly T[];
  /** The one cell that is being typed in: more letters in it are the same step. */
  readonly typingIn: string | null;
}

const MOST_STEPS = 200;

export const NO_STEPS: Steps<never> = { past: [], future: [], typingIn: null };

/** Before a change of `now`; letters typed on in one cell are one step. */
export function stepFrom<T>(steps: Steps<T>, now: T, typingIn: string | null): Steps<T> {
  const goesOn = typingIn !== null && steps.typingIn === typingIn;
  const past = goesOn ? steps.past : [...steps.past.slice(1 - MOST_STEPS), now];
  return { past, future: [], typingIn };
}

/** One step back from `now`; null where there is none. */
export function stepBack<T>(steps: Steps<T>, now: T): { steps: Steps<T>; value: T } | null {
  const value = steps.past.at(-1);
  if (value === undefined) return null;
  const past = steps.past.slice(0, -1);
  return { steps: { past, future: [now, ...steps.future], typingIn: null }, value };
}

/** One step forth again from `now`; null where nothing was undone. */
export function stepForth<T>(steps: Steps<T>, now: T): { steps: Steps<T>; value: T } | null {
  const [value, ...future] = steps.future;
  if (value === undefined) return null;
  return { steps: { past: [...steps.past, now], future, typingIn: null }, value };
}
