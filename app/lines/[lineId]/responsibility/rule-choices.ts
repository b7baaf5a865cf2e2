import type { Authority } from "#lib/domain/facts/authority.ts";

interface RuleChoice {
  /** An authority's id, and a rule's after a space. */
  readonly value: string;
  readonly label: string;
}

/**
 * The rules that may be selected on a line: of its own authority where it has one, and those of others after
 * them, called so. An authority without a rule is offered only where it is the line's or none is.
 */
export function ruleChoices(
  authorities: readonly Authority[],
  authorityId: string | null,
): RuleChoice[] {
  const own = authorities.filter(({ id }) => authorityId === null || id === authorityId);
  const others = authorities.filter((authority) => !own.includes(authority));
  return [
    ...own.flatMap((authority) => [
      { value: authority.id, label: `${authority.name}: no rule selected` },
      ...rulesOf(authority, authority.name),
    ]),
    ...others.flatMap((other) => rulesOf(other, `Another authority, ${other.name}`)),
  ];
}

/** The one rule that may apply: the line's authority has no other, or there is one authority with one. */
export function onlyRule(
  authorities: readonly Authority[],
  authorityId: string | null,
): RuleChoice | null {
  const own = authorities.filter(({ id }) => authorityId === null || id === authorityId);
  const [only, ...others] = own.flatMap((authority) => rulesOf(authority, authority.name));
  return only === undefined || others.length > 0 ? null : only;
}

function rulesOf({ id, rules }: Authority, name: string): RuleChoice[] {
  return rules.map((rule) => ({ value: `${id} ${rule.id}`, label: `${name}: ${rule.title}` }));
}
