import { sql } from "drizzle-orm";
import {
  type AnySQLiteColumn,
  foreignKey,
  index,
  integer,
  primaryKey,
  real,
  sqliteTable,
  text,
  uniqueIndex,
} from "drizzle-orm/sqlite-core";
import { DUE_KINDS, QUESTIONS, TALLIES } from "#lib/domain/desk/answer.ts";
import { AGREEMENT_STEP_KINDS } from "#lib/domain/facts/agreement-step.ts";
import {
  BOUNDARIES,
  REFUSAL_STEP_KINDS,
  REQUIREMENT_DUES,
  RULE_PATTERNS,
  SHARED_RULES,
  SHEET_KINDS,
  WORK_HOLDERS,
  WORK_KINDS,
} from "#lib/domain/facts/authority.ts";
import { LEVEL_METHODS } from "#lib/domain/facts/capacity.ts";
import { CHANGE_ORDER_STATES } from "#lib/domain/facts/change-order.ts";
import { CLOCK_EVENTS, CLOCK_MEANINGS, CLOCK_UNITS, ROLLS } from "#lib/domain/facts/clock-rule.ts";
import { CONSENT_KINDS, CONSENT_STATES } from "#lib/domain/facts/consent.ts";
import { RESTORATIONS } from "#lib/domain/facts/dig-area.ts";
import { FIXTURES } from "#lib/domain/facts/fixtures.ts";
import { CALL_OUTCOMES, CALL_PURPOSES } from "#lib/domain/facts/household-call.ts";
import { JOB_KINDS, JOB_STATES } from "#lib/domain/facts/job.ts";
import { LAND_KINDS } from "#lib/domain/facts/land.ts";
import { LEDGER_KINDS, PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import {
  EASEMENT_STATES,
  FITTINGS,
  MATERIALS,
  POINT_KINDS,
  SIDES,
  TIE_IN_KINDS,
} from "#lib/domain/facts/line.ts";
import {
  DEALT_HOWS,
  DELIVERY_METHODS,
  DELIVERY_OUTCOMES,
  LETTER_KINDS,
  NOTICE_STATES,
  REPLY_KINDS,
} from "#lib/domain/facts/notice.ts";
import { PAIRING_STATES } from "#lib/domain/facts/pairing.ts";
import {
  PARTY_KINDS,
  PARTY_LANGUAGES,
  PARTY_ROLES,
  STAKES,
  UNIT_USES,
} from "#lib/domain/facts/party.ts";
import {
  INSPECTION_RESULTS,
  PERMIT_KINDS,
  PERMIT_STATES,
  REQUIREMENT_STATES,
} from "#lib/domain/facts/permit.ts";
import { SHAPE_KINDS, TIE_SIDES, TURNS } from "#lib/domain/facts/plan.ts";
import { PLUMBING_CODES, SLOPE_NAMES } from "#lib/domain/facts/plumbing-code.ts";
import { MEASURED_FROM, RECORD_KINDS } from "#lib/domain/facts/record.ts";
import { ROLL_CALL_ANSWERS, ROLL_CALL_MATTERS } from "#lib/domain/facts/roll-call.ts";
import { RULING_KINDS } from "#lib/domain/facts/ruling.ts";
import {
  ANCHOR_KINDS,
  ANSWERS,
  DEGREES,
  DIRECTIONS,
  FAULTS,
  FOOTAGE_FROM,
  OBSCURED_BY,
  OBSERVATION_KINDS,
  READINGS,
  RUN_ENDS,
  SELF_LEVELING,
} from "#lib/domain/facts/run.ts";
import { PLACES, SCOPE_KINDS, SPREADS } from "#lib/domain/facts/scope.ts";
import { SIGN_IN_DEEDS } from "#lib/domain/facts/session.ts";
import { SPILL_STEP_KINDS } from "#lib/domain/facts/spill-step.ts";
import { SPLIT_RULES, UNKNOWN_SHARES } from "#lib/domain/facts/split.ts";
import { CONTROL_RESULTS, TEST_KINDS, TEST_RESULTS } from "#lib/domain/facts/test.ts";
import { USER_ROLES } from "#lib/domain/facts/user.ts";
import { VIDEO_TYPES } from "#lib/domain/facts/video.ts";
import { OPTION_KINDS } from "#lib/domain/facts/work-option.ts";
import { OUTGOING_STATES } from "#lib/domain/notices/outgoing.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import {
  address,
  agreementShares,
  cents,
  cft,
  draftDecisions,
  frozenShares,
  ids,
  inches,
  openAnswers,
  openHours,
  paymentMethods,
  signatureViews,
  testStops,
  words,
  yesNo,
} from "./column.ts";

// Field names are the domain's, so that a selected row is a domain object; column names put the
// unit last. What belongs to a line is keyed by the line and the id: ids come from people's files
// and browsers, and one line's ids say nothing about another's.

// ── The office ─────────────────────────────────────────────────────────────────────────────────

export const office = sqliteTable("office", {
  id: integer("id").primaryKey(),
  name: words("name"),
  license: words("license"),
  licenseExpiresOn: text("license_expires_on"),
  bond: words("bond"),
  bondExpiresOn: text("bond_expires_on"),
  insurance: words("insurance"),
  insuranceExpiresOn: text("insurance_expires_on"),
  address: address("address").notNull(),
  phone: words("phone"),
  hours: openHours("hours"),
  onCallPhone: words("on_call_phone").default(""),
  onCallHours: openHours("on_call_hours"),
  email: words("email"),
  payee: words("payee").default(""),
  payMethods: paymentMethods("pay_methods").notNull().default([]),
  payDays: integer("pay_days"),
  depositPercent: integer("deposit_percent"),
  bothLanguages: yesNo("both_languages").default(false),
  zone: words("zone"),
});

export const users = sqliteTable(
  "users",
  {
    id: text("id").primaryKey(),
    name: words("name"),
    email: words("email"),
    /** Folded, so that one address is one account however it is typed. */
    emailKey: words("email_key"),
    role: text("role", { enum: USER_ROLES }).notNull(),
    passwordHash: words("password_hash"),
    disabled: yesNo("disabled"),
    createdAt: words("created_at"),
  },
  (t) => [uniqueIndex("users_email").on(t.emailKey)],
);

export const sessions = sqliteTable(
  "sessions",
  {
    /** SHA-256 of the secret that the browser keeps. */
    tokenHash: text("token_hash").primaryKey(),
    userId: words("user_id").references(() => users.id),
    startedAt: words("started_at"),
    idleUntil: words("idle_until"),
    endsAt: words("ends_at"),
  },
  (t) => [index("sessions_user").on(t.userId)],
);

export const signInTries = sqliteTable(
  "sign_in_tries",
  {
    id: integer("id").primaryKey({ autoIncrement: true }),
    /** `pair:…`, `address:…` or `account:…`: what a throttle counts by. */
    key: words("key"),
    at: words("at"),
  },
  (t) => [index("sign_in_tries_key").on(t.key, t.at)],
);

/** Append-only: who signed in and out, and who tried to, from where. */
export const signIns = sqliteTable(
  "sign_ins",
  {
    position: integer("position").primaryKey({ autoIncrement: true }),
    at: words("at"),
    what: text("what", { enum: SIGN_IN_DEEDS }).notNull(),
    /** As typed, folded; an account of this address need not exist. */
    account: words("account"),
    address: words("address"),
    agent: words("agent"),
  },
  (t) => [index("sign_ins_account").on(t.account, t.at)],
);

export const authorities = sqliteTable("authorities", {
  id: text("id").primaryKey(),
  name: words("name"),
  office: words("office"),
  address: address("address").notNull(),
  phone: words("phone"),
  email: words("email"),
  note: words("note"),
});

function ofAuthority() {
  return {
    id: text("id").notNull(),
    authorityId: words("authority_id").references(() => authorities.id),
    position: integer("position").notNull(),
  };
}

export const rules = sqliteTable(
  "rules",
  {
    ...ofAuthority(),
    title: words("title"),
    pattern: text("pattern", { enum: RULE_PATTERNS }).notNull(),
    boundary: text("boundary", { enum: BOUNDARIES }).notNull(),
    sharedRule: text("shared_rule", { enum: SHARED_RULES }).notNull(),
    clearingBy: text("clearing_by", { enum: WORK_HOLDERS }).notNull().default("owners"),
    repairBy: text("repair_by", { enum: WORK_HOLDERS }).notNull().default("authority"),
    replacementBy: text("replacement_by", { enum: WORK_HOLDERS }).notNull().default("authority"),
    citation: words("citation"),
    url: words("url"),
    asOf: words("as_of"),
    note: words("note"),
  },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const requirements = sqliteTable(
  "requirements",
  {
    ...ofAuthority(),
    sheet: text("sheet", { enum: SHEET_KINDS }).notNull(),
    title: words("title"),
    detail: words("detail"),
    citation: words("citation"),
    asOf: words("as_of"),
    mandatory: yesNo("mandatory"),
    due: text("due", { enum: REQUIREMENT_DUES }).notNull().default("submission"),
    permitKind: text("permit_kind", { enum: PERMIT_KINDS }),
  },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

const PER = ["permit", "connection", "inspection"] as const;

export const fees = sqliteTable(
  "fees",
  {
    ...ofAuthority(),
    title: words("title"),
    amount: cents("amount").notNull(),
    per: text("per", { enum: PER }).notNull(),
    citation: words("citation"),
    asOf: words("as_of"),
  },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

const WAYS = ["after", "before"] as const;

export const clockRules = sqliteTable(
  "clock_rules",
  {
    ...ofAuthority(),
    title: words("title"),
    event: text("event", { enum: CLOCK_EVENTS }).notNull(),
    count: integer("count").notNull(),
    unit: text("unit", { enum: CLOCK_UNITS }).notNull(),
    way: text("way", { enum: WAYS }).notNull(),
    countsEventDay: yesNo("counts_event_day"),
    fullDays: yesNo("full_days"),
    roll: text("roll", { enum: ROLLS }).notNull(),
    mailDays: integer("mail_days").notNull(),
    meaning: text("meaning", { enum: CLOCK_MEANINGS }).notNull(),
    citation: words("citation"),
    asOf: words("as_of"),
  },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const refusalSteps = sqliteTable(
  "refusal_steps",
  {
    ...ofAuthority(),
    kind: text("kind", { enum: REFUSAL_STEP_KINDS }).notNull(),
    title: words("title"),
    detail: words("detail"),
    days: integer("days"),
    citation: words("citation"),
    asOf: words("as_of"),
  },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const holidays = sqliteTable(
  "holidays",
  { ...ofAuthority(), day: words("day"), name: words("name"), source: words("source").default("") },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

// ── A line and what is known of it ─────────────────────────────────────────────────────────────

export const lines = sqliteTable("lines", {
  id: text("id").primaryKey(),
  name: words("name"),
  town: words("town"),
  openedOn: words("opened_on"),
  closedOn: text("closed_on"),
  upperEnd: cft("upper_end"),
  material: text("material", { enum: MATERIALS }).notNull(),
  diameter: inches("diameter"),
  mainStation: cft("main_station"),
  mainNote: words("main_note"),
  bearing: real("bearing_deg"),
  bearingFrom: words("bearing_from").default(""),
  authorityId: text("authority_id").references(() => authorities.id),
  ruleId: text("rule_id"),
  plumbingCode: text("plumbing_code", { enum: PLUMBING_CODES }),
  leastSlope: text("least_slope", { enum: SLOPE_NAMES }),
  optionId: text("option_id"),
  statementOthers: yesNo("statement_others").default(false),
  statementRules: yesNo("statement_rules").default(false),
  warrantyMonths: integer("warranty_months"),
  warrantyCovers: words("warranty_covers").default(""),
  note: words("note"),
});

/** What every row of a line has: its line, its id, its place in the order that people gave it. */
function ofLine() {
  return {
    lineId: words("line_id").references(() => lines.id),
    id: words("id"),
    position: integer("position").notNull(),
  };
}

interface Owned {
  readonly lineId: AnySQLiteColumn;
  readonly id: AnySQLiteColumn;
}

function key(t: Owned) {
  return primaryKey({ columns: [t.lineId, t.id] });
}

/** A reference to another row of the same line. */
function toRow(t: Owned, column: AnySQLiteColumn, target: () => Owned) {
  return foreignKey(() => ({
    columns: [t.lineId, column],
    foreignColumns: [target().lineId, target().id],
  }));
}

export const uploads = sqliteTable(
  "uploads",
  {
    ...ofLine(),
    name: words("name"),
    type: words("type"),
    bytes: integer("bytes").notNull(),
    sha256: words("sha256"),
    addedBy: words("added_by"),
    addedAt: words("added_at"),
    note: words("note"),
  },
  (t) => [key(t), uniqueIndex("uploads_id").on(t.id)],
);

export const properties = sqliteTable(
  "properties",
  {
    ...ofLine(),
    address: address("address").notNull(),
    parcel: words("parcel"),
    legalDescription: words("legal_description"),
    stake: text("stake", { enum: STAKES }).notNull(),
    weight: real("weight"),
    bothLanguages: yesNo("both_languages").default(false),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const units = sqliteTable(
  "units",
  {
    ...ofLine(),
    propertyId: words("property_id"),
    name: words("name"),
    use: text("use", { enum: UNIT_USES }).notNull(),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties)],
);

export const parties = sqliteTable(
  "parties",
  {
    ...ofLine(),
    kind: text("kind", { enum: PARTY_KINDS }).notNull(),
    name: words("name"),
    mailing: address("mailing"),
    careOf: words("care_of").default(""),
    email: words("email"),
    phone: words("phone"),
    language: text("language", { enum: PARTY_LANGUAGES }).notNull(),
    needs: words("needs"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const roles = sqliteTable(
  "roles",
  {
    ...ofLine(),
    partyId: words("party_id"),
    propertyId: words("property_id"),
    role: text("role", { enum: PARTY_ROLES }).notNull(),
    unitId: text("unit_id"),
    capacity: words("capacity"),
    heldWith: words("held_with").default(""),
  },
  (t) => [
    key(t),
    toRow(t, t.partyId, () => parties),
    toRow(t, t.propertyId, () => properties),
    toRow(t, t.unitId, () => units),
  ],
);

export const sameParties = sqliteTable(
  "same_parties",
  {
    ...ofLine(),
    partyId: words("party_id"),
    intoId: words("into_id"),
    same: yesNo("same"),
    by: words("by"),
    on: words("on"),
    reason: words("reason"),
  },
  (t) => [key(t), toRow(t, t.partyId, () => parties), toRow(t, t.intoId, () => parties)],
);

export const points = sqliteTable(
  "points",
  {
    ...ofLine(),
    kind: text("kind", { enum: POINT_KINDS }).notNull(),
    station: cft("station").notNull(),
    depth: cft("depth"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const crossings = sqliteTable(
  "crossings",
  {
    ...ofLine(),
    propertyId: words("property_id"),
    from: cft("from").notNull(),
    to: cft("to").notNull(),
    easement: text("easement", { enum: EASEMENT_STATES }).notNull(),
    recordingNumber: words("recording_number"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties)],
);

export const land = sqliteTable(
  "land_stretches",
  {
    ...ofLine(),
    from: cft("from").notNull(),
    to: cft("to").notNull(),
    kind: text("kind", { enum: LAND_KINDS }).notNull(),
    propertyId: text("property_id"),
    shownBy: words("shown_by"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties)],
);

function pipe() {
  return {
    diameter: inches("diameter"),
    material: text("material", { enum: MATERIALS }).notNull(),
    fitting: text("fitting", { enum: FITTINGS }).notNull(),
  };
}

export const tieIns = sqliteTable(
  "tie_ins",
  {
    ...ofLine(),
    label: words("label"),
    parentId: text("parent_id"),
    station: cft("station"),
    side: text("side", { enum: SIDES }).notNull(),
    ...pipe(),
    kind: text("kind", { enum: TIE_IN_KINDS }).notNull(),
    propertyId: text("property_id"),
    inactive: yesNo("inactive"),
    settledReason: words("settled_reason"),
    settledBy: words("settled_by"),
    settledOn: text("settled_on"),
    ownerAccepted: yesNo("owner_accepted"),
    note: words("note"),
  },
  (t) => [
    key(t),
    foreignKey({ columns: [t.lineId, t.parentId], foreignColumns: [t.lineId, t.id] }),
    toRow(t, t.propertyId, () => properties),
  ],
);

export const bends = sqliteTable(
  "bends",
  {
    ...ofLine(),
    station: cft("station").notNull(),
    turn: text("turn", { enum: TURNS }).notNull(),
    degrees: real("turn_deg").notNull(),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const fixedPoints = sqliteTable(
  "fixed_points",
  {
    ...ofLine(),
    name: words("name"),
    east: cft("east"),
    north: cft("north"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const ties = sqliteTable(
  "ties",
  {
    ...ofLine(),
    tieInId: text("tie_in_id"),
    pointId: text("point_id"),
    station: cft("station"),
    fromId: words("from_id"),
    fromDistance: cft("from_distance").notNull(),
    otherId: words("other_id"),
    otherDistance: cft("other_distance").notNull(),
    apart: cft("apart"),
    side: text("side", { enum: TIE_SIDES }).notNull(),
    tapedBy: words("taped_by"),
    tapedOn: text("taped_on"),
    note: words("note"),
  },
  (t) => [
    key(t),
    toRow(t, t.tieInId, () => tieIns),
    toRow(t, t.pointId, () => points),
    toRow(t, t.fromId, () => fixedPoints),
    toRow(t, t.otherId, () => fixedPoints),
  ],
);

export const planShapes = sqliteTable(
  "plan_shapes",
  {
    ...ofLine(),
    kind: text("kind", { enum: SHAPE_KINDS }).notNull(),
    name: words("name"),
    propertyId: text("property_id"),
    outline: words("outline"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties)],
);

export const planPictures = sqliteTable(
  "plan_pictures",
  {
    ...ofLine(),
    uploadId: words("upload_id"),
    width: integer("width_px").notNull(),
    height: integer("height_px").notNull(),
    oneX: integer("one_x_px").notNull(),
    oneY: integer("one_y_px").notNull(),
    otherX: integer("other_x_px").notNull(),
    otherY: integer("other_y_px").notNull(),
    apart: cft("apart").notNull(),
    mainX: integer("main_x_px").notNull(),
    mainY: integer("main_y_px").notNull(),
    up: real("up_deg").notNull(),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.uploadId, () => uploads)],
);

export const records = sqliteTable(
  "records",
  {
    ...ofLine(),
    kind: text("kind", { enum: RECORD_KINDS }).notNull(),
    title: words("title"),
    number: words("number"),
    dated: words("dated"),
    measuredFrom: text("measured_from", { enum: MEASURED_FROM }).notNull(),
    length: cft("length"),
    obtainedOn: text("obtained_on"),
    uploadId: text("upload_id"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.uploadId, () => uploads)],
);

export const entries = sqliteTable(
  "entries",
  {
    ...ofLine(),
    recordId: words("record_id"),
    label: words("label"),
    distance: cft("distance"),
    side: text("side", { enum: SIDES }).notNull(),
    ...pipe(),
    propertyId: text("property_id"),
    explanation: words("explanation"),
    explainedBy: words("explained_by"),
    explainedOn: text("explained_on"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.recordId, () => records), toRow(t, t.propertyId, () => properties)],
);

export const runs = sqliteTable(
  "runs",
  {
    ...ofLine(),
    name: words("name"),
    ranOn: words("ran_on"),
    operator: words("operator"),
    accessPoint: words("access_point"),
    looks: text("looks", { enum: DIRECTIONS }).notNull(),
    measuredFrom: text("measured_from", { enum: FOOTAGE_FROM }).notNull().default("access"),
    selfLeveling: text("self_leveling", { enum: SELF_LEVELING }).notNull().default("unknown"),
    zeroAt: words("zero_at"),
    fromCounter: cft("from_counter").notNull(),
    toCounter: cft("to_counter"),
    ended: text("ended", { enum: RUN_ENDS }).notNull().default("unknown"),
    crossingSeen: text("crossing_seen", { enum: ANSWERS }).notNull(),
    uncertainty: cft("uncertainty"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const anchors = sqliteTable(
  "anchors",
  {
    ...ofLine(),
    runId: words("run_id"),
    kind: text("kind", { enum: ANCHOR_KINDS }).notNull(),
    counter: cft("counter").notNull(),
    station: cft("station").notNull(),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.runId, () => runs)],
);

export const gaps = sqliteTable(
  "gaps",
  {
    ...ofLine(),
    runId: words("run_id"),
    fromCounter: cft("from_counter").notNull(),
    toCounter: cft("to_counter").notNull(),
    cause: text("cause", { enum: OBSCURED_BY }).notNull(),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.runId, () => runs)],
);

export const observations = sqliteTable(
  "observations",
  {
    ...ofLine(),
    runId: words("run_id"),
    kind: text("kind", { enum: OBSERVATION_KINDS }).notNull(),
    counter: cft("counter").notNull(),
    toCounter: cft("to_counter"),
    clock: real("clock"),
    fault: text("fault", { enum: FAULTS }),
    degree: text("degree", { enum: DEGREES }),
    reduction: real("reduction"),
    ...pipe(),
    reading: text("reading", { enum: READINGS }).notNull().default("read"),
    uncertainty: cft("uncertainty"),
    videoSecond: real("video_s"),
    pictureId: text("picture_id"),
    waterDepth: inches("water_depth"),
    quote: words("quote").default(""),
    tieInId: text("tie_in_id"),
    code: words("code"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.runId, () => runs), toRow(t, t.tieInId, () => tieIns)],
);

export const narrations = sqliteTable(
  "narrations",
  {
    ...ofLine(),
    runId: words("run_id"),
    text: words("text"),
    addedBy: words("added_by"),
    addedAt: words("added_at"),
    decided: draftDecisions("decided").notNull(),
  },
  (t) => [key(t), toRow(t, t.runId, () => runs)],
);

export const videos = sqliteTable(
  "videos",
  {
    ...ofLine(),
    runId: words("run_id"),
    name: words("name"),
    type: text("type", { enum: VIDEO_TYPES }).notNull(),
    bytes: integer("bytes").notNull(),
    sha256: words("sha256"),
    addedBy: words("added_by"),
    addedAt: words("added_at"),
    note: words("note"),
  },
  (t) => [key(t), uniqueIndex("videos_run").on(t.lineId, t.runId), toRow(t, t.runId, () => runs)],
);

export const alignments = sqliteTable(
  "alignments",
  {
    ...ofLine(),
    recordId: text("record_id"),
    shift: cft("shift").notNull(),
    scale: integer("scale_ppm").notNull(),
    state: text("state", { enum: ["accepted", "refused"] }).notNull(),
    reason: words("reason"),
    decidedBy: words("decided_by"),
    decidedOn: words("decided_on"),
  },
  (t) => [key(t), toRow(t, t.recordId, () => records)],
);

export const pairings = sqliteTable(
  "pairings",
  {
    ...ofLine(),
    entryId: words("entry_id"),
    tieInId: words("tie_in_id"),
    state: text("state", { enum: PAIRING_STATES }).notNull(),
    distance: cft("distance"),
    reason: words("reason"),
    decidedBy: words("decided_by"),
    decidedOn: words("decided_on"),
  },
  (t) => [
    key(t),
    uniqueIndex("pairings_pair").on(t.lineId, t.entryId, t.tieInId),
    toRow(t, t.entryId, () => entries),
    toRow(t, t.tieInId, () => tieIns),
  ],
);

export const tests = sqliteTable(
  "tests",
  {
    ...ofLine(),
    tieInId: words("tie_in_id"),
    propertyId: text("property_id"),
    unitId: text("unit_id"),
    kind: text("kind", { enum: TEST_KINDS }).notNull(),
    performedOn: words("performed_on"),
    fixture: words("fixture"),
    colour: words("colour"),
    quantity: words("quantity"),
    startedAt: words("started_at"),
    firstSeenAt: words("first_seen_at"),
    seenAt: cft("seen_at"),
    waitMinutes: real("wait_min"),
    filmed: words("filmed"),
    dosedBy: words("dosed_by"),
    watchedBy: words("watched_by"),
    otherWaterBarred: yesNo("other_water_barred"),
    controlPropertyId: text("control_property_id"),
    controlResult: text("control_result", { enum: CONTROL_RESULTS }).notNull(),
    result: text("result", { enum: TEST_RESULTS }).notNull(),
    note: words("note"),
  },
  (t) => [
    key(t),
    toRow(t, t.tieInId, () => tieIns),
    toRow(t, t.propertyId, () => properties),
    toRow(t, t.unitId, () => units),
    toRow(t, t.controlPropertyId, () => properties),
  ],
);

export const testDays = sqliteTable(
  "test_days",
  {
    ...ofLine(),
    on: words("on"),
    controlPropertyId: text("control_property_id"),
    stops: testStops("stops").notNull(),
    plantToldOn: text("plant_told_on"),
    plantTold: words("plant_told").default(""),
    note: words("note"),
    plannedBy: words("planned_by"),
    plannedOn: words("planned_on"),
  },
  (t) => [key(t), toRow(t, t.controlPropertyId, () => properties)],
);

export const rulings = sqliteTable(
  "rulings",
  {
    ...ofLine(),
    tieInId: words("tie_in_id"),
    kind: text("kind", { enum: RULING_KINDS }).notNull(),
    decidedBy: words("decided_by"),
    decidedOn: words("decided_on"),
    dueOn: text("due_on"),
    reference: words("reference"),
    uploadId: text("upload_id"),
    note: words("note"),
    enteredBy: words("entered_by"),
  },
  (t) => [key(t), toRow(t, t.tieInId, () => tieIns), toRow(t, t.uploadId, () => uploads)],
);

export const waivers = sqliteTable(
  "waivers",
  {
    ...ofLine(),
    holdKey: words("hold_key"),
    reason: words("reason"),
    by: words("by"),
    on: words("on"),
  },
  (t) => [key(t), uniqueIndex("waivers_hold").on(t.lineId, t.holdKey)],
);

export const agreements = sqliteTable(
  "agreements",
  {
    ...ofLine(),
    title: words("title"),
    recordingNumber: words("recording_number"),
    recordedOn: text("recorded_on"),
    fromStation: cft("from_station"),
    toStation: cft("to_station"),
    terms: words("terms"),
    shares: agreementShares("shares").notNull(),
  },
  (t) => [key(t)],
);

export const agreementSteps = sqliteTable(
  "agreement_steps",
  {
    ...ofLine(),
    agreementId: words("agreement_id"),
    kind: text("kind", { enum: AGREEMENT_STEP_KINDS }).notNull(),
    on: words("on"),
    by: words("by"),
    partyId: text("party_id"),
    number: words("number"),
    uploadId: text("upload_id"),
    note: words("note"),
  },
  (t) => [
    key(t),
    toRow(t, t.agreementId, () => agreements),
    toRow(t, t.partyId, () => parties),
    toRow(t, t.uploadId, () => uploads),
  ],
);

export const fixtures = sqliteTable(
  "fixture_counts",
  {
    ...ofLine(),
    propertyId: words("property_id"),
    unitId: text("unit_id"),
    fixture: text("fixture", { enum: FIXTURES }).notNull(),
    count: integer("count").notNull(),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties), toRow(t, t.unitId, () => units)],
);

export const levels = sqliteTable(
  "levels",
  {
    ...ofLine(),
    station: cft("station").notNull(),
    ground: cft("ground"),
    depth: cft("depth"),
    invert: cft("invert"),
    method: text("method", { enum: LEVEL_METHODS }).notNull(),
    uncertainty: cft("uncertainty"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const options = sqliteTable(
  "work_options",
  {
    ...ofLine(),
    title: words("title"),
    kind: text("kind", { enum: OPTION_KINDS }).notNull(),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const changeOrders = sqliteTable(
  "change_orders",
  {
    ...ofLine(),
    number: integer("number").notNull(),
    title: words("title"),
    reason: words("reason"),
    state: text("state", { enum: CHANGE_ORDER_STATES }).notNull(),
    orderedBy: words("ordered_by"),
    orderedOn: words("ordered_on"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const scope = sqliteTable(
  "scope_items",
  {
    ...ofLine(),
    title: words("title"),
    kind: text("kind", { enum: SCOPE_KINDS }).notNull().default("unknown"),
    work: text("work", { enum: WORK_KINDS }).notNull(),
    place: text("place", { enum: PLACES }).notNull(),
    from: cft("from"),
    to: cft("to"),
    tieInId: text("tie_in_id"),
    quantity: integer("quantity_hundredths").notNull(),
    unit: words("unit"),
    rate: cents("rate").notNull(),
    markup: integer("markup_bp").notNull(),
    tax: integer("tax_bp").notNull(),
    spread: text("spread", { enum: SPREADS }).notNull(),
    rule: text("rule", { enum: SPLIT_RULES }),
    payerId: text("payer_id"),
    allegedCause: words("alleged_cause"),
    optionId: text("option_id"),
    addedById: text("added_by_id"),
    droppedById: text("dropped_by_id"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.tieInId, () => tieIns), toRow(t, t.payerId, () => properties)],
);

export const splits = sqliteTable(
  "splits",
  {
    ...ofLine(),
    number: integer("number").notNull(),
    rule: text("rule", { enum: SPLIT_RULES }).notNull(),
    faultStation: cft("fault_station"),
    payerId: text("payer_id"),
    unknownShares: text("unknown_shares", { enum: UNKNOWN_SHARES }).notNull(),
    reason: words("reason"),
    chosenBy: words("chosen_by"),
    chosenOn: words("chosen_on"),
    total: cents("total").notNull(),
    shares: frozenShares("shares").notNull(),
    basis: words("basis"),
    optionId: text("option_id"),
    sentAt: text("sent_at"),
  },
  (t) => [
    key(t),
    uniqueIndex("splits_number").on(t.lineId, t.number),
    toRow(t, t.payerId, () => properties),
  ],
);

export const digAreas = sqliteTable(
  "dig_areas",
  {
    ...ofLine(),
    propertyId: words("property_id"),
    place: words("place"),
    length: cft("length"),
    width: cft("width"),
    firstOn: text("first_on"),
    lastOn: text("last_on"),
    restoration: text("restoration", { enum: RESTORATIONS }).notNull(),
    notRestored: words("not_restored"),
    contact: words("contact"),
    contactPhone: words("contact_phone"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties)],
);

export const notices = sqliteTable(
  "notices",
  {
    ...ofLine(),
    kind: text("kind", { enum: LETTER_KINDS }).notNull(),
    partyId: words("party_id"),
    propertyId: text("property_id"),
    tieInId: text("tie_in_id"),
    splitId: text("split_id"),
    language: text("language", { enum: LANGUAGES }).notNull(),
    alsoIn: text("also_in", { enum: LANGUAGES }),
    state: text("state", { enum: NOTICE_STATES }).notNull(),
    createdOn: words("created_on"),
    createdBy: words("created_by"),
    replyBy: text("reply_by"),
    ownWords: words("own_words"),
    frozen: text("frozen_json"),
    frozenHash: text("frozen_hash"),
    sentAt: text("sent_at"),
    uploadId: text("upload_id"),
  },
  (t) => [
    key(t),
    toRow(t, t.partyId, () => parties),
    toRow(t, t.propertyId, () => properties),
    toRow(t, t.tieInId, () => tieIns),
    toRow(t, t.splitId, () => splits),
    toRow(t, t.uploadId, () => uploads),
  ],
);

export const deliveries = sqliteTable(
  "deliveries",
  {
    ...ofLine(),
    noticeId: words("notice_id"),
    method: text("method", { enum: DELIVERY_METHODS }).notNull(),
    sentOn: words("sent_on"),
    by: words("by"),
    tracking: words("tracking"),
    outcome: text("outcome", { enum: DELIVERY_OUTCOMES }).notNull(),
    outcomeOn: text("outcome_on"),
    proofUploadId: text("proof_upload_id"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.noticeId, () => notices), toRow(t, t.proofUploadId, () => uploads)],
);

export const replies = sqliteTable(
  "replies",
  {
    ...ofLine(),
    noticeId: words("notice_id"),
    kind: text("kind", { enum: REPLY_KINDS }).notNull(),
    receivedOn: words("received_on"),
    takenBy: words("taken_by"),
    words: words("words"),
    suitsOn: text("suits_on"),
    uploadId: text("upload_id"),
    dealtBy: words("dealt_by").default(""),
    dealtOn: text("dealt_on"),
    dealtHow: text("dealt_how", { enum: DEALT_HOWS }),
    dealtWords: words("dealt_words").default(""),
  },
  (t) => [key(t), toRow(t, t.noticeId, () => notices), toRow(t, t.uploadId, () => uploads)],
);

export const householdCalls = sqliteTable(
  "household_calls",
  {
    ...ofLine(),
    partyId: words("party_id"),
    propertyId: words("property_id"),
    purpose: text("purpose", { enum: CALL_PURPOSES }).notNull(),
    forDay: words("for_day"),
    outcome: text("outcome", { enum: CALL_OUTCOMES }).notNull(),
    words: words("words"),
    calledBy: words("called_by"),
    calledOn: words("called_on"),
    needs: words("needs"),
  },
  (t) => [key(t), toRow(t, t.partyId, () => parties), toRow(t, t.propertyId, () => properties)],
);

export const rollCall = sqliteTable(
  "roll_call",
  {
    ...ofLine(),
    matter: text("matter", { enum: ROLL_CALL_MATTERS }).notNull(),
    forDay: words("for_day"),
    from: words("from"),
    until: words("until"),
    propertyId: words("property_id"),
    unitId: text("unit_id"),
    answer: text("answer", { enum: ROLL_CALL_ANSWERS }).notNull(),
    spokeWith: words("spoke_with"),
    words: words("words"),
    by: words("by"),
    at: words("at"),
  },
  (t) => [key(t), toRow(t, t.propertyId, () => properties), toRow(t, t.unitId, () => units)],
);

export const consents = sqliteTable(
  "consents",
  {
    ...ofLine(),
    kind: text("kind", { enum: CONSENT_KINDS }).notNull(),
    partyId: words("party_id"),
    propertyId: words("property_id"),
    state: text("state", { enum: CONSENT_STATES }).notNull(),
    stateOn: words("state_on"),
    splitId: text("split_id"),
    amount: cents("amount"),
    recordingNumber: words("recording_number"),
    uploadId: text("upload_id"),
    note: words("note"),
    restsOnId: text("rests_on_id"),
    enteredBy: words("entered_by").default(""),
  },
  (t) => [
    key(t),
    toRow(t, t.partyId, () => parties),
    toRow(t, t.propertyId, () => properties),
    toRow(t, t.splitId, () => splits),
    toRow(t, t.uploadId, () => uploads),
  ],
);

/** Append-only, like the history. */
export const signatures = sqliteTable(
  "signatures",
  {
    ...ofLine(),
    consentId: words("consent_id"),
    linkId: words("link_id"),
    signedName: words("signed_name"),
    forName: words("for_name").default(""),
    drawingId: text("drawing_id"),
    intent: words("intent"),
    disclosure: words("disclosure"),
    disclosureVersion: words("disclosure_version"),
    documentId: words("document_id"),
    documentHash: words("document_hash"),
    signedAt: words("signed_at"),
    zone: words("zone"),
    address: words("address"),
    agent: words("agent"),
    views: signatureViews("views").notNull(),
    copyMessageId: words("copy_message_id"),
    previousHash: words("previous_hash"),
    hash: words("hash"),
  },
  (t) => [
    key(t),
    toRow(t, t.consentId, () => consents),
    toRow(t, t.documentId, () => uploads),
    toRow(t, t.drawingId, () => uploads),
  ],
);

/** Append-only, like the history. */
export const ledger = sqliteTable(
  "ledger_entries",
  {
    ...ofLine(),
    number: integer("number").notNull(),
    kind: text("kind", { enum: LEDGER_KINDS }).notNull(),
    partyId: words("party_id"),
    propertyId: words("property_id"),
    amount: cents("amount").notNull(),
    on: words("on"),
    dueOn: text("due_on"),
    splitId: text("split_id"),
    reversesId: text("reverses_id"),
    method: text("method", { enum: PAYMENT_METHODS }),
    reference: words("reference"),
    uploadId: text("upload_id"),
    note: words("note"),
    enteredBy: words("entered_by"),
    enteredAt: words("entered_at"),
  },
  (t) => [
    key(t),
    uniqueIndex("ledger_entries_number").on(t.lineId, t.number),
    uniqueIndex("ledger_entries_reverses").on(t.lineId, t.reversesId),
    toRow(t, t.partyId, () => parties),
    toRow(t, t.propertyId, () => properties),
    toRow(t, t.splitId, () => splits),
    toRow(t, t.uploadId, () => uploads),
  ],
);

/** Private links to letters: the secret is nowhere here, only its hash. */
export const links = sqliteTable(
  "links",
  {
    id: text("id").primaryKey(),
    lineId: words("line_id").references(() => lines.id),
    noticeId: words("notice_id"),
    partyId: words("party_id"),
    tokenHash: words("token_hash"),
    createdBy: words("created_by"),
    createdAt: words("created_at"),
    expiresAt: words("expires_at"),
    revokedAt: text("revoked_at"),
    revokedBy: words("revoked_by"),
  },
  (t) => [uniqueIndex("links_token").on(t.tokenHash), index("links_line").on(t.lineId)],
);

export const linkVisits = sqliteTable(
  "link_visits",
  {
    position: integer("position").primaryKey({ autoIncrement: true }),
    id: words("id"),
    linkId: words("link_id").references(() => links.id),
    at: words("at"),
    what: words("what"),
    address: words("address"),
    agent: words("agent"),
  },
  (t) => [index("link_visits_link").on(t.linkId)],
);

export const permits = sqliteTable(
  "permits",
  {
    ...ofLine(),
    kind: text("kind", { enum: PERMIT_KINDS }).notNull(),
    number: words("number"),
    expiresOn: text("expires_on"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const permitSteps = sqliteTable(
  "permit_steps",
  {
    ...ofLine(),
    permitId: words("permit_id"),
    state: text("state", { enum: PERMIT_STATES }).notNull(),
    on: words("on"),
    by: words("by"),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.permitId, () => permits)],
);

export const requirementMarks = sqliteTable(
  "requirement_marks",
  {
    ...ofLine(),
    requirementId: words("requirement_id"),
    state: text("state", { enum: REQUIREMENT_STATES }).notNull(),
    uploadId: text("upload_id"),
    note: words("note"),
  },
  (t) => [
    key(t),
    uniqueIndex("requirement_marks_requirement").on(t.lineId, t.requirementId),
    toRow(t, t.uploadId, () => uploads),
  ],
);

export const locateTickets = sqliteTable(
  "locate_tickets",
  {
    ...ofLine(),
    number: words("number"),
    calledOn: words("called_on"),
    calledAt: words("called_at").default(""),
    workBeginsOn: text("work_begins_on"),
    workBeginsAt: words("work_begins_at").default(""),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const inspections = sqliteTable(
  "inspections",
  {
    ...ofLine(),
    permitId: words("permit_id"),
    title: words("title"),
    bookedFor: words("booked_for"),
    bookedAt: words("booked_at").default(""),
    inspector: words("inspector"),
    result: text("result", { enum: INSPECTION_RESULTS }).notNull(),
    note: words("note"),
  },
  (t) => [key(t), toRow(t, t.permitId, () => permits)],
);

export const events = sqliteTable(
  "dated_events",
  {
    ...ofLine(),
    event: text("event", { enum: CLOCK_EVENTS }).notNull(),
    on: words("on"),
    at: words("at").default(""),
    until: words("until").default(""),
    lastOn: text("last_on"),
    reference: words("reference").default(""),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const spillSteps = sqliteTable(
  "spill_steps",
  {
    ...ofLine(),
    kind: text("kind", { enum: SPILL_STEP_KINDS }).notNull(),
    on: words("on"),
    at: words("at"),
    place: words("place"),
    number: words("number"),
    gallons: integer("gallons"),
    reached: words("reached"),
    note: words("note"),
  },
  (t) => [key(t)],
);

export const reconnections = sqliteTable(
  "reconnections",
  {
    ...ofLine(),
    tieInId: words("tie_in_id"),
    lowerAccess: cft("lower_access"),
    fromLower: cft("from_lower"),
    upperAccess: cft("upper_access"),
    fromUpper: cft("from_upper"),
    measuredBy: words("measured_by"),
    measuredOn: text("measured_on"),
    openedRunId: text("opened_run_id"),
    openedSecond: real("opened_s"),
    openedBy: words("opened_by"),
    openedOn: text("opened_on"),
    note: words("note"),
  },
  (t) => [
    key(t),
    uniqueIndex("reconnections_tie_in").on(t.lineId, t.tieInId),
    toRow(t, t.tieInId, () => tieIns),
    toRow(t, t.openedRunId, () => runs),
  ],
);

export const built = sqliteTable(
  "built_work",
  {
    ...ofLine(),
    itemId: text("item_id"),
    on: words("on_day"),
    by: words("by"),
    words: words("words"),
    uploadId: text("upload_id"),
  },
  (t) => [key(t), toRow(t, t.itemId, () => scope), toRow(t, t.uploadId, () => uploads)],
);

/** Append-only: triggers refuse every change and removal. Without a line: the office's own. */
export const history = sqliteTable(
  "history",
  {
    position: integer("position").primaryKey({ autoIncrement: true }),
    lineId: text("line_id").references(() => lines.id),
    id: words("id"),
    at: words("at"),
    by: words("by"),
    action: words("action"),
    sentence: words("sentence"),
    detail: words("detail_json"),
  },
  (t) => [uniqueIndex("history_line").on(t.lineId, t.id)],
);

/** How often a table of a line was saved: whoever saves names the count that they saw. */
export const revisions = sqliteTable(
  "revisions",
  {
    lineId: words("line_id").references(() => lines.id),
    table: words("table_name"),
    revision: integer("revision").notNull(),
    by: words("by"),
    at: words("at"),
  },
  (t) => [primaryKey({ columns: [t.lineId, t.table] })],
);

// ── Work that is done outside of requests ──────────────────────────────────────────────────────

/** Who works on it and until when it is theirs; after that anybody may take it over. */
function leased() {
  return {
    attempts: integer("attempts").notNull(),
    lockedBy: text("locked_by"),
    leaseUntil: text("lease_until"),
    nextTryAt: words("next_try_at"),
    problem: words("problem"),
  };
}

export const jobs = sqliteTable(
  "jobs",
  {
    id: text("id").primaryKey(),
    lineId: words("line_id").references(() => lines.id),
    kind: text("kind", { enum: JOB_KINDS }).notNull(),
    subjectIds: ids("subject_ids").notNull(),
    state: text("state", { enum: JOB_STATES }).notNull(),
    ...leased(),
    uploadId: text("upload_id"),
    by: words("asked_by"),
    createdAt: words("asked_at"),
    endedAt: text("ended_at"),
  },
  (t) => [index("jobs_state").on(t.state, t.nextTryAt), index("jobs_line").on(t.lineId)],
);

export const outbox = sqliteTable(
  "outbox",
  {
    id: text("id").primaryKey(),
    lineId: words("line_id").references(() => lines.id),
    noticeId: text("notice_id"),
    deliveryId: text("delivery_id"),
    uploadId: text("upload_id"),
    toAddress: words("to_address"),
    toName: words("to_name"),
    subject: words("subject"),
    text: words("text"),
    messageId: words("message_id"),
    state: text("state", { enum: OUTGOING_STATES }).notNull(),
    ...leased(),
    createdAt: words("created_at"),
    sentAt: text("sent_at"),
  },
  (t) => [
    index("outbox_state").on(t.state, t.nextTryAt),
    uniqueIndex("outbox_message").on(t.messageId),
    foreignKey({
      columns: [t.lineId, t.deliveryId],
      foreignColumns: [deliveries.lineId, deliveries.id],
    }),
  ],
);

// ── Kept beside the facts, and kept current by triggers (kept-current.ts) ──────────────────────

/** What the desk and the lists say of a line, and whether the line changed since. */
export const lineSummaries = sqliteTable(
  "line_summaries",
  {
    lineId: text("line_id")
      .primaryKey()
      .references(() => lines.id, { onDelete: "cascade" }),
    /** Counts every change of the line's file and of what it rests on. */
    version: integer("version").notNull().default(0),
    /** The file changed since it was summed up. */
    stale: yesNo("stale").default(true),
    /** The office's day on which it was summed up. */
    day: words("day").default(""),
    closed: yesNo("closed").default(false),
    /** Stands on the desk: open, or a reply waits on it. */
    waiting: yesNo("waiting").default(true),
    /** The name as it is sorted by. */
    sortName: words("sort_name").default(""),
    pressing: integer("pressing").notNull().default(0),
    sentence: words("sentence").default(""),
    question: text("question", { enum: QUESTIONS }),
    /** The most pressing questions that are open, as many as are shown. */
    open: openAnswers("open"),
    openCount: integer("open_count").notNull().default(0),
  },
  (t) => [
    index("line_summaries_stale").on(t.stale).where(sql`${t.stale} = 1`),
    index("line_summaries_desk").on(t.waiting, t.day),
    index("line_summaries_waiting").on(t.waiting, sql`${t.pressing} DESC`, t.sortName),
    index("line_summaries_list").on(t.closed, sql`${t.pressing} DESC`, t.sortName),
  ],
);

/** What is late, due, blocked or waiting on every line. */
export const dueThings = sqliteTable(
  "due_things",
  {
    lineId: words("line_id").references(() => lines.id, { onDelete: "cascade" }),
    position: integer("position").notNull(),
    kind: text("kind", { enum: DUE_KINDS }).notNull(),
    /** The day it is due; one that is never for what has none, so that it sorts last. */
    sortDay: words("sort_day"),
    sentence: words("sentence"),
    question: text("question", { enum: QUESTIONS }).notNull(),
    /** Where it is settled, as a path under the line; null where that is the question's own page. */
    path: text("path"),
  },
  (t) => [
    primaryKey({ columns: [t.lineId, t.position] }),
    index("due_things_desk").on(t.kind, t.sortDay, t.sentence),
  ],
);

/** How many lines are open and closed, and how many things of each kind stand on the desk. */
export const tallies = sqliteTable("tallies", {
  name: text("name", { enum: TALLIES }).primaryKey(),
  count: integer("count").notNull().default(0),
});

/** The words that search goes through; `search_index` is the full-text index over them. */
export const searchTexts = sqliteTable(
  "search_texts",
  {
    id: integer("id").primaryKey(),
    lineId: words("line_id"),
    kind: words("kind"),
    rowId: words("row_id"),
    title: words("title"),
    detail: words("detail"),
  },
  (t) => [index("search_texts_row").on(t.lineId, t.kind, t.rowId)],
);
