import { offeredHolidays } from "../calendar/holiday-sets.ts";
import {
  AUTHORITY_PART_NAMES,
  type Authority,
  FEE,
  type Fee,
  INSPECTION_KIND,
  type Requirement,
  type ResponsibilityRule,
} from "../facts/authority.ts";
import { usualRow } from "../facts/field.ts";
import type { RequirementCondition } from "../facts/permit-rule.ts";
import { STATUTORY_PAPER } from "../facts/statutory-paper.ts";
import type { Day } from "../time/day.ts";
import {
  CONDITIONS,
  clocks,
  DRAWING,
  INSPECTIONS,
  ORDERS,
  PAPERS,
  PAVEMENT,
  PROOFS,
  REQUIREMENTS,
  type Row,
  SCALES,
  STEPS,
} from "./example-rows.ts";

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
