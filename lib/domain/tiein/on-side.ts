import type { SideSaid } from "./standing-said.ts";

/** A side in a sentence of the office: `right`, and `right (north side)` where the line's bearing tells. */
export function onSide({ side, compass }: SideSaid): string {
  return compass === null ? side : `${side} (${compass} side)`;
}
