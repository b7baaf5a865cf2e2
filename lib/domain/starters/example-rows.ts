import type { InspectionKind, RefusalStep, Requirement } from "../facts/authority.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import type {
  DrawingItem,
  DrawingScale,
  PavementRule,
  PermitOrder,
  RequirementCondition,
} from "../facts/permit-rule.ts";
import type { ProofRule } from "../facts/proof-rule.ts";
import type { StatutoryPaper } from "../facts/statutory-paper.ts";

// What every example of an authority asks for. All of it is invented.

/** A row without what is the same for all rows of an example. */
export type Row<T> = Omit<T, "id" | "authorityId" | "citation" | "asOf" | "url" | "note">;

export const REQUIREMENTS: readonly Row<Requirement>[] = [
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
export const CONDITIONS: readonly (readonly [string, RequirementCondition["fact"]])[] = [
  ["Recorded easement for each lot crossed", "lot-crossed"],
  ["Street use permit, where the street is dug", "dug-in-right-of-way"],
];

export const ORDERS: readonly Row<PermitOrder>[] = [
  { kind: "street-use", step: "submitted", waitsFor: "side-sewer", until: "submitted" },
];

export const PAVEMENT: readonly Row<PavementRule>[] = [
  { surface: "asphalt", beyond: 100, leastWidth: 400, leastLength: 400, noCutYears: null },
];

export const DRAWING: readonly Row<DrawingItem>[] = [
  { item: "north-arrow", title: "North arrow" },
  { item: "scale", title: "Scale" },
  { item: "lot-lines", title: "Lot lines" },
  { item: "buildings", title: "Buildings" },
  { item: "cleanouts", title: "Cleanouts" },
  { item: "connections", title: "Every connection with its distance from the main" },
];

export const SCALES: readonly Row<DrawingScale>[] = [10, 20, 30, 40, 50].map((feetPerInch) => ({
  feetPerInch,
}));

/** The deadlines of an example, of which its permit runs so many days. */
export function clocks(permitDays: number): readonly Row<ClockRule>[] {
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

export const STEPS: readonly Row<RefusalStep>[] = [
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
export const PROOFS: readonly Row<ProofRule>[] = [
  { letter: null, method: "first-class", counts: "never" },
  { letter: null, method: "certified", counts: "accepted" },
  { letter: null, method: "by-hand", counts: "handed-over" },
];

/** Papers of the kinds that states ask of contractors, for the office to check against its own state. */
export const PAPERS: readonly (Pick<StatutoryPaper, "title" | "titleEs" | "to" | "event"> &
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
export const INSPECTIONS: readonly Pick<InspectionKind, "title" | "lead" | "leadUnit">[] = [
  { title: "Open trench, before backfill", lead: 1, leadUnit: "business-days" },
  { title: "Final", lead: 1, leadUnit: "business-days" },
];
