import type { FormField, FormMapping } from "../facts/form.ts";
import { formFact } from "./form-facts.ts";

// What a form's fields are called is its maker's choice. A suggestion goes by the words in the name and in
// what the form says of the field, then by what is printed beside it; a person looks at every one before it is used.

interface Clue {
  /** Every one of these stands in the name. */
  readonly all: readonly RegExp[];
  /** None of these does. */
  readonly none?: readonly RegExp[];
  readonly fact: string;
}

const CONTRACTOR = /\b(contractor|applicant|company|firm|business|installer|agent)\b/;
const OWNER = /\b(owners?|grantor|homeowner)\b/;
const PROPERTY = /\b(site|project|job|property|premises|work|location|service)\b/;
const ADDRESS = /\b(address|addr|street|location)\b/;
const MAIL = /\b(mail|mailing|billing)\b/;
const EXPIRES = /\b(exp|expires|expiry|expiration|valid)\b/;
const DATE = /\bdate\b/;
const PHONE = /\b(phone|tel|telephone|cell|mobile)\b/;
const EMAIL = /\b(e ?mail|email)\b/;
const LICENSE = /\b(licen[sc]e|lic|registration|reg)\b/;

const COMPENSATION = /\b(workers? comp|workers? compensation|compensation)\b/;
const NEW = /\b(new|proposed)\b/;

/** For the authority, or by hand: nothing of ours. */
const NOT_OURS =
  /\b(office use|official use|staff|city use|agency use|received|approved|approval|inspector|reviewed|receipt|sign|signature|signed|initials?|seal|notary)\b/;

/** The first that fits is taken, so the narrower ones come first. */
const CLUES: readonly Clue[] = [
  { all: [/\bbusiness\b/, LICENSE, EXPIRES], fact: "contractor.business-license-expires" },
  { all: [/\bbusiness\b/, LICENSE], fact: "contractor.business-license" },
  { all: [COMPENSATION, EXPIRES], fact: "contractor.compensation-expires" },
  { all: [COMPENSATION], none: [/\bcompany|carrier\b/], fact: "contractor.compensation" },
  { all: [/\badditional insured\b/], fact: "application.insured-as" },
  { all: [NEW, /\bmaterial\b/], fact: "pipe-new.material" },
  { all: [NEW, /\b(diameter|dia|size)\b/], fact: "pipe-new.size" },
  { all: [NEW, /\blength\b/], fact: "pipe-new.length" },
  { all: [NEW, /\b(slope|grade)\b/], fact: "pipe-new.slope" },
  { all: [/\bbedding\b/], fact: "pipe-new.bedding" },
  { all: [/\b(square feet|sq ft|square footage)\b/], fact: "surface.total" },
  { all: [/\btraffic\b/], none: [/\b(plan|permit|number|no)\b/], fact: "application.traffic" },
  { all: [LICENSE, EXPIRES], fact: "contractor.license-expires" },
  { all: [/\bbond\b/, EXPIRES], fact: "contractor.bond-expires" },
  { all: [/\binsurance|policy|liability\b/, EXPIRES], fact: "contractor.insurance-expires" },
  { all: [LICENSE], none: [/\bbusiness\b/, /\bdriver/], fact: "contractor.license" },
  { all: [/\bbond\b/], none: [/\bamount\b/], fact: "contractor.bond" },
  {
    all: [/\b(insurance|policy)\b/],
    none: [/\bamount\b/, /\bcompany|carrier\b/],
    fact: "contractor.insurance",
  },
  { all: [/\b(811|locate|dig|one call)\b/, DATE], fact: "ticket.called" },
  { all: [/\b(811|locate|ticket|one call)\b/], fact: "ticket.number" },
  { all: [/\b(emergency|24 ?hour|after hours)\b/, PHONE], fact: "contractor.emergency" },
  { all: [OWNER, PHONE], fact: "owner.phone" },
  { all: [OWNER, EMAIL], fact: "owner.email" },
  { all: [OWNER, /\b(city|state|zip)\b/], fact: "owner.city-state-zip" },
  { all: [OWNER, /\b(parcel|apn|tax)\b/], fact: "owner.parcel" },
  { all: [OWNER, MAIL], fact: "owner.mailing" },
  { all: [OWNER, ADDRESS], fact: "owner.mailing" },
  { all: [OWNER], fact: "owner.name" },
  { all: [CONTRACTOR, PHONE], fact: "contractor.phone" },
  { all: [CONTRACTOR, EMAIL], fact: "contractor.email" },
  { all: [CONTRACTOR, /\bcity\b/, /\b(state|zip)\b/], fact: "contractor.city-state-zip" },
  { all: [CONTRACTOR, /\bcity\b/], fact: "contractor.city" },
  { all: [CONTRACTOR, /\bstate\b/], fact: "contractor.state" },
  { all: [CONTRACTOR, /\bzip\b/], fact: "contractor.zip" },
  { all: [CONTRACTOR, ADDRESS], fact: "contractor.address" },
  { all: [CONTRACTOR], none: [/\b(type|is|title)\b/], fact: "contractor.name" },
  { all: [/\b(parcel|apn|tax (id|no|number|lot))\b/], fact: "property.parcel" },
  { all: [/\blegal\b/], fact: "property.legal" },
  { all: [/\bvaluation\b/], fact: "application.valuation" },
  { all: [/\b(value|cost|estimate)\b/], fact: "work.value" },
  { all: [/\b(descri\w*|scope)\b/], none: [/\blegal\b/], fact: "work.description" },
  { all: [/\b(start|begin|begins|commence\w*)\b/, /\b(date|work|on)\b/], fact: "work.begins" },
  { all: [/\b(end|finish|completion|complete)\b/, /\b(date|work|on)\b/], fact: "work.ends" },
  { all: [/\b(depth|deep)\b/], fact: "work.depth" },
  { all: [/\b(in|within) (the )?(street|right of way|row)\b/], fact: "work.in-street" },
  { all: [/\b(diameter|dia|pipe size)\b/], fact: "pipe.diameter" },
  { all: [/\bpipe material|existing material|material\b/], fact: "pipe.material" },
  { all: [/\b(length|lineal|linear)\b/], fact: "work.length" },
  { all: [/\b(connections|structures|buildings)\b/], fact: "property.count" },
  { all: [/\b(units|dwellings)\b/], fact: "property.units" },
  { all: [/\bside sewer permit\b/], fact: "permit.side-sewer" },
  { all: [/\bstreet use permit|right of way permit\b/], fact: "permit.street-use" },
  { all: [/\bpermit\b/, /\b(no|number|num)\b/], fact: "permit.number" },
  { all: [PROPERTY, /\bcity\b/], fact: "property.city" },
  { all: [PROPERTY, /\bstate\b/], fact: "property.state" },
  { all: [PROPERTY, /\bzip\b/], fact: "property.zip" },
  { all: [PROPERTY, ADDRESS], fact: "property.address" },
  { all: [ADDRESS], none: [MAIL], fact: "property.address" },
  { all: [PHONE], fact: "contractor.phone" },
  { all: [EMAIL], fact: "contractor.email" },
  { all: [DATE], fact: "today" },
];

/** A field’s name as words: `topmost[0].OwnerName_2[0]` is `owner name 2`. */
export function wordsOfName(name: string): string {
  const last = name
    .replace(/\[\d+\]/g, "")
    .split(".")
    .slice(-2)
    .join(" ");
  return last
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .replace(/([A-Za-z])(\d)/g, "$1 $2")
    .replace(/[^A-Za-z0-9]+/g, " ")
    .replace(/\bpage \d+\b/gi, "")
    .trim()
    .toLowerCase();
}

/** What probably goes into a field, by what it is called or else by what is printed beside it; null where nothing speaks for anything. */
export function suggestedMapping(field: FormField): FormMapping | null {
  if (field.kind === "signature") return null;
  const hint = plain(field.hint);
  const printed = plain(field.printed);
  const name = wordsOfName(field.name);
  const blank = { field: field.name, fact: "", row: 0, words: "", when: [] };
  if (NOT_OURS.test(name) || NOT_OURS.test(hint)) return { ...blank, source: "blank" };
  const named = factIn(name) ?? factIn(hint) ?? factIn(`${name} ${hint}`);
  if (named === null && NOT_OURS.test(printed)) return { ...blank, source: "blank" };
  const fact = named ?? factIn(printed);
  const known = fact === null ? null : formFact(fact);
  if (known === null) return null;
  if ((field.kind === "text") !== (known.kind !== "choice")) return null;
  const row = known.repeats ? rowIn(name, field) : 0;
  const when = field.kind === "check" ? [{ value: "yes", option: "" }] : [];
  return { ...blank, source: "fact", fact: known.key, row, when };
}

function plain(words: string): string {
  return words.toLowerCase().replace(/[^a-z0-9 ]+/g, " ");
}

function factIn(words: string): string | null {
  const clue = CLUES.find(
    ({ all, none = [] }) =>
      all.every((each) => each.test(words)) && !none.some((each) => each.test(words)),
  );
  return clue?.fact ?? null;
}

/** Which of several: by the number in the name; a field of several lines takes them all. */
function rowIn(name: string, { lines }: FormField): number {
  const number = /\b([1-9]\d?)\b/.exec(name)?.[1];
  if (number !== undefined) return Number(number);
  return lines === "many" ? 0 : 1;
}

/** A suggestion for every field that has none yet. */
export function suggestedMappings(
  fields: readonly FormField[],
  mappings: readonly FormMapping[],
): FormMapping[] {
  const known = new Set(mappings.map(({ field }) => field));
  return fields
    .filter(({ name }) => !known.has(name))
    .flatMap((field) => suggestedMapping(field) ?? []);
}
