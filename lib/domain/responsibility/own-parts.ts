import { type Authority, type AuthorityPart, eachPart } from "../facts/authority.ts";

/** The authority with every part of it saying whose it is. */
export function withOwnParts(authority: Authority): Authority {
  const own = (part: AuthorityPart) =>
    authority[part].map((each) => ({ ...each, authorityId: authority.id }));
  return { ...authority, ...eachPart(own) } as Authority;
}
