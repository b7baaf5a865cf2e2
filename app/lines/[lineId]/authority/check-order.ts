import type { PacketCheck } from "#lib/domain/packet/packet.ts";

/** What is missing and always asked for comes first, then what is missing, what is in hand, the rest. */
export function inOrder(checks: readonly PacketCheck[]): PacketCheck[] {
  return checks.toSorted((one, other) => rank(one) - rank(other));
}

function rank(check: PacketCheck): number {
  if (check.state === "missing") return check.mandatory ? 0 : 1;
  return check.state === "in-hand" ? 2 : 3;
}
