import type { Application, ProposedPipe, SurfaceCut } from "#lib/domain/facts/application.ts";
import type {
  DrawingItem,
  DrawingScale,
  PavementRule,
  PermitOrder,
  RequirementCondition,
} from "#lib/domain/facts/permit-rule.ts";

const SOURCE = { authorityId: "authority-1", citation: "QMC 13.08.060", asOf: "2026-10-01" };

/** A condition of the requirement `r`, unless said otherwise. */
export function aCondition(
  fact: RequirementCondition["fact"],
  overrides: Partial<RequirementCondition> = {},
): RequirementCondition {
  return { id: fact, requirementId: "r", fact, limit: null, ...SOURCE, ...overrides };
}

/** The street use permit is not submitted before the side sewer permit is issued. */
export function aPermitOrder(overrides: Partial<PermitOrder> = {}): PermitOrder {
  return {
    id: "order",
    kind: "street-use",
    step: "submitted",
    waitsFor: "side-sewer",
    until: "issued",
    ...SOURCE,
    ...overrides,
  };
}

/** Asphalt, as nobody restricts it, unless said otherwise. */
export function aPavementRule(overrides: Partial<PavementRule> = {}): PavementRule {
  return {
    id: "asphalt",
    surface: "asphalt",
    beyond: 0,
    leastWidth: null,
    leastLength: null,
    noCutYears: null,
    ...SOURCE,
    ...overrides,
  };
}

export function aDrawingItem(
  item: DrawingItem["item"],
  overrides: Partial<DrawingItem> = {},
): DrawingItem {
  return { id: item, item, title: item, ...SOURCE, ...overrides };
}

/** The scales of an authority that allows only these, in feet to an inch. */
export function scalesOf(...scales: readonly number[]): DrawingScale[] {
  return scales.map((feetPerInch) => ({ id: `scale-${feetPerInch}`, feetPerInch, ...SOURCE }));
}

/** Ten feet of asphalt over a shored trench 3 ft wide. */
export function aSurfaceCut(overrides: Partial<SurfaceCut> = {}): SurfaceCut {
  return {
    id: "cut",
    from: 0,
    to: 1_000,
    surface: "asphalt",
    trenchWidth: 300,
    depth: null,
    walls: "shored",
    pavedOn: null,
    restoration: "Hot mix, 4 in",
    note: "",
    ...overrides,
  };
}

/** Eight-inch PVC in an open trench, whole, unless said otherwise. */
export function aProposedPipe(itemId: string, overrides: Partial<ProposedPipe> = {}): ProposedPipe {
  return {
    id: `pipe-${itemId}`,
    itemId,
    material: "pvc",
    diameter: 8,
    length: null,
    slope: 200,
    method: "open-trench",
    bedding: "6 in of crushed rock",
    joint: "rubber gasket",
    connection: "new wye at the main",
    note: "",
    ...overrides,
  };
}

/** The contractor applies for the side sewer permit and has signed. */
export function anApplication(overrides: Partial<Application> = {}): Application {
  return {
    id: "application",
    permitKind: "side-sewer",
    applicant: "Bellwether Drain and Sewer",
    applicantIs: "contractor",
    attestedOn: "2026-11-20",
    attestationId: null,
    workType: "repair",
    valuation: null,
    traffic: "One lane stays open",
    pedestrians: "Walk on the far side",
    insuredAs: "City of Quillhaven",
    certificateId: null,
    note: "",
    ...overrides,
  };
}
