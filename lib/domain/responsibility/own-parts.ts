import type { Authority } from "../facts/authority.ts";

/** The authority with every part of it saying whose it is. */
export function withOwnParts(authority: Authority): Authority {
  const own = <T extends object>(parts: readonly T[]) =>
    parts.map((part) => ({ ...part, authorityId: authority.id }));
  return {
    ...authority,
    rules: own(authority.rules),
    requirements: own(authority.requirements),
    fees: own(authority.fees),
    clockRules: own(authority.clockRules),
    holidays: own(authority.holidays),
    refusalSteps: own(authority.refusalSteps),
  };
}
