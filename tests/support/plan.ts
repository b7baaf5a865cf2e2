import type { BuiltPiece } from "#lib/domain/facts/built.ts";
import type { Bend, FixedPoint, PlanPicture, PlanShape, Tie } from "#lib/domain/facts/plan.ts";
import type { Reconnection } from "#lib/domain/facts/reconnection.ts";

/** An eighth of a circle to the left, unless said otherwise. */
export function aBend(id: string, station: number, overrides: Partial<Bend> = {}): Bend {
  return { id, station, turn: "left", degrees: 45, note: "", ...overrides };
}

export function aFixedPoint(id: string, overrides: Partial<FixedPoint> = {}): FixedPoint {
  return { id, name: `corner ${id}`, east: null, north: null, note: "", ...overrides };
}

/** A tie of tie-in T1, taped from A and B. */
export function aTie(id: string, overrides: Partial<Tie> = {}): Tie {
  return {
    id,
    tieInId: "T1",
    pointId: null,
    station: null,
    fromId: "A",
    fromDistance: 3_000,
    otherId: "B",
    otherDistance: 4_000,
    apart: null,
    side: "left",
    tapedBy: "Marek Sandoval",
    tapedOn: "2026-11-04",
    note: "",
    ...overrides,
  };
}

export function aShape(id: string, outline: string, overrides: Partial<PlanShape> = {}): PlanShape {
  return { id, kind: "building", name: "", propertyId: null, outline, note: "", ...overrides };
}

/** A picture of 1,000 by 800 pixels, north up, ten pixels to a foot, the main at 100, 400. */
export function aPicture(id: string, overrides: Partial<PlanPicture> = {}): PlanPicture {
  return {
    id,
    uploadId: "plan",
    width: 1_000,
    height: 800,
    oneX: 100,
    oneY: 100,
    otherX: 600,
    otherY: 100,
    apart: 5_000,
    mainX: 100,
    mainY: 400,
    up: 0,
    note: "",
    ...overrides,
  };
}

/** Branch T1 in the tally, from a pit at the main and a cleanout at 90 ft; nothing measured yet. */
export function aReconnection(id: string, overrides: Partial<Reconnection> = {}): Reconnection {
  return {
    id,
    tieInId: "T1",
    lowerAccess: 0,
    fromLower: null,
    upperAccess: 9_000,
    fromUpper: null,
    measuredBy: "Marek Sandoval",
    measuredOn: "2026-11-20",
    openedRunId: null,
    openedSecond: null,
    openedBy: "",
    openedOn: null,
    note: "",
    ...overrides,
  };
}

/** 6 in PVC laid from 5 to 15 ft for the work “dig”, measured by somebody named. */
export function aBuiltPiece(id: string, overrides: Partial<BuiltPiece> = {}): BuiltPiece {
  return {
    id,
    kind: "replaced",
    itemId: "dig",
    tieInId: null,
    from: 500,
    to: 1_500,
    diameter: 6,
    material: "pvc",
    fitting: "unknown",
    depthFrom: null,
    depthTo: null,
    slope: null,
    runId: null,
    runSecond: null,
    measuredBy: "Marek Sandoval",
    measuredOn: "2026-11-24",
    note: "",
    ...overrides,
  };
}
