import { getOffice } from "#db/queries/office.ts";
import { type Authority, noParts } from "#lib/domain/facts/authority.ts";
import { stateLetters } from "#lib/domain/party/address.ts";
import { type Starter, starterAuthority } from "#lib/domain/starters/authorities.ts";
import type { Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { saveAuthority } from "./save-authority.ts";

/**
 * Adds an authority: with its name alone, or whole from an invented example, every row of which says
 * that it is one. An example's holidays are those of the office's state. Without an example the name
 * has to be given.
 */
export function addAuthority(
  act: Act,
  { name, starter }: { readonly name: string; readonly starter: Starter | null },
): Result<{ authorityId: string }, Refusal> {
  const id = act.newId();
  if (starter === null) return saveAuthority(act, { ...EMPTY, id, name });
  const state = stateLetters(getOffice(act.db)?.address.state ?? "");
  return saveAuthority(act, starterAuthority(starter, { id, name, state, today: act.today }));
}

const EMPTY: Omit<Authority, "id" | "name"> = {
  office: "",
  address: { street: "", unit: "", city: "", state: "", zip: "" },
  phone: "",
  email: "",
  note: "",
  ...noParts(),
};
