import type { Db } from "#db/open.ts";
import * as schema from "#db/schema.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { withPartiesAsOne } from "#lib/domain/party/as-one.ts";
import { getAuthority } from "./authority.ts";
import { getLine } from "./line.ts";
import { listRows } from "./row.ts";

/** Everything that is known of a line, merged parties as one; null where there is no such line. */
export function getLineFile(db: Db, lineId: string): LineFile | null {
  const kept = getKeptFile(db, lineId);
  return kept === null ? null : withPartiesAsOne(kept);
}

/** The same as it is kept: each party by itself, with who said which of them are one. */
export function getKeptFile(db: Db, lineId: string): LineFile | null {
  return db.transaction((one) => readLineFile(one, lineId));
}

function readLineFile(db: Db, lineId: string): LineFile | null {
  const line = getLine(db, lineId);
  if (line === null) return null;
  return {
    line,
    authority: line.authorityId === null ? null : getAuthority(db, line.authorityId),
    properties: listRows(db, schema.properties, lineId),
    units: listRows(db, schema.units, lineId),
    parties: listRows(db, schema.parties, lineId),
    roles: listRows(db, schema.roles, lineId),
    sameParties: listRows(db, schema.sameParties, lineId),
    points: listRows(db, schema.points, lineId),
    crossings: listRows(db, schema.crossings, lineId),
    land: listRows(db, schema.land, lineId),
    tieIns: listRows(db, schema.tieIns, lineId),
    bends: listRows(db, schema.bends, lineId),
    fixedPoints: listRows(db, schema.fixedPoints, lineId),
    ties: listRows(db, schema.ties, lineId),
    planShapes: listRows(db, schema.planShapes, lineId),
    planPictures: listRows(db, schema.planPictures, lineId),
    records: listRows(db, schema.records, lineId),
    entries: listRows(db, schema.entries, lineId),
    runs: listRows(db, schema.runs, lineId),
    anchors: listRows(db, schema.anchors, lineId),
    gaps: listRows(db, schema.gaps, lineId),
    observations: listRows(db, schema.observations, lineId),
    narrations: listRows(db, schema.narrations, lineId),
    videos: listRows(db, schema.videos, lineId),
    alignments: listRows(db, schema.alignments, lineId),
    pairings: listRows(db, schema.pairings, lineId),
    tests: listRows(db, schema.tests, lineId),
    testDays: listRows(db, schema.testDays, lineId),
    rulings: listRows(db, schema.rulings, lineId),
    waivers: listRows(db, schema.waivers, lineId),
    agreements: listRows(db, schema.agreements, lineId),
    agreementSteps: listRows(db, schema.agreementSteps, lineId),
    fixtures: listRows(db, schema.fixtures, lineId),
    levels: listRows(db, schema.levels, lineId),
    options: listRows(db, schema.options, lineId),
    changeOrders: listRows(db, schema.changeOrders, lineId),
    scope: listRows(db, schema.scope, lineId),
    splits: listRows(db, schema.splits, lineId),
    digAreas: listRows(db, schema.digAreas, lineId),
    notices: listRows(db, schema.notices, lineId),
    deliveries: listRows(db, schema.deliveries, lineId),
    replies: listRows(db, schema.replies, lineId),
    householdCalls: listRows(db, schema.householdCalls, lineId),
    rollCall: listRows(db, schema.rollCall, lineId),
    consents: listRows(db, schema.consents, lineId),
    signatures: listRows(db, schema.signatures, lineId),
    ledger: listRows(db, schema.ledger, lineId),
    permits: listRows(db, schema.permits, lineId),
    permitSteps: listRows(db, schema.permitSteps, lineId),
    requirementMarks: listRows(db, schema.requirementMarks, lineId),
    locateTickets: listRows(db, schema.locateTickets, lineId),
    inspections: listRows(db, schema.inspections, lineId),
    events: listRows(db, schema.events, lineId),
    reconnections: listRows(db, schema.reconnections, lineId),
    built: listRows(db, schema.built, lineId),
    spillSteps: listRows(db, schema.spillSteps, lineId),
    uploads: listRows(db, schema.uploads, lineId),
    history: listRows(db, schema.history, lineId),
  };
}
