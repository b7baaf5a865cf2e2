import { offeredHolidays } from "#lib/domain/calendar/holiday-sets.ts";
import { type Authority, FEE, noParts } from "#lib/domain/facts/authority.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";

/** Invented firm, invented people. */
export const OFFICE: Office = {
  name: "Harrow & Teal Drain and Sewer",
  license: "HARROTD000ZZ",
  licenseExpiresOn: "2027-06-30",
  bond: "Surety bond 55-0110, $30,000",
  bondExpiresOn: "2027-02-28",
  insurance: "General liability, $1,000,000, certificate 55-0142",
  insuranceExpiresOn: "2026-12-31",
  compensation: "State fund account 55-0177",
  compensationExpiresOn: "2027-03-31",
  businessLicense: "Quillhaven business license 55-0163",
  businessLicenseExpiresOn: "2026-12-31",
  address: { street: "240 Tannery Road", unit: "", city: "Quillhaven", state: "WA", zip: "98000" },
  phone: "(360) 555-0100",
  hours: { days: "monday-to-friday", from: "07:30", to: "16:30" },
  onCallPhone: "(360) 555-0109",
  onCallHours: { days: "every-day", from: "", to: "" },
  email: "office@example.com",
  payee: "Harrow & Teal Drain and Sewer",
  payMethods: ["check", "bank-transfer"],
  payDays: 30,
  depositPercent: 0,
  bothLanguages: false,
  zone: "America/Los_Angeles",
};

export const PASSWORD = "demo-office-2026";

export const PEOPLE = [
  { name: "Dana Okafor", email: "demo@example.com", role: "admin" },
  { name: "Ruth Lindqvist", email: "ruth@example.com", role: "office" },
  { name: "Marek Łódź", email: "marek@example.com", role: "field" },
  { name: "Ines Peña", email: "ines@example.com", role: "viewer" },
] as const;

const DISTRICT = "authority-quillhaven";
const AS_OF = "2026-11-02";

type Requirement = Authority["requirements"][number];

function requirement(
  id: string,
  rest: Pick<Requirement, "sheet" | "title" | "detail" | "mandatory"> &
    Partial<Pick<Requirement, "due" | "permitKind" | "paper">>,
): Requirement {
  const { due = "submission", permitKind = null, paper = null, ...own } = rest;
  return {
    id: `${DISTRICT}-${id}`,
    authorityId: DISTRICT,
    citation: "Quillhaven Side Sewer Handbook, part 3 (invented)",
    asOf: AS_OF,
    ...own,
    due,
    permitKind,
    paper,
  };
}

function condition(
  requirement: string,
  fact: Authority["conditions"][number]["fact"],
): Authority["conditions"][number] {
  return {
    id: `${DISTRICT}-if-${requirement}`,
    authorityId: DISTRICT,
    requirementId: `${DISTRICT}-${requirement}`,
    fact,
    limit: null,
    citation: "Quillhaven Side Sewer Handbook, part 3 (invented)",
    asOf: AS_OF,
  };
}

function drawingItem(
  item: Authority["drawingItems"][number]["item"],
  title: string,
): Authority["drawingItems"][number] {
  return {
    id: `${DISTRICT}-drawing-${item}`,
    authorityId: DISTRICT,
    item,
    title,
    citation: "Quillhaven Side Sewer Handbook, part 3 (invented)",
    asOf: AS_OF,
  };
}

function proofRule(
  method: Authority["proofRules"][number]["method"],
  counts: Authority["proofRules"][number]["counts"],
  letter: Authority["proofRules"][number]["letter"] = null,
): Authority["proofRules"][number] {
  return {
    id: `${DISTRICT}-proof-${method}`,
    authorityId: DISTRICT,
    letter,
    method,
    counts,
    citation: "Quillhaven Code 13.40.050 (invented)",
    asOf: AS_OF,
  };
}

/** Washington counts neither federal nor state holidays as business days (RCW 19.122.020(3)). */
function holidays(): Authority["holidays"] {
  return [2026, 2027].flatMap((year) =>
    offeredHolidays("WA", year)
      .filter(({ usual }) => usual)
      .map(({ day, name, source }) => ({
        id: `${DISTRICT}-holiday-${day}`,
        authorityId: DISTRICT,
        day,
        name,
        source,
      })),
  );
}

/** An invented district with rules of the usual kinds, and the state's one-call clock. */
export const AUTHORITY: Authority = {
  ...noParts(),
  id: DISTRICT,
  name: "Quillhaven Sewer District",
  office: "Side sewer counter, second floor",
  address: { street: "1 Weir Street", unit: "", city: "Quillhaven", state: "WA", zip: "98000" },
  phone: "(360) 555-0150",
  email: "sidesewer@example.org",
  note: "Invented for the demo. Check every rule of a real authority before use.",
  rules: [
    {
      id: `${DISTRICT}-rule-main`,
      authorityId: DISTRICT,
      title: "Owners to the main, shared by those who use it",
      pattern: "owners-to-main",
      boundary: "main-connection",
      sharedRule: "all-whose-flow-passes",
      clearingBy: "owners",
      repairBy: "authority",
      replacementBy: "authority",
      citation: "Quillhaven District Code 14.20.060 (invented)",
      url: "https://code.example.org/14.20.060",
      asOf: AS_OF,
      note: "The connection at the main is the district's.",
    },
    {
      id: `${DISTRICT}-rule-row`,
      authorityId: DISTRICT,
      title: "District in the right-of-way, where it accepted the pipe",
      pattern: "authority-in-right-of-way",
      boundary: "right-of-way-line",
      sharedRule: "all-whose-flow-passes",
      clearingBy: "owners",
      repairBy: "authority",
      replacementBy: "authority",
      citation: "Quillhaven District Code 14.20.075 (invented)",
      url: "https://code.example.org/14.20.075",
      asOf: AS_OF,
      note: "Only for lines laid after 1990 and accepted in writing.",
    },
  ],
  requirements: [
    requirement("application", {
      sheet: "application",
      title: "Application data",
      detail: "All site addresses, owners, parcel numbers, contractor and license.",
      mandatory: true,
    }),
    requirement("drawing", {
      sheet: "line-drawing",
      title: "Line drawing to scale",
      detail: "1 in = 10 ft or 1 in = 20 ft, with stations from the main.",
      mandatory: true,
    }),
    requirement("schedule", {
      sheet: "schedule-of-connections",
      title: "Schedule of connections",
      detail: "Every connection on record or found, with what was done to settle it.",
      mandatory: true,
    }),
    requirement("log", {
      sheet: "observation-log",
      title: "Camera observation log",
      detail: "",
      mandatory: true,
    }),
    requirement("scope", { sheet: "scope", title: "Scope of work", detail: "", mandatory: true }),
    requirement("consents", {
      sheet: "consents",
      title: "Consent to dig from each owner whose lot is opened",
      detail: "",
      mandatory: true,
    }),
    requirement("notice", {
      sheet: "proof-of-notice",
      title: "Proof of notice to every owner on the line",
      detail: "",
      mandatory: true,
    }),
    requirement("standing", {
      sheet: "contractor-standing",
      title: "Contractor’s license, bond and insurance",
      detail: "None may expire before the work ends.",
      mandatory: true,
    }),
    requirement("easement", {
      sheet: "upload",
      title: "Recorded easement for each lot crossed",
      detail: "A copy with the recording number.",
      mandatory: true,
    }),
    requirement("video", {
      sheet: "upload",
      title: "Photograph of the main connection",
      detail: "",
      mandatory: false,
    }),
    requirement("street", {
      sheet: "upload",
      title: "Street use permit, where the street is dug",
      detail: "From the city's street office.",
      mandatory: true,
      due: "work",
      permitKind: "street-use",
    }),
    requirement("as-built", {
      sheet: "as-built",
      title: "As-built",
      detail: "What was built, with stations from the main.",
      mandatory: true,
      due: "final",
    }),
  ],
  fees: [
    {
      ...usualRow(FEE),
      id: `${DISTRICT}-fee-base`,
      authorityId: DISTRICT,
      title: "Repair of a side sewer",
      amount: 28_000,
      per: "permit",
      permitKind: "side-sewer",
      citation: "Quillhaven fee schedule 2026 (invented)",
      asOf: AS_OF,
    },
    {
      ...usualRow(FEE),
      id: `${DISTRICT}-fee-connection`,
      authorityId: DISTRICT,
      title: "Each building connected",
      amount: 1_000,
      per: "connection",
      permitKind: "side-sewer",
      citation: "Quillhaven fee schedule 2026 (invented)",
      asOf: AS_OF,
    },
  ],
  inspectionKinds: [
    {
      id: `${DISTRICT}-inspection-trench`,
      authorityId: DISTRICT,
      title: "Open trench",
      permitKind: "side-sewer",
      neededBefore: "backfill",
      lead: 1,
      leadUnit: "business-days",
      cutOff: "15:00",
      asksForFigures: false,
      citation: "Quillhaven Side Sewer Handbook, part 5 (invented)",
      asOf: AS_OF,
    },
    {
      id: `${DISTRICT}-inspection-test`,
      authorityId: DISTRICT,
      title: "Air or water test",
      permitKind: "side-sewer",
      neededBefore: "no",
      lead: 1,
      leadUnit: "business-days",
      cutOff: "15:00",
      asksForFigures: true,
      citation: "Quillhaven Side Sewer Handbook, part 5 (invented)",
      asOf: AS_OF,
    },
  ],
  clockRules: [
    {
      id: `${DISTRICT}-clock-locate-opens`,
      authorityId: DISTRICT,
      title: "Locate marks: earliest start",
      event: "locate-called",
      count: 2,
      unit: "business-days",
      way: "after",
      countsEventDay: false,
      fullDays: true,
      roll: "none",
      mailDays: 0,
      meaning: "not-before",
      whiteLineFirst: true,
      citation: "RCW 19.122.030",
      asOf: "2025-08-11",
    },
    {
      id: `${DISTRICT}-clock-locate-closes`,
      authorityId: DISTRICT,
      title: "Locate notice: latest start",
      event: "locate-called",
      count: 10,
      unit: "business-days",
      way: "after",
      countsEventDay: false,
      fullDays: false,
      roll: "none",
      mailDays: 0,
      meaning: "not-after",
      whiteLineFirst: false,
      citation: "RCW 19.122.030",
      asOf: "2025-08-11",
    },
    {
      id: `${DISTRICT}-clock-locate-marks`,
      authorityId: DISTRICT,
      title: "Locate marks expire",
      event: "locate-called",
      count: 45,
      unit: "calendar-days",
      way: "after",
      countsEventDay: false,
      fullDays: false,
      roll: "none",
      mailDays: 0,
      meaning: "expires",
      whiteLineFirst: false,
      citation: "RCW 19.122.030",
      asOf: "2025-08-11",
    },
    {
      id: `${DISTRICT}-clock-permit`,
      authorityId: DISTRICT,
      title: "Permit expires",
      event: "permit-issued",
      count: 90,
      unit: "calendar-days",
      way: "after",
      countsEventDay: false,
      fullDays: false,
      roll: "none",
      mailDays: 0,
      meaning: "expires",
      whiteLineFirst: false,
      citation: "Quillhaven District Code 14.20.110 (invented)",
      asOf: AS_OF,
    },
    {
      id: `${DISTRICT}-clock-corrections`,
      authorityId: DISTRICT,
      title: "Answer the district's corrections",
      event: "corrections-asked",
      count: 30,
      unit: "calendar-days",
      way: "after",
      countsEventDay: false,
      fullDays: false,
      roll: "forwards",
      mailDays: 0,
      meaning: "due-by",
      whiteLineFirst: false,
      citation: "Quillhaven District Code 14.20.090 (invented)",
      asOf: AS_OF,
    },
    {
      id: `${DISTRICT}-clock-pause`,
      authorityId: DISTRICT,
      title: "Notify occupants before a drain shutdown",
      event: "drains-paused",
      count: 24,
      unit: "hours",
      way: "before",
      countsEventDay: false,
      fullDays: false,
      roll: "backwards",
      mailDays: 0,
      meaning: "due-by",
      whiteLineFirst: false,
      citation: "Quillhaven Side Sewer Handbook, part 6 (invented)",
      asOf: AS_OF,
    },
  ],
  holidays: holidays(),
  refusalSteps: [
    {
      id: `${DISTRICT}-refusal-demand`,
      authorityId: DISTRICT,
      kind: "notice",
      title: "Written demand for the share",
      detail: "With the statement, by certified and first-class mail.",
      days: null,
      citation: "Quillhaven District Code 14.20.062 (invented)",
      asOf: AS_OF,
    },
    {
      id: `${DISTRICT}-refusal-mediation`,
      authorityId: DISTRICT,
      kind: "mediation",
      title: "The district's own mediation of shared lines",
      detail: "Free of charge; both sides keep their rights.",
      days: 30,
      citation: "Quillhaven District Code 14.20.064 (invented)",
      asOf: AS_OF,
    },
    {
      id: `${DISTRICT}-refusal-order`,
      authorityId: DISTRICT,
      kind: "authority-order",
      title: "Ask the district to order the repair",
      detail: "Where sewage comes up or the street is at risk, the district may act sooner.",
      days: 30,
      citation: "Quillhaven District Code 14.20.068 (invented)",
      asOf: AS_OF,
    },
  ],
  conditions: [condition("easement", "lot-crossed"), condition("street", "dug-in-right-of-way")],
  permitOrders: [
    {
      id: `${DISTRICT}-order-street`,
      authorityId: DISTRICT,
      kind: "street-use",
      step: "issued",
      waitsFor: "side-sewer",
      until: "issued",
      citation: "Quillhaven Side Sewer Handbook, part 3 (invented)",
      asOf: AS_OF,
    },
  ],
  pavementRules: [
    {
      id: `${DISTRICT}-pavement-asphalt`,
      authorityId: DISTRICT,
      surface: "asphalt",
      beyond: 100,
      leastWidth: 400,
      leastLength: 400,
      noCutYears: null,
      citation: "Quillhaven Street Standards 7.4 (invented)",
      asOf: AS_OF,
    },
  ],
  drawingItems: [
    drawingItem("scale", "Scale, 1 in = 10 ft or 20 ft"),
    drawingItem("connections", "Every connection with its distance from the main"),
    drawingItem("pipe-size-and-material", "Size and material of the pipe"),
  ],
  scales: [10, 20].map((feetPerInch) => ({
    id: `${DISTRICT}-scale-${feetPerInch}`,
    authorityId: DISTRICT,
    feetPerInch,
    citation: "Quillhaven Side Sewer Handbook, part 3 (invented)",
    asOf: AS_OF,
  })),
  proofRules: [
    proofRule("first-class", "never"),
    proofRule("certified", "attempted"),
    proofRule("posted", "photo", "work-start"),
  ],
};
