import type { Address } from "../facts/party.ts";
import { stateWritten } from "./address.ts";
import { plainWords } from "./delivery-line.ts";
import type { ListedFields } from "./listed-row.ts";
import { NUMBERED_UNITS, STATES } from "./postal-words.ts";
import { nameInCase, streetInCase } from "./title-case.ts";

/** An address out of the columns that a list splits it into, with a care-of line taken out. */
export function listedAddress(
  fields: ListedFields,
  which: "site" | "mail",
): { readonly address: Address; readonly careOf: string } {
  const of = (name: string) =>
    String((fields as Readonly<Record<string, unknown>>)[`${which}${name}`] ?? "").trim();
  const number = of("Number").replace(/\.0+$/, "");
  const lines = [[number, of("")].filter((part) => part !== "").join(" "), of("2")];
  const parted = lines.map(inCare);
  const hands = parted.map(({ hands: own }) => own).filter((line) => line !== "");
  const streets = parted.map(({ street: own }) => own).filter((line) => line !== "");
  const last = lastLine(of("Last"));
  const whole = streets.length === 1 && of("City") === "" && of("Last") === "";
  const { street, rest } = whole
    ? streetAndLast(streets[0] ?? "")
    : { street: streets[0] ?? "", rest: last };
  const inner = withoutUnit(street);
  const units = [inner.unit, of("Unit"), ...streets.slice(1)].filter((part) => part !== "");
  return {
    address: {
      street: streetInCase(inner.street),
      unit: streetInCase([...new Set(units)].join(" ")),
      city: nameInCase(of("City") || rest.city),
      state: stateWritten(of("State") || rest.state),
      zip: zipOf(of("Zip") || rest.zip),
    },
    careOf: hands.map(nameInCase).join(", "),
  };
}

/** `C/O DUNMORE TAX PO BOX 118`: in whose hands, and where they are, as far as the cell says. */
function inCare(line: string): { readonly hands: string; readonly street: string } {
  if (!CARE_OF.test(line)) return { hands: "", street: line };
  const rest = line.replace(CARE_OF, "").trim();
  const [, hands = rest, street = ""] = WITH_STREET.exec(rest) ?? [];
  return { hands, street };
}

const WITH_STREET = /^(.*?)[\s,]+((?:P\.? ?O\.? ?BOX|\d+[A-Z]?\s+\S).*)$/i;
const CARE_OF = /^\s*(?:C\/O|CARE OF|ATTN:?|ATTENTION:?|%)\s*/i;

interface Last {
  readonly city: string;
  readonly state: string;
  readonly zip: string;
}

const NOTHING: Last = { city: "", state: "", zip: "" };

/** `QUILLHAVEN WA 98000-1234`, `Quillhaven, WA`, `WA 98000`. */
function lastLine(text: string): Last {
  const found = /^(.*?)[\s,]*(\d{5}(?:-?\d{4})?)?$/.exec(text.trim());
  const [, head = "", zip = ""] = found ?? [];
  const words = head.replace(/,/g, " ").trim().split(/\s+/);
  for (const length of [2, 1]) {
    const state = words.slice(-length).join(" ");
    if (words.length >= length && STATES.has(plainWords(state).join(" ")))
      return { city: words.slice(0, -length).join(" "), state, zip };
  }
  // Two letters before a ZIP code are meant as a state; whether there is such a one is asked later.
  const meant = words.at(-1) ?? "";
  if (zip !== "" && words.length > 1 && /^[A-Z]{2}$/i.test(meant))
    return { city: words.slice(0, -1).join(" "), state: meant, zip };
  return { city: head.trim().replace(/,$/, ""), state: "", zip };
}

/** A whole address in one cell: `118 FENNEL ROW, QUILLHAVEN, WA 98000`; without commas it is a street. */
function streetAndLast(text: string): { street: string; rest: Last } {
  const at = text.indexOf(",");
  if (at < 0) return { street: text, rest: NOTHING };
  const parts = text.split(",").map((part) => part.trim());
  const isUnit = parts.length > 2 && NUMBERED_UNITS.has(plainWords(parts[1] ?? "")[0] ?? "");
  const cut = isUnit ? 2 : 1;
  const rest = lastLine(parts.slice(cut).join(", "));
  if (rest.zip === "" && rest.state === "") return { street: text, rest: NOTHING };
  return { street: parts.slice(0, cut).join(", "), rest };
}

/** `118 FENNEL ROW APT 2` and `118 FENNEL ROW #2`, street and unit apart. */
function withoutUnit(street: string): { street: string; unit: string } {
  const words = street.split(/[\s,]+/).filter((word) => word !== "");
  const hash = words.findIndex((word, at) => at > 1 && word.startsWith("#"));
  if (hash > 0)
    return { street: words.slice(0, hash).join(" "), unit: words.slice(hash).join(" ") };
  const at = words.length - 2;
  const name = plainWords(words[at] ?? "")[0] ?? "";
  if (at < 2 || !NUMBERED_UNITS.has(name) || !/^(\d[\w/-]*|[A-Z])$/i.test(words[at + 1] ?? ""))
    return { street, unit: "" };
  return { street: words.slice(0, at).join(" "), unit: words.slice(at).join(" ") };
}

/** Spreadsheets drop a ZIP code's first zero: `8012` is 08012; nine digits get their hyphen. */
function zipOf(text: string): string {
  const digits = text.replace(/\.0+$/, "").trim();
  if (/^\d{4}$/.test(digits)) return `0${digits}`;
  return /^\d{9}$/.test(digits) ? `${digits.slice(0, 5)}-${digits.slice(5)}` : digits;
}
