import type { GridColumn } from "#app/_components/grid/column.ts";
import type {
  Boundary,
  InspectionKind,
  InspectionNeed,
  RefusalStepKind,
  RequirementDue,
  RulePattern,
  SharedRule,
  SheetKind,
  WorkHolder,
} from "#lib/domain/facts/authority.ts";
import type { ClockEvent, ClockMeaning, ClockUnit, Roll } from "#lib/domain/facts/clock-rule.ts";
import { FOR_PERMIT, options, PERMITS, SOURCE } from "./column-parts.ts";
import { PAPER_COLUMN } from "./permit-columns.ts";

const PATTERNS: Record<RulePattern, string> = {
  "owners-to-main": "owners to the main",
  "owners-including-tap": "owners, including the tap",
  "owners-from-outside-of-main": "owners, from outside of main",
  "authority-in-right-of-way": "authority in the right-of-way",
  "divided-at-cleanout": "divided at a cleanout",
  "owners-own-authority-mends-lower": "owners own, authority repairs lower part",
  "by-kind-of-work": "by kind of work",
  "authority-when-proven": "authority once proven",
  unclear: "unclear",
};

const SHARED: Record<SharedRule, string> = {
  "all-whose-flow-passes": "all whose flow passes",
  "next-downstream-tie-in": "down to next tie-in",
  "all-connected-equally": "all connected, equally",
  "parties-decide": "left to the owners",
  unclear: "unclear",
};

const BOUNDARIES: Record<Boundary, string> = {
  "main-connection": "main connection",
  "right-of-way-line": "right-of-way line",
  curb: "curb",
  "property-line": "property line",
  cleanout: "cleanout",
  foundation: "foundation",
};

const DUES: Record<RequirementDue, string> = {
  submission: "the application",
  work: "the start of work",
  final: "the final inspection",
};

const SHEETS: Record<SheetKind, string> = {
  application: "application",
  attestation: "applicant and owners’ authorization",
  "line-drawing": "line drawing",
  "schedule-of-connections": "schedule of connections",
  "observation-log": "observation log",
  tests: "tests",
  capacity: "slope and load",
  scope: "scope of work",
  "proposed-pipe": "proposed pipe",
  pavement: "pavement and traffic",
  "crew-safety": "worker safety",
  responsibility: "responsibility",
  split: "split",
  consents: "consents",
  "proof-of-notice": "proof of notice",
  "contractor-standing": "contractor license and insurance",
  "as-built": "as-built",
  "holds-and-waivers": "holds and waivers",
  upload: "upload",
};

const EVENTS: Record<ClockEvent, string> = {
  "letter-sent": "a letter is sent",
  "certified-letter-mailed": "a certified letter is mailed",
  "split-sent": "the split is sent",
  "locate-called": "the locate is called",
  "work-begins": "work begins",
  "permit-issued": "the permit is issued",
  "permit-submitted": "the permit is submitted",
  "corrections-asked": "corrections are required",
  "permit-denied": "the permit is denied",
  "permit-expires": "the permit expires",
  "emergency-work": "emergency work begins",
  "authority-order": "the authority gives an order",
  "tenant-entry": "a home is entered",
  "dye-test": "dye goes down the sewer",
  "drains-paused": "drains are shut down",
  "inspection-booked": "an inspection is scheduled",
  "work-ends": "work ends",
  "drains-back": "drains are back on",
  "street-closed": "street parking is closed",
};

const UNITS: Record<ClockUnit, string> = {
  "calendar-days": "calendar days",
  "business-days": "business days",
  hours: "hours",
  months: "months",
};

const ROLL_WORDS: Record<Roll, string> = {
  none: "stays",
  forwards: "moves to the next business day",
  backwards: "moves back to the previous business day",
};

const MEANINGS: Record<ClockMeaning, string> = {
  "due-by": "due by",
  "not-before": "not before",
  "not-after": "not after",
  expires: "expires",
};

const NEEDED: Record<InspectionNeed, string> = {
  no: "nothing",
  backfill: "backfill",
  final: "the final",
};

const BOOKING: Record<InspectionKind["leadUnit"], string> = {
  hours: "hours",
  "business-days": "business days",
};

const HOLDERS: Record<WorkHolder, string> = {
  owners: "owners",
  authority: "authority",
  unclear: "unclear",
};

/** Who does each kind of work below the place where the rule divides the line. */
const KIND_COLUMNS: readonly GridColumn[] = (
  [
    ["clearingBy", "Clearing below: by"],
    ["repairBy", "Repair below: by"],
    ["replacementBy", "Replacement below: by"],
  ] as const
).map(([key, title]) => ({
  key,
  title,
  kind: "choice",
  width: 11,
  choices: options(HOLDERS),
  hint: "Between the main and the boundary, where the rule divides the line: many authorities repair there and leave clearing to the owner",
}));

export const RULE_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Rule",
    kind: "text",
    width: 30,
    required: true,
    example: "Owners to the main",
  },
  {
    key: "pattern",
    title: "Who owns the pipe",
    pasteHeadings: ["who has the pipe"],
    kind: "choice",
    required: true,
    choices: options(PATTERNS),
  },
  {
    key: "boundary",
    title: "Boundary",
    pasteHeadings: ["divided at"],
    kind: "choice",
    required: true,
    choices: options(BOUNDARIES),
    hint: "Where the authority’s part ends, if the rule divides the line",
  },
  {
    key: "sharedRule",
    title: "Shared by",
    pasteHeadings: ["among the owners"],
    kind: "choice",
    required: true,
    choices: options(SHARED),
    hint: "Which owners are responsible for a section several use",
  },
  ...KIND_COLUMNS,
  ...SOURCE,
  {
    key: "url",
    title: "Web address",
    kind: "text",
    width: 24,
    pasteHeadings: ["url", "link", "address on the web"],
  },
  { key: "note", title: "Note", kind: "text", width: 30 },
];

export const REQUIREMENT_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Requirement",
    kind: "text",
    width: 30,
    required: true,
    example: "Drawing to scale",
    pasteHeadings: ["title", "what is needed", "item"],
  },
  {
    key: "sheet",
    title: "Sheet",
    kind: "choice",
    required: true,
    choices: options(SHEETS),
    pasteHeadings: ["answered by"],
  },
  { key: "detail", title: "Detail", kind: "text", width: 40 },
  {
    key: "mandatory",
    title: "Required",
    kind: "yesno",
    pasteHeadings: ["mandatory", "must be there"],
  },
  {
    key: "due",
    title: "Needed by",
    kind: "choice",
    choices: options(DUES),
    pasteHeadings: ["when", "stage"],
  },
  {
    key: "permitKind",
    title: "Separate permit",
    pasteHeadings: ["a permit of its own"],
    kind: "choice",
    hint: "If it is another permit that must be valid during the work",
    choices: [{ value: "", label: "–" }, ...options(PERMITS)],
  },
  PAPER_COLUMN,
  ...SOURCE,
];

export const INSPECTION_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Inspection",
    kind: "text",
    width: 24,
    required: true,
    example: "Open trench",
  },
  {
    key: "neededBefore",
    title: "Needed before",
    kind: "choice",
    choices: options(NEEDED),
    hint: "The permit does not go on without it",
  },
  FOR_PERMIT,
  { key: "lead", title: "Book ahead", kind: "whole", example: "1" },
  { key: "leadUnit", title: "Counted in", kind: "choice", choices: options(BOOKING) },
  { key: "cutOff", title: "Call by", kind: "time", hint: "Later calls count for the next day" },
  { key: "asksForFigures", title: "Test figures", kind: "yesno" },
  ...SOURCE,
];

export const CLOCK_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Deadline",
    pasteHeadings: ["clock"],
    kind: "text",
    width: 30,
    required: true,
    example: "Digging can start",
  },
  {
    key: "meaning",
    title: "Meaning",
    kind: "choice",
    required: true,
    choices: options(MEANINGS),
    pasteHeadings: ["says"],
  },
  { key: "count", title: "Count", kind: "whole", required: true, example: "2" },
  {
    key: "unit",
    title: "Unit",
    kind: "choice",
    required: true,
    choices: options(UNITS),
    pasteHeadings: ["of"],
  },
  {
    key: "way",
    title: "Before or after",
    pasteHeadings: ["counted"],
    kind: "choice",
    required: true,
    choices: [
      { value: "after", label: "after" },
      { value: "before", label: "before" },
    ],
  },
  { key: "event", title: "Event", kind: "choice", required: true, choices: options(EVENTS) },
  {
    key: "countsEventDay",
    title: "Count event day",
    pasteHeadings: ["event is day 1"],
    kind: "yesno",
    hint: "Most rules do not count the day of the event",
  },
  {
    key: "fullDays",
    title: "Full days",
    kind: "yesno",
    hint: "Full days must pass: it opens the day after the last one",
  },
  {
    key: "roll",
    title: "If on a non-business day",
    pasteHeadings: ["on a day that is none"],
    kind: "choice",
    required: true,
    choices: options(ROLL_WORDS),
    hint: "What happens when the count ends on a weekend or a holiday",
  },
  {
    key: "mailDays",
    title: "Extra days if mailed",
    pasteHeadings: ["more by mail"],
    kind: "whole",
    hint: "Calendar days added when the notice went by mail",
  },
  {
    key: "whiteLineFirst",
    title: "White-line first",
    kind: "yesno",
    hint: "For a call to 811: the dig area is marked in white before it",
  },
  ...SOURCE,
];

const STEPS: Record<RefusalStepKind, string> = {
  notice: "written notice",
  mediation: "mediation",
  "authority-order": "order by the authority",
  arbitration: "arbitration",
  court: "court",
  other: "other",
};

export const REFUSAL_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Step",
    kind: "text",
    width: 30,
    required: true,
    example: "The district’s mediation of shared lines",
  },
  { key: "kind", title: "Kind", kind: "choice", required: true, choices: options(STEPS) },
  {
    key: "days",
    title: "Days after previous step",
    pasteHeadings: ["days after the step before"],
    kind: "whole",
    width: 10,
    hint: "First step: after the refusal. Blank if not stated.",
    example: "30",
  },
  { key: "detail", title: "Detail", kind: "text", width: 40 },
  ...SOURCE,
];

export const HOLIDAY_COLUMNS: readonly GridColumn[] = [
  { key: "day", title: "Date", kind: "day", required: true, width: 14, example: "11/26/2026" },
  { key: "name", title: "Name", kind: "text", width: 32, example: "Thanksgiving Day" },
  {
    key: "source",
    title: "Source",
    kind: "text",
    width: 36,
    pasteHeadings: ["from where"],
    hint: "One that ends in “kept only if adopted” counts the safe way until you replace it",
    example: "5 U.S.C. 6103",
  },
];
