import { usualRow } from "#lib/domain/facts/field.ts";
import type { LandStretch } from "#lib/domain/facts/land.ts";
import type { Crossing, LinePoint } from "#lib/domain/facts/line.ts";
import type { Address, Party, PartyRole, Property, Role, Unit } from "#lib/domain/facts/party.ts";
import type { RecordEntry } from "#lib/domain/facts/record.ts";
import {
  type Anchor,
  type Gap,
  OBSERVATION,
  type Observation,
  type Run,
} from "#lib/domain/facts/run.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";

// Rows with the usual values filled in, so that a story names only what is its own.

export function inTown(street: string, unit = ""): Address {
  return { street, unit, city: "Quillhaven", state: "WA", zip: "98000" };
}

export function property(id: string, street: string, rest: Partial<Property> = {}): Property {
  return {
    id,
    address: inTown(street),
    parcel: "",
    legalDescription: "",
    stake: "connected",
    weight: null,
    bothLanguages: false,
    note: "",
    ...rest,
  };
}

export function unit(id: string, propertyId: string, rest: Partial<Unit> = {}): Unit {
  return { id, propertyId, name: "", use: "dwelling", note: "", ...rest };
}

export function party(id: string, name: string, rest: Partial<Party> = {}): Party {
  return {
    id,
    kind: "person",
    name,
    mailing: null,
    careOf: "",
    email: "",
    phone: "",
    language: "en",
    needs: "",
    needsSaidBy: "",
    note: "",
    ...rest,
  };
}

export function role(
  partyId: string,
  propertyId: string,
  what: PartyRole,
  rest: Partial<Role> = {},
): Role {
  return {
    id: `${partyId}-${what}-${rest.unitId ?? propertyId}`,
    partyId,
    propertyId,
    role: what,
    unitId: null,
    capacity: "",
    heldWith: "",
    ...rest,
  };
}

export function point(
  id: string,
  kind: LinePoint["kind"],
  station: number,
  rest: Partial<LinePoint> = {},
): LinePoint {
  return { id, kind, station, depth: null, note: "", ...rest };
}

export function crossing(id: string, propertyId: string, rest: Partial<Crossing>): Crossing {
  return {
    id,
    propertyId,
    from: 0,
    to: 0,
    easement: "unknown",
    recordingNumber: "",
    note: "",
    ...rest,
  };
}

export function land(id: string, rest: Partial<LandStretch>): LandStretch {
  return {
    id,
    from: 0,
    to: 0,
    kind: "lot",
    propertyId: null,
    shownBy: "County parcel map",
    note: "",
    ...rest,
  };
}

export function entry(id: string, recordId: string, rest: Partial<RecordEntry>): RecordEntry {
  return {
    id,
    recordId,
    label: "",
    distance: null,
    uncertainty: null,
    side: "unknown",
    diameter: 4,
    material: "unknown",
    fitting: "unknown",
    propertyId: null,
    explanation: "",
    explainedBy: "",
    explainedOn: null,
    note: "",
    ...rest,
  };
}

export function run(id: string, rest: Partial<Run>): Run {
  return {
    id,
    name: "",
    ranOn: "2026-11-03",
    operator: "Marek Łódź",
    accessPoint: "",
    looks: "upstream",
    measuredFrom: "access",
    selfLeveling: "unknown",
    zeroAt: "",
    fromCounter: 0,
    toCounter: null,
    ended: "unknown",
    crossingSeen: "no",
    uncertainty: null,
    note: "",
    ...rest,
  };
}

export function anchor(id: string, runId: string, rest: Partial<Anchor>): Anchor {
  return { id, runId, kind: "cleanout", counter: 0, station: 0, note: "", ...rest };
}

export function gap(id: string, runId: string, rest: Partial<Gap>): Gap {
  return { id, runId, fromCounter: 0, toCounter: 0, cause: "under-water", note: "", ...rest };
}

export function seen(id: string, runId: string, rest: Partial<Observation>): Observation {
  return { ...usualRow(OBSERVATION), id, runId, kind: "tie-in", counter: 0, ...rest };
}

export function work(id: string, title: string, rest: Partial<ScopeItem>): ScopeItem {
  return {
    id,
    title,
    kind: "unknown",
    work: "repair",
    place: "general",
    from: null,
    to: null,
    tieInId: null,
    quantity: 100,
    unit: "each",
    rate: 0,
    markup: 0,
    tax: 0,
    spread: "by-placed-cost",
    rule: null,
    payerId: null,
    allegedCause: "",
    optionId: null,
    addedById: null,
    droppedById: null,
    note: "",
    ...rest,
  };
}
