import type { ClockRule, Holiday } from "../facts/clock-rule.ts";
import { partsOf } from "../time/days.ts";
import { FEDERAL_SOURCE, federalHolidays } from "../time/federal-holidays.ts";

/** Citations of states' statutes and rules, as they are usually written. */
const STATE_LAW = [
  /\b(RCW|WAC|ORS|OAR|NRS|NAC|ARS|CRS|ILCS|KRS|MCL|MGL|ORC|OAC|HRS|NMSA|RSA|TCA|OCGA)\b/,
  /\b(A\.R\.S\.|C\.R\.S\.|M\.G\.L\.|O\.C\.G\.A\.|N\.J\.S\.A\.|R\.C\.W\.|K\.S\.A\.|R\.S\.Mo\.)/,
  /\b[A-Z][A-Za-z.]*\.?\s+((Gen|Rev|Comp|Ann|Util|Gov|Govt|Civ|Lab|Bus|Prof)[a-z]*\.?\s+)*(Stat(s|\.|utes?)?|Code|Laws)\b/,
];

/** Codes of towns and districts, and the nation's own law, are no state's. */
const OTHER_LAW = /\b(Municipal|City|County|District|Town|Village|U\.S\.|USC|CFR|C\.F\.R\.|Fed)\b/i;

/**
 * A sentence where a rule that counts business days is by a state's law, while the authority's table
 * holds nothing but federal holidays: a state's own day would be counted as a business day. Empty
 * otherwise, and where no holidays are entered at all, which the count says for itself.
 */
export function holidayCaution(
  { unit, roll, citation }: Pick<ClockRule, "unit" | "roll" | "citation">,
  holidays: readonly Pick<Holiday, "day" | "source">[],
): string {
  const counts = unit === "business-days" || roll !== "none";
  if (!counts || holidays.length === 0 || !isStateLaw(citation)) return "";
  if (!holidays.every(isPlainlyFederal)) return "";
  return `Only federal holidays are entered, and ${citation} is a state’s law: import the state’s list, or the days may be off.`;
}

function isStateLaw(citation: string): boolean {
  return !OTHER_LAW.test(citation) && STATE_LAW.some((written) => written.test(citation));
}

/** Of the federal table alone: neither brought in with a state's list, nor a day of one's own. */
function isPlainlyFederal({ day, source }: Pick<Holiday, "day" | "source">): boolean {
  if (source !== "" && source !== FEDERAL_SOURCE) return false;
  return federalHolidays(partsOf(day).year).some((federal) => federal.day === day);
}
