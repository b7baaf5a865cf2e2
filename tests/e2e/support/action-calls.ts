import type Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import type { Db } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getMailRules } from "#db/queries/mailbox.ts";
import { listReminderRules } from "#db/queries/reminder.ts";
import { keeperOf } from "#db/queries/summary.ts";
import { getUser } from "#db/queries/user.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { userSeen } from "#lib/operations/change-user.ts";
import { explainedSeen } from "#lib/operations/explain-entry.ts";
import { lineSeen } from "#lib/operations/save-line.ts";
import { fieldsSeen, seenOf } from "#lib/operations/seen.ts";
import { aForm, IDLE } from "./own-office.ts";

/** One call of a server action that somebody with the right role could make on the demo. */
export interface ActionCall {
  readonly args: (db: Database.Database) => readonly unknown[];
  /** It writes when such a person makes it; the others are refused for what they say. */
  readonly writes?: true;
}

const LINE = "fennel-0001";
const DAY = "2026-11-25";

function id(db: Database.Database, sql: string): string {
  return String(db.prepare(sql).pluck().get() ?? "none");
}

const of = (table: string, more = "") =>
  `select id from ${table} where line_id = '${LINE}' ${more} limit 1`;

/** A payment in the money book that no later entry takes back. */
const PAYMENT_NOT_UNDONE = `select id from ledger_entries where line_id = 'ropewalk-0001'
  and kind = 'payment' and id not in
    (select reverses_id from ledger_entries where reverses_id is not null)
  limit 1`;

const asDb = (db: Database.Database) => drizzle(db) as unknown as Db;

/** What a form of the line was filled in from. */
function seenIn(db: Database.Database, of: (file: LineFile) => unknown): string {
  const file = getLineFile(asDb(db), LINE);
  if (file === null) throw new Error("The line is gone");
  return seenOf(of(file) ?? null);
}

const ON_ITS_WAY = of("deliveries", "and outcome = 'on-its-way'");
const WAITING = of("replies", "and dealt_by = ''");
const isIn = (db: Database.Database, sql: string) => (row: { readonly id: string }) =>
  row.id === id(db, sql);
const INES = "select id from users where email_key = 'ines@example.com'";

function inesSeen(db: Database.Database): string {
  const ines = getUser(asDb(db), id(db, INES));
  return seenOf(ines === null ? null : userSeen(ines));
}

const UNPAIRED = of("entries", "and id not in (select entry_id from pairings)");

type Fields = Readonly<Record<string, string | readonly string[]>>;

/** An action on the line with a form: `(lineId, state, form)`. */
function onLine(fields: Fields | ((db: Database.Database) => Fields), writes?: true): ActionCall {
  return {
    args: (db) => [LINE, IDLE, aForm(typeof fields === "function" ? fields(db) : fields)],
    ...(writes ? { writes } : {}),
  };
}

/** The same about the line's first run. */
function onRun(fields: Fields, writes?: true): ActionCall {
  return {
    args: (db) => [{ lineId: LINE, runId: id(db, of("runs")) }, IDLE, aForm(fields)],
    ...(writes ? { writes } : {}),
  };
}

/** What each action is called with; one that is not here is called with a line and an empty form. */
export const ACTION_CALLS: Readonly<Record<string, ActionCall>> = {
  openLineAction: {
    args: () => [IDLE, aForm({ name: "Alder Court", town: "Quillhaven, WA", authorityId: "" })],
    writes: true,
  },
  chooseRuleAction: onLine({ rule: "none" }),
  saveLineAction: onLine({
    name: "Cinder Alley",
    town: "Quillhaven, WA",
    material: "unknown",
    diameter: "6",
  }),
  keepLineAction: onLine((db) => ({ userId: "", seen: seenOf(keeperOf(asDb(db), LINE)) }), true),
  saveRowsAction: { args: (db) => rowsCall(db), writes: true },
  judgePartiesAction: onLine(
    (db) => ({
      a: id(db, of("parties")),
      b: id(db, `${of("parties")} offset 1`),
      ...{ keep: "two", reason: "" },
    }),
    true,
  ),
  bringInPeopleAction: {
    args: () => [LINE, [{ site: "1 Alder Court", owner: "Nora Hale", order: "first-last" }]],
    writes: true,
  },
  undoSamePartyAction: {
    args: () => [{ lineId: LINE, wordId: "none" }, IDLE, aForm({})],
  },
  savePeopleAction: { args: () => [LINE, 0, []] },
  decideAction: onLine(
    (db) => ({
      ...{ state: "refused", reason: "other", words: "Another place" },
      entryId: id(db, of("entries", "and id not in (select entry_id from pairings)")),
      tieInId: id(db, of("tie_ins", "and id not in (select tie_in_id from pairings)")),
      seen: seenOf([]),
    }),
    true,
  ),
  withdrawAction: onLine(
    (db) => ({ pairingId: id(db, of("pairings")), reason: "other", words: "Too soon" }),
    true,
  ),
  explainAction: onLine(
    (db) => ({
      ...{ reason: "other", words: "Never built" },
      entryId: id(db, UNPAIRED),
      seen: seenIn(db, ({ entries }) =>
        entries.filter(isIn(db, UNPAIRED)).map(explainedSeen).at(0),
      ),
    }),
    true,
  ),
  beginLineAction: onLine({ entryId: "none" }),
  waiveAction: onLine({ holdKey: "none", words: "Because" }),
  addTestAction: {
    args: (db) => [{ lineId: LINE, tieInId: id(db, of("tie_ins")) }, IDLE, aForm({})],
  },
  recordRulingAction: onLine((db) => ({
    ...{ kind: "accepted", decidedBy: "J. Field, inspector", decidedOn: DAY, reference: "L-7" },
    tieInId: id(db, of("tie_ins")),
  })),
  dropDayAction: onLine((db) => ({ dayId: id(db, of("test_days")) }), true),
  addPermitAction: onLine({ kind: "street-use", number: "SU-1", expiresOn: "", note: "" }, true),
  stepPermitAction: {
    args: () => [
      { lineId: "ropewalk-0001", permitId: "rw-permit" },
      IDLE,
      aForm({ state: "issued", on: DAY, note: "" }),
    ],
  },
  postCardAction: {
    args: () => [
      { lineId: "ropewalk-0001", permitId: "rw-permit" },
      IDLE,
      aForm({ postedOn: DAY, postedBy: "Sami", postedPlace: "Gate" }),
    ],
  },
  printFeesAction: { args: () => ["ropewalk-0001", ["rw-permit"]], writes: true },
  printCorrectionsAction: {
    args: (db) => [
      "ropewalk-0001",
      [id(db, "select id from permit_steps where line_id = 'ropewalk-0001' limit 1")],
    ],
    writes: true,
  },
  buildPacketAction: { args: () => [LINE, []], writes: true },
  buildAsBuiltAction: { args: () => [LINE, []], writes: true },
  buildCloseOutAction: { args: () => [LINE, []], writes: true },
  printLettersAction: { args: (db) => [LINE, [id(db, of("notices"))]], writes: true },
  declareDeliveriesAction: { args: (db) => [LINE, [id(db, of("deliveries"))]], writes: true },
  // The demo has no scan to file.
  fileDeclarationAction: onLine((db) => ({
    declared: id(db, of("deliveries")),
    uploadId: id(db, of("uploads")),
  })),
  saveWordingAction: {
    args: () => [
      { kind: "finding", language: "en" },
      IDLE,
      aForm({ text: "Hello {reader}.\n\n{facts}", seen: seenOf(0) }),
    ],
    writes: true,
  },
  useWordingAction: {
    args: () => [
      { kind: "finding", language: "en" },
      IDLE,
      aForm({ version: "1", seen: seenOf(0) }),
    ],
    writes: true,
  },
  printLabelsAction: { args: (db) => [LINE, ["30", id(db, of("notices"))]], writes: true },
  printHangersAction: { args: (db) => [LINE, [id(db, of("notices"))]], writes: true },
  draftBatchAction: onLine({ kind: "meeting", replyBy: "" }, true),
  draftLettersAction: onLine(
    (db) => ({
      ...{ kind: "finding", replyBy: "" },
      recipient: JSON.stringify({
        partyId: id(db, `select party_id from roles where line_id = '${LINE}' limit 1`),
        propertyId: id(db, `select property_id from roles where line_id = '${LINE}' limit 1`),
        tieInId: null,
        splitId: null,
      }),
    }),
    true,
  ),
  saveWordsAction: {
    args: (db) => [
      { lineId: LINE, noticeId: id(db, of("notices", "and state = 'draft'")) },
      IDLE,
      aForm({ ownWords: "Thank you", replyBy: "", wasWords: "", wasReplyBy: "" }),
    ],
  },
  recordDeliveryAction: {
    args: (db) => [
      { lineId: LINE, noticeId: id(db, of("notices", "and state = 'sent'")) },
      IDLE,
      aForm({ method: "by-hand", sentOn: DAY, handedTo: "Her son", note: "Once more" }),
    ],
    writes: true,
  },
  changeDeliveryAction: {
    args: (db) => [
      { lineId: LINE, deliveryId: id(db, ON_ITS_WAY) },
      IDLE,
      aForm({
        ...{ outcome: "returned", outcomeOn: DAY, tracking: "", note: "" },
        seen: seenIn(db, ({ deliveries }) => deliveries.find(isIn(db, ON_ITS_WAY))),
      }),
    ],
    writes: true,
  },
  recordReplyAction: {
    args: (db) => [
      { lineId: LINE, noticeId: id(db, of("notices", "and state = 'sent'")) },
      IDLE,
      aForm({ kind: "asks", receivedOn: DAY, words: "When?", suitsOn: "", uploadId: "" }),
    ],
    writes: true,
  },
  recordInvoiceReplyAction: {
    args: (db) => [
      "ropewalk-0001",
      IDLE,
      aForm({
        entryId: id(
          db,
          "select id from ledger_entries where line_id = 'ropewalk-0001' and kind = 'invoice'",
        ),
        ...{ kind: "asks", receivedOn: DAY, words: "When?", suitsOn: "", uploadId: "" },
      }),
    ],
    writes: true,
  },
  dealWithReplyAction: {
    args: (db) => [
      { lineId: LINE, replyId: id(db, WAITING) },
      IDLE,
      aForm({
        ...{ how: "called-back", on: DAY, words: "Told her" },
        seen: seenIn(db, ({ replies }) => replies.find(isIn(db, WAITING))),
      }),
    ],
    writes: true,
  },
  recordConsentAction: onLine(
    (db) => ({
      ...{ kind: "enter", state: "given", amount: "", stateOn: DAY, note: "By phone" },
      signer: id(
        db,
        `select party_id || ' ' || property_id from roles where line_id = '${LINE}' limit 1`,
      ),
    }),
    true,
  ),
  makeLinkAction: {
    args: (db) => [
      { lineId: LINE, noticeId: id(db, of("notices", "and state = 'sent'")) },
      { url: "", message: "" },
      aForm({ days: "30" }),
    ],
    writes: true,
  },
  addUnitsAction: onLine(
    (db) => ({ propertyId: id(db, of("properties")), count: "2", style: "letters" }),
    true,
  ),
  savePipeAction: onLine({ upperEnd: "212", mainStation: "", material: "concrete", mainNote: "" }),
  addNarrationAction: onRun({ text: "0:04 twelve feet, tie-in, left" }),
  tieAtMainAction: {
    args: (db) => [{ lineId: LINE, runId: id(db, of("runs")), counter: 0 }, IDLE, aForm({})],
  },
  recordMeetingAction: {
    args: () => [
      { ...{ lineId: LINE, meetingId: "none", partyId: "none" }, propertyId: "fr-12", seen: "" },
      IDLE,
      aForm({ came: "yes", wishes: ["findings"], words: "" }),
    ],
  },
  draftMeetingAction: { args: () => [{ lineId: LINE, meetingId: "none" }, IDLE, aForm({})] },
  recordDoorAction: {
    args: () => [
      {
        ...{ lineId: LINE, matter: "drains-off", pauseId: "none", propertyId: "fr-12" },
        ...{ unitId: null, about: "", seen: "" },
      },
      IDLE,
      aForm({ answer: "aware", spokeWith: "", words: "", by: "Ines Peña" }),
    ],
  },
  enterMoneyAction: onLine((db) => ({
    ...{ kind: "deposit", amount: "100.00", method: "check", on: DAY, reference: "77", note: "" },
    account: id(
      db,
      `select party_id || ' ' || property_id from roles where line_id = '${LINE}' limit 1`,
    ),
  })),
  chooseSplitAction: onLine({
    rule: "equal",
    reason: "All agree",
    fault: "",
    payer: "",
    unknownShares: "carried",
  }),
  chooseOptionAction: onLine({ optionId: "fr-dig", reason: "Cheaper" }),
  proposeChangeOrderAction: onLine(
    { title: "Rock", reason: "Rock was found", orderedBy: "Ottilie Brandvold" },
    true,
  ),
  decideStatementsAction: onLine(
    (db) => ({
      ...{ others: "yes", rules: "yes" },
      seen: seenIn(db, ({ line }) => lineSeen(line, ["statementOthers", "statementRules"])),
    }),
    true,
  ),
  printStatementsAction: { args: (db) => [LINE, [id(db, of("properties"))]] },
  importLineAction: {
    args: () => [
      IDLE,
      aForm({
        text: JSON.stringify({
          version: 1,
          line: { id: "imported-0001", name: "Brought in", town: "", openedOn: DAY },
        }),
      }),
    ],
    writes: true,
  },
  saveOfficeAction: { args: () => [IDLE, aForm({ name: "Another office" })] },
  addUserAction: {
    args: () => [
      IDLE,
      aForm({
        name: "Mallory",
        email: "m@example.com",
        role: "admin",
        password: "seven wet shovels",
      }),
    ],
    writes: true,
  },
  changeUserAction: {
    args: (db) => [
      { userId: id(db, INES) },
      IDLE,
      aForm({
        ...{ name: "Ines Peña", role: "viewer", access: "yes", password: "seven dry shovels" },
        seen: inesSeen(db),
      }),
    ],
    writes: true,
  },
  testMailAction: { args: () => [IDLE, aForm({})] },
  saveReminderRuleAction: {
    args: (db) => [
      IDLE,
      aForm({
        ...{ kind: "finding", daysAfter: "3", every: "14", most: "2" },
        seen: seenOf(listReminderRules(asDb(db))),
      }),
    ],
    writes: true,
  },
  importAuthorityAction: { args: () => [IDLE, aForm({ agreed: "yes" })] },
  saveDailyMailAction: {
    args: () => [IDLE, aForm({ daily: "yes", seen: seenOf(false) })],
    writes: true,
  },
  saveMailRulesAction: {
    args: (db) => [IDLE, aForm({ perHour: "50", seen: seenOf(getMailRules(asDb(db))) })],
    writes: true,
  },
  addAuthorityAction: { args: () => [IDLE, aForm({ name: "Alder Water" })], writes: true },
  savePartAction: { args: () => ["authority-quillhaven", "rules", "none", []] },
  readTableAction: { args: () => [aForm({})] },
  bringInAction: {
    args: () => [LINE, { table: "observations", to: "fr-run1", rows: [], doubles: false }],
  },
  decideDraftsAction: {
    args: (db) => [LINE, id(db, of("narrations")), { accept: [], drop: ["none"] }],
  },
  takeBackDraftAction: { args: (db) => [LINE, id(db, of("narrations")), "none"] },
  measureFromMainAction: onRun({}),
  noteEntryAction: {
    args: (db) => [
      { lineId: LINE, narrationId: id(db, of("narrations")), key: "none" },
      IDLE,
      aForm({ entryId: "none" }),
    ],
  },
  setPictureAction: { args: (db) => [LINE, id(db, of("observations")), "none"] },
  addObservationAction: onRun({}),
  addRunAction: onLine(
    {
      name: "Run 9",
      ranOn: DAY,
      operator: "",
      accessPoint: "House cleanout",
      toCounter: "62",
      looks: "downstream",
      measuredFrom: "main",
      selfLeveling: "yes",
    },
    true,
  ),
  saveRunWayAction: {
    args: (db) => [
      { lineId: LINE, runId: id(db, of("runs")) },
      IDLE,
      aForm({
        ...{ looks: "downstream", measuredFrom: "access", selfLeveling: "unknown" },
        seen: seenIn(db, ({ runs }) =>
          runs
            .filter(isIn(db, of("runs")))
            .map((run) => fieldsSeen(run, ["looks", "measuredFrom", "selfLeveling"]))
            .at(0),
        ),
      }),
    ],
    writes: true,
  },
  removeVideoAction: onRun({}),
  markRequirementAction: {
    args: (db) => [
      { lineId: LINE, requirementId: id(db, "select id from requirements limit 1") },
      IDLE,
      aForm({
        ...{ state: "missing", uploadId: "", note: "Not yet" },
        seen: seenIn(
          db,
          ({ requirementMarks }) =>
            requirementMarks.find(
              ({ requirementId }) =>
                requirementId === id(db, "select id from requirements limit 1"),
            ) ?? null,
        ),
      }),
    ],
    writes: true,
  },
  saveApplicationAction: {
    args: (db) => [
      { lineId: LINE, permitKind: "side-sewer" },
      IDLE,
      aForm({
        ...{ applicant: "Dana Okafor", applicantIs: "contractor", workType: "repair" },
        seen: seenIn(
          db,
          ({ applications }) =>
            applications.findLast(({ permitKind }) => permitKind === "side-sewer") ?? null,
        ),
      }),
    ],
    writes: true,
  },
  markDrawingAction: {
    args: (db) => [
      { lineId: LINE, itemId: id(db, "select id from drawing_items limit 1") },
      IDLE,
      aForm({
        ...{ state: "not-shown", note: "" },
        seen: seenIn(
          db,
          ({ drawingMarks }) =>
            drawingMarks.findLast(
              ({ itemId }) => itemId === id(db, "select id from drawing_items limit 1"),
            ) ?? null,
        ),
      }),
    ],
    writes: true,
  },
  stepAgreementAction: {
    args: () => [{ lineId: LINE, agreementId: "none" }, IDLE, aForm({ kind: "drafted", on: DAY })],
  },
  printAgreementAction: { args: () => [LINE, ["none"]] },
  printAccountsAction: { args: (db) => [LINE, [id(db, of("properties"))]] },
  dropDraftAction: { args: () => [{ lineId: LINE, noticeId: "none" }, IDLE, aForm({})] },
  decideNameAction: {
    args: () => [
      { lineId: LINE, consentId: "none" },
      IDLE,
      aForm({ answer: "accepted", reason: "Called her" }),
    ],
  },
  revokeLinkAction: {
    args: (db) => [
      { lineId: LINE, noticeId: id(db, of("notices", "and state = 'sent'")) },
      IDLE,
      aForm({}),
    ],
    writes: true,
  },
  reverseEntryAction: {
    args: (db) => [
      { lineId: "ropewalk-0001", entryId: id(db, PAYMENT_NOT_UNDONE) },
      IDLE,
      aForm({ reason: "Typed twice" }),
    ],
    writes: true,
  },
  reopenReplyAction: {
    args: () => [{ lineId: LINE, replyId: "none" }, IDLE, aForm({ reason: "Not done" })],
  },
  decideChangeOrderAction: {
    args: () => [
      { lineId: LINE, changeOrderId: "none" },
      IDLE,
      aForm({ state: "agreed", by: "Ottilie", reason: "Fair" }),
    ],
  },
  savePaperTextAction: {
    args: () => [
      { authorityId: "authority-quillhaven", paperId: "none" },
      IDLE,
      aForm({ text: "Text", textEs: "" }),
    ],
  },
  confirmPaperTextAction: {
    args: () => [
      { authorityId: "authority-quillhaven", paperId: "none" },
      IDLE,
      aForm({ text: "Text", textEs: "" }),
    ],
  },
  decidePaperAction: {
    args: () => [
      { lineId: LINE, paperId: "none", partyId: "none", propertyId: "none" },
      IDLE,
      aForm({ reason: "It does not apply" }),
    ],
  },
  bringInHolidaysAction: {
    args: () => [
      { authorityId: "authority-quillhaven", state: "WA", year: 2027 },
      IDLE,
      aForm({ days: [] }),
    ],
  },
  removeAuthorityAction: {
    args: () => [{ authorityId: "authority-quillhaven" }, IDLE, aForm({})],
  },
  saveAuthorityFactsAction: {
    args: () => [
      { authorityId: "authority-quillhaven" },
      IDLE,
      aForm({ name: "Mine now", office: "", phone: "" }),
    ],
  },
  changeOwnPasswordAction: {
    args: () => [IDLE, aForm({ current: "not this one", password: "seven wet shovels" })],
  },
  makeFeedAction: { args: () => [IDLE, aForm({ which: "all" })], writes: true },
  revokeFeedAction: { args: () => [{ feedId: "none" }, IDLE, aForm({})] },
  saveFormFactsAction: onAuthorityForm({
    title: "Mine now",
    permitKind: "side-sewer",
    requirementId: "",
    days: "mm/dd/yyyy",
  }),
  saveMappingsAction: onAuthorityForm({ at: "0", "from.0": "typed" }),
  takeSuggestionsAction: onAuthorityForm({}),
  saveBoxAction: onAuthorityForm({
    ...{ name: "Parcel", kind: "one", page: "1", left: "1", top: "1" },
    ...{ width: "2", height: "0.25" },
  }),
  removeBoxAction: onAuthorityForm({}),
  typeInFormAction: onLineForm({ at: "0", "typed.0": "PVC" }),
  typeOverAction: onLineForm({ field: "Date", words: "today" }),
  dropStraysAction: onLineForm({ stray: "Date" }),
  makeFormAction: { args: () => [LINE, ["none"]] },
  setUpAction: {
    args: () => [
      IDLE,
      aForm({
        ...{ name: "Mine now", zone: "America/Los_Angeles", userName: "Mallory" },
        ...{ userEmail: "m@example.com", password: "seven wet shovels" },
      }),
    ],
  },
};

/** An action on a form of the authority: the demo has none, so that nothing is written. */
function onAuthorityForm(fields: Fields): ActionCall {
  const at = { authorityId: "authority-quillhaven", formId: "none", version: 1, box: "" };
  return { args: () => [at, IDLE, aForm(fields)] };
}

/** The same as it comes out on the line. */
function onLineForm(fields: Fields): ActionCall {
  return { args: () => [{ lineId: LINE, formId: "none", version: 1 }, IDLE, aForm(fields)] };
}

/** A run's note, changed as its grid would save it. */
function rowsCall(db: Database.Database): readonly unknown[] {
  const base = db
    .prepare("select revision from revisions where line_id = ? and table_name = 'points'")
    .pluck()
    .get(LINE);
  return [LINE, "points", Number(base ?? 0), []];
}
