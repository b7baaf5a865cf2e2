import { offeredHolidays } from "../calendar/holiday-sets.ts";
import {
  AUTHORITY_PART_NAMES,
  type Authority,
  FEE,
  type Fee,
  INSPECTION_KIND,
  type InspectionKind,
  type RefusalStep,
  type Requirement,
  type ResponsibilityRule,
} from "../facts/authority.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import { usualRow } from "../facts/field.ts";
import type {
  DrawingItem,
  DrawingScale,
  PavementRule,
  PermitOrder,
  RequirementCondition,
} from "../facts/permit-rule.ts";
import type { ProofRule } from "../facts/proof-rule.ts";
import { STATUTORY_PAPER, type StatutoryPaper } from "../facts/statutory-paper.ts";
import type { Day } from "../time/day.ts";

/** The invented authorities that an office can start from. */
export const STARTERS = ["city-to-main", "district-right-of-way", "town-cleanout"] as const;
export type Starter = (typeof STARTERS)[number];

/** Stands as the citation of every row of an example, on screen and on paper, until it is replaced. */
export const EXAMPLE_CITATION = "Example: check against your code";

interface Kind {
  /** Its name until the office gives it one. */
  readonly name: string;
  /** What sets it apart, for the list to choose from. */
  readonly about: string;
  readonly rules: readonly Row<ResponsibilityRule>[];
  readonly permitDays: number;
  readonly fees: readonly Pick<Row<Fee>, "title" | "amount" | "per">[];
}

/** A row without what is the same for all rows of an example. */
type Row<T> = Omit<T, "id" | "authorityId" | "citation" | "asOf" | "url" | "note">;

const SHARED = {
  clearingBy: "owners",
  repairBy: "owners",
  replacementBy: "owners",
  sharedRule: "all-whose-flow-passes",
} as const;

const KINDS: Record<Starter, Kind> = {
  "city-to-main": {
    name: "Example city",
    about: "City where owners are responsible for the pipe all the way to the main",
    rules: [
      {
        title: "Owners to the main, shared by those whose flow passes",
        pattern: "owners-to-main",
        boundary: "main-connection",
        ...SHARED,
      },
      {
        title: "Owners to the main, all connected equally",
        pattern: "owners-to-main",
        boundary: "main-connection",
        ...SHARED,
        sharedRule: "all-connected-equally",
      },
    ],
    permitDays: 180,
    fees: [
      { title: "Side sewer repair permit", amount: 25_000, per: "permit" },
      { title: "Inspection", amount: 9_500, per: "inspection" },
    ],
  },
  "district-right-of-way": {
    name: "Example sewer district",
    about: "District that repairs the part in the street; owners clear it",
    rules: [
      {
        title: "District repairs in the right-of-way; owners clear",
        pattern: "authority-in-right-of-way",
        boundary: "right-of-way-line",
        sharedRule: "all-whose-flow-passes",
        clearingBy: "owners",
        repairBy: "authority",
        replacementBy: "authority",
      },
      {
        title: "Old lines never accepted by the district: owners to the main",
        pattern: "owners-to-main",
        boundary: "main-connection",
        ...SHARED,
      },
    ],
    permitDays: 90,
    fees: [
      { title: "Side sewer repair permit", amount: 28_000, per: "permit" },
      { title: "Each building connected", amount: 1_500, per: "connection" },
      { title: "Reinspection", amount: 12_000, per: "reinspection" },
    ],
  },
  "town-cleanout": {
    name: "Example town",
    about: "Town that is responsible from the main to the cleanout",
    rules: [
      {
        title: "Divided at the cleanout; each owner down to the next tie-in",
        pattern: "divided-at-cleanout",
        boundary: "cleanout",
        sharedRule: "next-downstream-tie-in",
        clearingBy: "owners",
        repairBy: "authority",
        replacementBy: "authority",
      },
      {
        title: "No cleanout found: the town decides case by case",
        pattern: "unclear",
        boundary: "main-connection",
        ...SHARED,
        sharedRule: "unclear",
      },
    ],
    permitDays: 120,
    fees: [{ title: "Sewer repair permit, inspections included", amount: 17_500, per: "permit" }],
  },
};

const REQUIREMENTS: readonly Row<Requirement>[] = [
  required(
    "application",
    "Application form",
    "Site addresses, owners, parcel numbers, contractor.",
  ),
  required("line-drawing", "Line drawing to scale", "With stations in feet from the main."),
  required(
    "schedule-of-connections",
    "Schedule of connections",
    "Every connection on record or found.",
  ),
  required("observation-log", "Camera inspection log"),
  required("scope", "Scope of work"),
  required("consents", "Consent of each owner whose lot is entered or dug"),
  required("proof-of-notice", "Proof of notice to every owner on the line"),
  required(
    "contractor-standing",
    "Contractor license, bond and insurance",
    "Valid until the work ends.",
  ),
  required("upload", "Recorded easement for each lot crossed", "A copy with the recording number."),
  {
    ...required("upload", "Street use permit, where the street is dug"),
    due: "work",
    permitKind: "street-use",
  },
  { ...required("as-built", "As-built drawing", "What was built, with stations."), due: "final" },
];

function required(sheet: Requirement["sheet"], title: string, detail = ""): Row<Requirement> {
  return {
    sheet,
    title,
    detail,
    mandatory: true,
    due: "submission",
    permitKind: null,
    paper: null,
  };
}

/** On what a requirement of the examples hangs, by its title. */
const CONDITIONS: readonly (readonly [string, RequirementCondition["fact"]])[] = [
  ["Recorded easement for each lot crossed", "lot-crossed"],
  ["Street use permit, where the street is dug", "dug-in-right-of-way"],
];

const ORDERS: readonly Row<PermitOrder>[] = [
  { kind: "street-use", step: "submitted", waitsFor: "side-sewer", until: "submitted" },
];

const PAVEMENT: readonly Row<PavementRule>[] = [
  { surface: "asphalt", beyond: 100, leastWidth: 400, leastLength: 400, noCutYears: null },
];

const DRAWING: readonly Row<DrawingItem>[] = [
  { item: "north-arrow", title: "North arrow" },
  { item: "scale", title: "Scale" },
  { item: "lot-lines", title: "Lot lines" },
  { item: "buildings", title: "Buildings" },
  { item: "cleanouts", title: "Cleanouts" },
  { item: "connections", title: "Every connection with its distance from the main" },
];

const SCALES: readonly Row<DrawingScale>[] = [10, 20, 30, 40, 50].map((feetPerInch) => ({
  feetPerInch,
}));

function clocks(permitDays: number): readonly Row<ClockRule>[] {
  const plain = {
    unit: "calendar-days",
    way: "after",
    countsEventDay: false,
    fullDays: false,
    roll: "forwards",
    mailDays: 0,
    meaning: "due-by",
    whiteLineFirst: false,
  } as const;
  const before = { ...plain, way: "before", roll: "backwards" } as const;
  const window = { ...plain, roll: "none" } as const;
  return [
    { ...plain, title: "Reply to a letter", event: "letter-sent", count: 14, mailDays: 3 },
    { ...plain, title: "Reply to a proposed split", event: "split-sent", count: 21, mailDays: 3 },
    {
      ...window,
      title: "Locate marks: earliest start",
      event: "locate-called",
      count: 2,
      unit: "business-days",
      fullDays: true,
      meaning: "not-before",
    },
    {
      ...window,
      title: "Locate ticket expires",
      event: "locate-called",
      count: 21,
      meaning: "expires",
    },
    {
      ...window,
      title: "Permit expires",
      event: "permit-issued",
      count: permitDays,
      meaning: "expires",
    },
    { ...plain, title: "Respond to corrections", event: "corrections-asked", count: 30 },
    { ...plain, title: "Appeal a denial", event: "permit-denied", count: 14 },
    {
      ...before,
      title: "Notify occupants before work begins",
      event: "work-begins",
      count: 3,
      unit: "business-days",
    },
    {
      ...before,
      title: "Notify occupants before a drain shutdown",
      event: "drains-paused",
      count: 24,
      unit: "hours",
    },
    {
      ...before,
      title: "Notify tenants before a dwelling is entered",
      event: "tenant-entry",
      count: 48,
      unit: "hours",
    },
  ];
}

const STEPS: readonly Row<RefusalStep>[] = [
  {
    kind: "notice",
    title: "Written demand for the share",
    detail: "With the statement, by certified and first-class mail.",
    days: null,
  },
  { kind: "mediation", title: "Mediation between the owners", detail: "", days: 30 },
  {
    kind: "authority-order",
    title: "Ask the authority to order the repair",
    detail: "Where sewage comes up, the authority may act sooner.",
    days: 30,
  },
];

/** No easier than the house's own table, whoever leaves them as they are. */
const PROOFS: readonly Row<ProofRule>[] = [
  { letter: null, method: "first-class", counts: "never" },
  { letter: null, method: "certified", counts: "accepted" },
  { letter: null, method: "by-hand", counts: "handed-over" },
];

/** Papers of the kinds that states ask of contractors, for the office to check against its own state. */
const PAPERS: readonly (Pick<StatutoryPaper, "title" | "titleEs" | "to" | "event"> &
  Partial<StatutoryPaper>)[] = [
  {
    title: "Notice to customer",
    titleEs: "Aviso al cliente",
    to: "customer",
    event: "work-begins",
    way: "before",
    by: "in-person",
  },
  {
    title: "Preliminary notice to owner",
    titleEs: "Aviso preliminar al propietario",
    to: "owner",
    condition: "not-direct",
    event: "work-begins",
    count: 20,
    by: "in-person-or-certified",
    given: "sent",
  },
  {
    title: "Right to cancel",
    titleEs: "Derecho de cancelación",
    to: "customer",
    condition: "signed-away",
    event: "contract",
    by: "in-person",
    workWaits: 3,
  },
];

/** What they come to look at; which of it holds the backfill or the final is for the office to say. */
const INSPECTIONS: readonly Pick<InspectionKind, "title" | "lead" | "leadUnit">[] = [
  { title: "Open trench, before backfill", lead: 1, leadUnit: "business-days" },
  { title: "Final", lead: 1, leadUnit: "business-days" },
];

/** The examples to choose from, each with what sets it apart. */
export function starterChoices(): readonly { readonly starter: Starter; readonly about: string }[] {
  return STARTERS.map((starter) => ({ starter, about: KINDS[starter].about }));
}

/**
 * A whole authority to start from: rules, requirements, fees, clocks, steps after a refusal, and the
 * usual holidays of a state (`WA`; empty: federal alone) for this year and the next. All of it is
 * invented but the holidays, and every row says so in its citation until the office replaces it.
 */
export function starterAuthority(
  starter: Starter,
  { id, name, state, today }: { id: string; name: string; state: string; today: Day },
): Authority {
  const kind = KINDS[starter];
  const year = Number(today.slice(0, 4));
  const numbered = <T extends object>(part: string, rows: readonly T[]) =>
    rows.map((row, at) => ({
      ...row,
      id: `${id}-${part}-${at + 1}`,
      authorityId: id,
      citation: EXAMPLE_CITATION,
      asOf: today,
    }));
  const requirements = numbered("requirement", REQUIREMENTS);
  return {
    id,
    name: name.trim() === "" ? kind.name : name,
    office: "",
    address: { street: "", unit: "", city: "", state: "", zip: "" },
    phone: "",
    email: "",
    note: "Started from an invented example. Check every row against your code before you rely on it.",
    rules: numbered("rule", kind.rules).map((rule) => ({ ...rule, url: "", note: "" })),
    requirements,
    fees: numbered("fee", kind.fees).map((fee) => ({ ...usualRow(FEE), ...fee })),
    inspectionKinds: numbered("inspection", INSPECTIONS).map((each) => ({
      ...usualRow(INSPECTION_KIND),
      ...each,
    })),
    clockRules: numbered("clock", clocks(kind.permitDays)),
    conditions: numbered("condition", conditionsOf(requirements)),
    permitOrders: numbered("order", ORDERS),
    pavementRules: numbered("pavement", PAVEMENT),
    drawingItems: numbered("drawing", DRAWING),
    scales: numbered("scale", SCALES),
    proofRules: numbered("proof", PROOFS),
    statutoryPapers: numbered("paper", PAPERS).map((each) => ({
      ...usualRow(STATUTORY_PAPER),
      ...each,
      state: state.toUpperCase(),
    })),
    refusalSteps: numbered("step", STEPS),
    holidays: [year, year + 1].flatMap((each) =>
      offeredHolidays(state, each)
        .filter(({ usual }) => usual)
        .map(({ day, name: holiday, source }) => ({
          id: `${id}-holiday-${day}`,
          authorityId: id,
          day,
          name: holiday,
          source,
        })),
    ),
  };
}

function conditionsOf(
  requirements: readonly Pick<Requirement, "id" | "title">[],
): Row<RequirementCondition>[] {
  return CONDITIONS.flatMap(([title, fact]) =>
    requirements
      .filter((requirement) => requirement.title === title)
      .map(({ id: requirementId }) => ({ requirementId, fact, limit: null })),
  );
}

/** How many rows of an authority are still an example's: nobody has put a citation in. */
export function exampleRows(authority: Authority): number {
  return AUTHORITY_PART_NAMES.flatMap((part): readonly object[] => authority[part]).filter(
    (row) => "citation" in row && row.citation === EXAMPLE_CITATION,
  ).length;
}
