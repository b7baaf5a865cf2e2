import type { Address } from "../facts/party.ts";
import { plainWords } from "./delivery-line.ts";
import { phoneProblem } from "./phone.ts";
import { STATES } from "./postal-words.ts";

/** What is wrong with one field of a typed address, and how to write it. */
export interface AddressProblem {
  readonly field: keyof Address;
  readonly message: string;
}

/**
 * A state that there is none of, and a ZIP code without five or nine digits. An address abroad is
 * written into the city line, with state and ZIP left empty. What is empty is not asked for here.
 */
export function addressProblems({ state, zip }: Address): AddressProblem[] {
  const isState = state.trim() === "" || STATES.has(plainWords(state).join(" "));
  const isZip = /^\s*(\d{5}([\s-]?\d{4})?)?\s*$/.test(zip);
  return [
    ...(isState ? [] : [{ field: "state", message: STATE_WORDS } as const]),
    ...(isZip ? [] : [{ field: "zip", message: ZIP_WORDS } as const]),
  ];
}

const ABROAD = "an address abroad goes into the city line, with state and ZIP empty";
const STATE_WORDS = `Enter a US state, e.g. WA or Washington; ${ABROAD}`;
const ZIP_WORDS = `Enter five digits, e.g. 98000, or nine, e.g. 98000-1234; ${ABROAD}`;

/** What is wrong with a typed address and phone, as fields and words. */
export function reachProblems(
  typed: Pick<Address, "state" | "zip"> & { readonly phone: string },
): { readonly field: "state" | "zip" | "phone"; readonly message: string }[] {
  const { state, zip, phone } = typed;
  const wrong = phoneProblem(phone);
  const address = addressProblems({ street: "", unit: "", city: "", state, zip });
  return [
    ...address.map(({ field, message }) => ({ field: field as "state" | "zip", message })),
    ...(wrong === null ? [] : [{ field: "phone", message: wrong } as const]),
  ];
}
