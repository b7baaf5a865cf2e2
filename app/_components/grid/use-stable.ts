import { useRef } from "react";

/** The same object for as long as its content is the same: pages hand over new ones at each render. */
export function useStable<T>(value: T): T {
  const kept = useRef(value);
  if (kept.current !== value && fingerprint(kept.current) !== fingerprint(value))
    kept.current = value;
  return kept.current;
}

const numbered = new WeakMap<object, number>();
let lastNumber = 0;

/** Content as text; a function counts as itself. */
function fingerprint(value: unknown): string {
  return JSON.stringify(value, (_name, part: unknown) =>
    typeof part === "function" ? numberOf(part) : part,
  );
}

function numberOf(part: object): number {
  const known = numbered.get(part);
  if (known !== undefined) return known;
  lastNumber += 1;
  numbered.set(part, lastNumber);
  return lastNumber;
}
