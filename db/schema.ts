import { type BuildColumns, sql } from "drizzle-orm";
import {
  type AnySQLiteColumn,
  foreignKey,
  index,
  integer,
  primaryKey,
  type SQLiteTableWithColumns,
  sqliteTable,
  text,
  uniqueIndex,
} from "drizzle-orm/sqlite-core";
import { DUE_KINDS, QUESTIONS, TALLIES, WAITS_ON } from "#lib/domain/desk/answer.ts";
import {
  AUTHORITY,
  FEE,
  INSPECTION_KIND,
  REFUSAL_STEP,
  REQUIREMENT,
  RESPONSIBILITY_RULE,
} from "#lib/domain/facts/authority.ts";
import { CLOCK_RULE, HOLIDAY } from "#lib/domain/facts/clock-rule.ts";
import { DAY_MANNERS } from "#lib/domain/facts/form.ts";
import { HISTORY_ENTRY } from "#lib/domain/facts/history-entry.ts";
import { JOB_KINDS, JOB_STATES } from "#lib/domain/facts/job.ts";
import { LINE_FACTS } from "#lib/domain/facts/line.ts";
import type { ListName } from "#lib/domain/facts/list-name.ts";
import { LISTS } from "#lib/domain/facts/lists.ts";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { PERMIT_KINDS } from "#lib/domain/facts/permit.ts";
import {
  DRAWING_ITEM,
  DRAWING_SCALE,
  PAVEMENT_RULE,
  PERMIT_ORDER,
  REQUIREMENT_CONDITION,
} from "#lib/domain/facts/permit-rule.ts";
import { PROOF_RULE } from "#lib/domain/facts/proof-rule.ts";
import { LIST_REFERENCES } from "#lib/domain/facts/references.ts";
import { SIGN_IN_DEEDS } from "#lib/domain/facts/session.ts";
import { STATUTORY_PAPER } from "#lib/domain/facts/statutory-paper.ts";
import { USER_ROLES } from "#lib/domain/facts/user.ts";
import { OUTGOING_STATES } from "#lib/domain/notices/outgoing.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import {
  address,
  formFields,
  formMappings,
  formPages,
  ids,
  notes,
  openAnswers,
  openHours,
  paymentMethods,
  words,
  yesNo,
} from "./column.ts";
import { type ColumnNames, type FactColumns, factColumns, snake } from "./fact-columns.ts";

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
  compensation: words("compensation").default(""),
  compensationExpiresOn: text("compensation_expires_on"),
  businessLicense: words("business_license").default(""),
  businessLicenseExpiresOn: text("business_license_expires_on"),
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
  ...factColumns(AUTHORITY.fields),
  id: text("id").primaryKey(),
});

/** What every part of an authority has: its id, whose it is, its place in the order that people gave it. */
function ofAuthority() {
  return {
    id: text("id").notNull(),
    authorityId: words("authority_id").references(() => authorities.id),
    position: integer("position").notNull(),
  };
}

export const rules = sqliteTable(
  "rules",
  { ...factColumns(RESPONSIBILITY_RULE.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const requirements = sqliteTable(
  "requirements",
  { ...factColumns(REQUIREMENT.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const fees = sqliteTable("fees", { ...factColumns(FEE.fields), ...ofAuthority() }, (t) => [
  primaryKey({ columns: [t.authorityId, t.id] }),
]);

export const inspectionKinds = sqliteTable(
  "inspection_kinds",
  { ...factColumns(INSPECTION_KIND.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const clockRules = sqliteTable(
  "clock_rules",
  { ...factColumns(CLOCK_RULE.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const refusalSteps = sqliteTable(
  "refusal_steps",
  { ...factColumns(REFUSAL_STEP.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const holidays = sqliteTable(
  "holidays",
  { ...factColumns(HOLIDAY.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const conditions = sqliteTable(
  "requirement_conditions",
  { ...factColumns(REQUIREMENT_CONDITION.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const permitOrders = sqliteTable(
  "permit_orders",
  { ...factColumns(PERMIT_ORDER.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const pavementRules = sqliteTable(
  "pavement_rules",
  { ...factColumns(PAVEMENT_RULE.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const drawingItems = sqliteTable(
  "drawing_items",
  { ...factColumns(DRAWING_ITEM.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const scales = sqliteTable(
  "drawing_scales",
  { ...factColumns(DRAWING_SCALE.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const proofRules = sqliteTable(
  "proof_rules",
  { ...factColumns(PROOF_RULE.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

export const statutoryPapers = sqliteTable(
  "statutory_papers",
  { ...factColumns(STATUTORY_PAPER.fields), ...ofAuthority() },
  (t) => [primaryKey({ columns: [t.authorityId, t.id] })],
);

/** The forms that authorities hand out: every save is a version, and stays. */
export const forms = sqliteTable(
  "forms",
  {
    id: text("id").notNull(),
    authorityId: words("authority_id").references(() => authorities.id),
    version: integer("version").notNull(),
    title: words("title"),
    permitKind: text("permit_kind", { enum: PERMIT_KINDS }).notNull(),
    requirementId: text("requirement_id"),
    fileName: words("file_name"),
    sha256: words("sha256"),
    bytes: integer("bytes").notNull(),
    pages: formPages("pages").notNull(),
    fields: formFields("fields").notNull(),
    notes: notes("notes").notNull(),
    mappings: formMappings("mappings").notNull(),
    days: text("days", { enum: DAY_MANNERS }).notNull(),
    flatten: yesNo("flatten"),
    retired: yesNo("retired"),
    savedBy: words("saved_by"),
    savedAt: words("saved_at"),
  },
  (t) => [primaryKey({ columns: [t.id, t.version] }), index("forms_authority").on(t.authorityId)],
);

/** How the office words its letters: versions, and from when which one is in use. */
export const wordings = sqliteTable(
  "wordings",
  {
    position: integer("position").primaryKey({ autoIncrement: true }),
    kind: text("kind", { enum: LETTER_KINDS }).notNull(),
    language: text("language", { enum: LANGUAGES }).notNull(),
    version: integer("version").notNull(),
    text: words("text"),
    savedBy: words("saved_by"),
    savedAt: words("saved_at"),
  },
  (t) => [uniqueIndex("wordings_version").on(t.kind, t.language, t.version)],
);

export const wordingUses = sqliteTable("wording_uses", {
  position: integer("position").primaryKey({ autoIncrement: true }),
  kind: text("kind", { enum: LETTER_KINDS }).notNull(),
  language: text("language", { enum: LANGUAGES }).notNull(),
  version: integer("version").notNull(),
  by: words("used_by"),
  at: words("used_at"),
});

// ── A line and what is known of it ─────────────────────────────────────────────────────────────

export const lines = sqliteTable(
  "lines",
  {
    ...factColumns(LINE_FACTS.fields),
    id: text("id").primaryKey(),
    authorityId: text("authority_id").references(() => authorities.id),
  },
  (t) => [
    foreignKey({
      columns: [t.authorityId, t.ruleId],
      foreignColumns: [rules.authorityId, rules.id],
    }),
    foreignKey(() => ({
      columns: [t.id, t.optionId],
      foreignColumns: keyOf("options"),
    })),
  ],
);

/** What every row of a line has: its line, its id, its place in the order that people gave it. */
function ofLine() {
  return {
    lineId: words("line_id").references((): AnySQLiteColumn => lines.id),
    id: words("id"),
    position: integer("position").notNull(),
  };
}

type RowList = Exclude<ListName, "history">;
type FieldsOf<L extends ListName> = (typeof LISTS)[L]["fields"];
type ListColumns<L extends ListName> = Omit<ReturnType<typeof ofLine>, "id"> &
  FactColumns<FieldsOf<L>>;

/** The table of one list. */
type ListTable<L extends ListName> = SQLiteTableWithColumns<{
  name: string;
  schema: undefined;
  columns: BuildColumns<string, ListColumns<L>, "sqlite">;
  dialect: "sqlite";
}>;

/** Tables and columns that are not called after their list, their field and its unit. */
const TABLE_NAMES: { readonly [L in RowList]?: string } = {
  land: "land_stretches",
  fixtures: "fixture_counts",
  options: "work_options",
  scope: "scope_items",
  ledger: "ledger_entries",
  events: "dated_events",
  built: "built_work",
};
const COLUMN_NAMES: { readonly [L in RowList]?: ColumnNames<FieldsOf<L>> } = {
  bends: { degrees: "turn_deg" },
  planPictures: {
    width: "width_px",
    height: "height_px",
    oneX: "one_x_px",
    oneY: "one_y_px",
    otherX: "other_x_px",
    otherY: "other_y_px",
    mainX: "main_x_px",
    mainY: "main_y_px",
  },
  observations: { videoSecond: "video_s" },
  tests: { waitMinutes: "wait_min" },
  notices: { frozen: "frozen_json" },
  reconnections: { openedSecond: "opened_s" },
  built: { on: "on_day" },
  builtPieces: { runSecond: "run_s" },
};

type Columns = Readonly<Record<string, AnySQLiteColumn>>;

/** Tables by their list, for what refers to them; a list may name one that is defined below it. */
const LIST_TABLES = new Map<ListName, Columns>();

/**
 * The table of a list: keyed by the line and the id, with a foreign key for every field that names a
 * row of another list. `unique` names sets of columns of which no two rows have the same.
 */
function listTable<L extends RowList>(
  list: L,
  unique: Readonly<Record<string, readonly (keyof ListColumns<L> & string)[]>> = {},
): ListTable<L> {
  const name = TABLE_NAMES[list] ?? snake(list);
  const columns = {
    ...ofLine(),
    ...factColumns(LISTS[list].fields as FieldsOf<L>, COLUMN_NAMES[list]),
  };
  const table = sqliteTable(name, columns as never, (t: Columns) => [
    primaryKey({ columns: [column(t, "lineId"), column(t, "id")] }),
    ...Object.entries(unique).map(([index, fields]) =>
      uniqueIndex(index).on(...indexed(t, fields)),
    ),
    ...keysTo(list, t),
  ]);
  LIST_TABLES.set(list, table as unknown as Columns);
  return table as unknown as ListTable<L>;
}

/** A row names a row of the same line. */
function keysTo(list: ListName, t: Columns) {
  return LIST_REFERENCES.filter(({ from, inside }) => from === list && inside === null).map(
    ({ field, to }) =>
      foreignKey(() => ({
        columns: [column(t, "lineId"), column(t, field)],
        foreignColumns: keyOf(to),
      })),
  );
}

/** What a row of a list is known by. */
function keyOf(list: ListName): [AnySQLiteColumn, AnySQLiteColumn] {
  const table = LIST_TABLES.get(list) ?? {};
  return [column(table, "lineId"), column(table, "id")];
}

function indexed(t: Columns, fields: readonly string[]): [AnySQLiteColumn, ...AnySQLiteColumn[]] {
  const [first = "", ...rest] = fields;
  return [column(t, first), ...rest.map((field) => column(t, field))];
}

function column(table: Columns, field: string): AnySQLiteColumn {
  const found = table[field];
  if (found === undefined) throw new Error(`There is no column for ${field}`);
  return found;
}

export const properties = listTable("properties");
export const units = listTable("units");
export const parties = listTable("parties");
export const roles = listTable("roles");
export const sameParties = listTable("sameParties");
export const points = listTable("points");
export const crossings = listTable("crossings");
export const land = listTable("land");
export const tieIns = listTable("tieIns");
export const bends = listTable("bends");
export const fixedPoints = listTable("fixedPoints");
export const ties = listTable("ties");
export const planShapes = listTable("planShapes");
export const planPictures = listTable("planPictures");
export const records = listTable("records");
export const entries = listTable("entries");
export const runs = listTable("runs");
export const anchors = listTable("anchors");
export const gaps = listTable("gaps");
export const observations = listTable("observations");
export const narrations = listTable("narrations");
export const videos = listTable("videos", { videos_run: ["lineId", "runId"] });
export const alignments = listTable("alignments");
export const pairings = listTable("pairings", { pairings_pair: ["lineId", "entryId", "tieInId"] });
export const tests = listTable("tests");
export const testDays = listTable("testDays");
export const rulings = listTable("rulings");
export const waivers = listTable("waivers", { waivers_hold: ["lineId", "holdKey"] });
export const agreements = listTable("agreements");
export const agreementSteps = listTable("agreementSteps");
export const fixtures = listTable("fixtures");
export const levels = listTable("levels");
export const options = listTable("options");
export const changeOrders = listTable("changeOrders");
export const scope = listTable("scope");
export const splits = listTable("splits", { splits_number: ["lineId", "number"] });
export const digAreas = listTable("digAreas");
export const notices = listTable("notices");
export const deliveries = listTable("deliveries");
export const replies = listTable("replies");
export const householdCalls = listTable("householdCalls");
export const rollCall = listTable("rollCall");
export const meetings = listTable("meetings");
export const meetingWords = listTable("meetingWords");
export const consents = listTable("consents");
export const contracts = listTable("contracts");
export const paperWaivers = listTable("paperWaivers");
export const signatures = listTable("signatures");
export const ledger = listTable("ledger", {
  ledger_entries_number: ["lineId", "number"],
  ledger_entries_reverses: ["lineId", "reversesId"],
});
export const permits = listTable("permits");
export const permitSteps = listTable("permitSteps");
export const corrections = listTable("corrections");
export const permitFees = listTable("permitFees");
export const requirementMarks = listTable("requirementMarks", {
  requirement_marks_requirement: ["lineId", "requirementId"],
});
export const applications = listTable("applications");
export const ownerAuthorizations = listTable("ownerAuthorizations");
export const proposedPipes = listTable("proposedPipes");
export const surfaceCuts = listTable("surfaceCuts");
export const drawingMarks = listTable("drawingMarks");
export const locateTickets = listTable("locateTickets");
export const formEntries = listTable("formEntries");
export const utilityResponses = listTable("utilityResponses");
export const inspections = listTable("inspections");
export const events = listTable("events");
export const reconnections = listTable("reconnections", {
  reconnections_tie_in: ["lineId", "tieInId"],
});
export const built = listTable("built");
export const builtPieces = listTable("builtPieces");
export const spillSteps = listTable("spillSteps");
export const uploads = listTable("uploads", { uploads_id: ["id"] });

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

/** Addresses at which a calendar program reads the office's days: the secret is nowhere here, only its hash. */
export const calendarFeeds = sqliteTable(
  "calendar_feeds",
  {
    id: text("id").primaryKey(),
    /** Whose it is: it ends with their access. */
    userId: words("user_id").references(() => users.id),
    tokenHash: words("token_hash"),
    /** Only the lines that they look after. */
    onlyMine: yesNo("only_mine"),
    createdAt: words("created_at"),
    revokedAt: text("revoked_at"),
    revokedBy: words("revoked_by"),
    readAt: text("read_at"),
  },
  (t) => [
    uniqueIndex("calendar_feeds_token").on(t.tokenHash),
    index("calendar_feeds_user").on(t.userId),
  ],
);

/** Append-only: triggers refuse every change and removal. Without a line: the office's own. */
export const history = sqliteTable(
  "history",
  {
    position: integer("position").primaryKey({ autoIncrement: true }),
    lineId: text("line_id").references(() => lines.id),
    ...factColumns(HISTORY_ENTRY.fields, { detail: "detail_json" }),
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
    entryId: text("entry_id"),
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

/** How the office sends mail; one row. */
export const mailRules = sqliteTable("mail_rules", {
  id: integer("id").primaryKey(),
  /** At most so many messages an hour; null: as many as there are. */
  perHour: integer("per_hour"),
  /** Each morning everyone is sent what is late or due this week on the lines that they handle. */
  daily: yesNo("daily").default(false),
});

/** What was sent to the people of the office, one message a person and day: none goes twice. */
export const dailyMails = sqliteTable(
  "daily_mails",
  {
    id: text("id").primaryKey(),
    userId: words("user_id").references(() => users.id),
    day: words("day"),
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
    uniqueIndex("daily_mails_day").on(t.userId, t.day),
    index("daily_mails_state").on(t.state, t.nextTryAt),
  ],
);

/** When the office reminds of a kind of letter. */
export const reminderRules = sqliteTable("reminder_rules", {
  kind: text("kind", { enum: LETTER_KINDS }).primaryKey(),
  daysAfter: integer("days_after").notNull(),
  every: integer("every").notNull(),
  most: integer("most").notNull(),
  sends: integer("sends", { mode: "boolean" }).notNull(),
  sendsBy: words("sends_by"),
  sendsAt: words("sends_at"),
});

/** Of which letters the worker drafted a reminder, so that none is drafted twice, also where a draft was discarded. */
export const remindersDrafted = sqliteTable(
  "reminders_drafted",
  {
    lineId: words("line_id").references(() => lines.id, { onDelete: "cascade" }),
    noticeId: text("notice_id").notNull(),
    draftId: text("draft_id").notNull(),
    sends: integer("sends", { mode: "boolean" }).notNull(),
  },
  (t) => [primaryKey({ columns: [t.lineId, t.noticeId] })],
);

/** Up to where the office's mailbox was read; one row. */
export const mailbox = sqliteTable("mailbox", {
  id: integer("id").primaryKey(),
  validity: text("validity"),
  uid: integer("uid").notNull().default(0),
  lookedAt: text("looked_at"),
  /** Why it could not be read the last time; empty: it was. */
  problem: words("problem").default(""),
});

/** Messages that came in and were taken, so that none is taken twice. */
export const incoming = sqliteTable("incoming", {
  /** SHA-256 of the Message-ID, or of the message where it has none. */
  key: text("key").primaryKey(),
  at: words("at"),
  what: text("what", { enum: ["bounce", "answer", "left"] }).notNull(),
});

// ── Kept beside the facts, and kept current by triggers (kept-current.ts) ──────────────────────

/** Who of the office looks after a line; a line without a row has nobody. No part of its file. */
export const lineKeepers = sqliteTable("line_keepers", {
  lineId: text("line_id")
    .primaryKey()
    .references(() => lines.id, { onDelete: "cascade" }),
  userId: words("user_id").references(() => users.id),
});

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
    /** Who looks after it; empty: nobody. */
    keeper: words("keeper").default(""),
  },
  (t) => [
    index("line_summaries_stale").on(t.stale).where(sql`${t.stale} = 1`),
    index("line_summaries_desk").on(t.waiting, t.day),
    index("line_summaries_waiting").on(t.waiting, sql`${t.pressing} DESC`, t.sortName),
    index("line_summaries_keeper").on(t.keeper, t.waiting, sql`${t.pressing} DESC`, t.sortName),
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
    /** Who has to move. */
    waitsOn: text("waits_on", { enum: WAITS_ON }).notNull().default("office"),
    /** Who looks after the line; empty: nobody. */
    keeper: words("keeper").default(""),
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
    index("due_things_waits").on(t.waitsOn, t.kind, t.sortDay, t.sentence),
    index("due_things_keeper").on(t.keeper, t.kind, t.sortDay, t.sentence),
  ],
);

/** The days of every line that the office's calendar shows. */
export const lineDates = sqliteTable(
  "line_dates",
  {
    lineId: words("line_id").references(() => lines.id, { onDelete: "cascade" }),
    position: integer("position").notNull(),
    key: words("key"),
    day: words("day"),
    since: words("since"),
    title: words("title"),
    path: words("path"),
  },
  (t) => [primaryKey({ columns: [t.lineId, t.position] }), index("line_dates_day").on(t.day)],
);

/** How many things are due, by all that the desk can be narrowed to: few rows, whatever the office has. */
export const dueCounts = sqliteTable(
  "due_counts",
  {
    keeper: words("keeper"),
    waitsOn: text("waits_on", { enum: WAITS_ON }).notNull(),
    kind: text("kind", { enum: DUE_KINDS }).notNull(),
    sortDay: words("sort_day"),
    count: integer("count").notNull().default(0),
  },
  (t) => [primaryKey({ columns: [t.keeper, t.waitsOn, t.kind, t.sortDay] })],
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
