import type { Permit } from "../facts/permit.ts";
import { sayList } from "../say/say-list.ts";
import { packetChecks } from "./checks.ts";
import type { PacketInput } from "./packet-input.ts";

/**
 * Why a permit can’t be final yet: the authority asks for something before the final that is missing or
 * of which nobody knows that it does not apply. The as-built has a rule of its own (`asBuiltWanting`).
 * Null: nothing.
 */
export function finalBar(input: PacketInput, permit: Pick<Permit, "kind">): string | null {
  const requirements = input.file.authority?.requirements ?? [];
  const own = new Set(
    requirements
      .filter(({ sheet, permitKind }) => sheet === "as-built" || permitKind === permit.kind)
      .map(({ id }) => id),
  );
  const missing = packetChecks(input).filter(
    ({ requirementId, due, mandatory, state }) =>
      due === "final" && mandatory && state === "missing" && !own.has(requirementId),
  );
  if (missing.length === 0) return null;
  const asked = sayList(missing.map(({ title }) => `“${title}”`));
  const name = input.file.authority?.name ?? "The authority";
  return `${name} asks for ${asked} before the final. Add it under “Requirements and packet”, or record there that it does not apply`;
}
