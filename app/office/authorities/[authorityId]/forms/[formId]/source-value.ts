import type { FormMapping } from "#lib/domain/facts/form.ts";

/** Before the key of a fact, in what the choice of a field sends. */
export const FROM_FACT = "fact:";

/** What the choice of a field sends: where what stands there comes from. */
export function sourceValue(mapping: FormMapping | null): string {
  if (mapping === null) return "";
  return mapping.source === "fact" ? `${FROM_FACT}${mapping.fact}` : mapping.source;
}
