import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { EXAMPLE } from "#lib/exchange/example.ts";
import { isDay } from "#lib/exchange/field.ts";
import { latestDay } from "#lib/exchange/latest-day.ts";
import { lineFileSchema, readLineFile, writeLineFile } from "#lib/exchange/line-file.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { dealWithReply } from "#lib/operations/deal-with-reply.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { importLine } from "#lib/operations/import-line.ts";
import { recordHouseholdCall } from "#lib/operations/record-household-call.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { storeFile } from "#lib/storage/store.ts";
import {
  aFee,
  aHoliday,
  aLocateTicket,
  anAgreement,
  anAuthority,
  anEvent,
  aRequirement,
  aRule,
  aScopeItem,
  aTest,
} from "../../support/file.ts";
import { aDb, aDesk, addRows, aFolder, anAct, fileOf, must } from "../../support/office.ts";

const MINIMAL = { version: 1, line: { name: "Alley", openedOn: "2026-11-02" } };

function problemsIn(file: unknown) {
  const read = readLineFile(JSON.stringify(file));
  return read.ok ? [] : read.error;
}

const VIDEO = {
  runId: "r",
  type: "video/mp4",
  bytes: 1,
  sha256: "ab".repeat(32),
  addedAt: "2026-11-03T18:00:00Z",
};

const SPLIT = { number: 1, rule: "equal", chosenOn: "2026-11-03", total: 0 };

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

/** A line with a little of everything on it, made as an office would. */
async function aFullLine() {
  const { act, lineId } = aDesk({ undocumented: true });
  const admin = anAct(act.db, { role: "admin", dataFolder: act.dataFolder });
  const authority = anAuthority({
    rules: [aRule("rule")],
    requirements: [aRequirement("requirement")],
    fees: [aFee("fee")],
    holidays: [aHoliday("2026-11-26", { source: "5 U.S.C. 6103" })],
  });
  must(saveAuthority(admin, authority));
  must(chooseRule(act, { lineId, authorityId: authority.id, ruleId: "rule" }));
  const add = (table: Parameters<typeof addRows>[1]["table"], rows: readonly object[]) =>
    addRows(act, { lineId, table }, rows);
  const [extra] = fileOf(act, lineId).tieIns.slice(-1);
  add("tests", [aTest("t", extra?.id ?? "", { propertyId: "14", seenAt: 5_005 })]);
  add("locateTickets", [
    aLocateTicket("l", {
      ...{ calledAt: "16:05", workBeginsAt: "07:00", whiteLinedOn: "2026-11-20" },
      ...{ whiteLinedBy: "Marek Łódź", whiteLinedHow: "flags" },
    }),
  ]);
  add("events", [anEvent("e", { event: "drains-paused", at: "09:30" })]);
  add("agreements", [anAgreement("g", { shares: [{ propertyId: "12", parts: 33.5 }] })]);
  add("scope", [aScopeItem("s", { quantity: 1_255, markup: 1_050 })]);
  const [hold] = reportOn(fileOf(act, lineId), act.today).holds;
  must(waiveHold(act, { lineId, holdKey: hold?.key ?? "", reason: "Inspector stands by" }));
  const pdf = Buffer.from("%PDF-1.7\n\x00\xff\xfe%%EOF", "latin1");
  const stored = must(
    await storeFile(act.dataFolder, once(pdf), { declared: null, limit: 1_000_000 }),
  );
  must(addUpload(act, { lineId, name: "Łódź ½.pdf", stored, note: "" }));
  const recipients = [{ partyId: "owner-14", propertyId: "14", tieInId: null, splitId: null }];
  const draft = { lineId, kind: "finding", replyBy: "2026-12-10", recipients } as const;
  const { noticeIds } = must(draftNotices(act, draft));
  must(sendNotices(act, { lineId, noticeIds, method: "certified", sentOn: "2026-11-25" }));
  must(
    recordReply(act, {
      lineId,
      noticeId: noticeIds[0] ?? "",
      kind: "asks",
      receivedOn: "2026-11-25",
      words: "¿Por qué?\nLine two",
      uploadId: fileOf(act, lineId).uploads[0]?.id ?? null,
    }),
  );
  const [reply] = fileOf(act, lineId).replies;
  must(
    dealWithReply(act, {
      lineId,
      replyId: reply?.id ?? "",
      how: "answered",
      on: act.today,
      words: "Wrote back",
    }),
  );
  must(
    recordHouseholdCall(act, {
      lineId,
      partyId: "owner-14",
      propertyId: "14",
      purpose: "drain-pause",
      forDay: "2026-12-02",
      outcome: "agreed",
      words: "After 10",
      calledBy: "Ruth Lindqvist",
      calledOn: "2026-11-24",
    }),
  );
  return { act, lineId };
}

test("exportLine() and importLine() lose nothing: out, in and out again is the same to the byte", async () => {
  const { act, lineId } = await aFullLine();
  const first = exportLine(act, lineId) ?? "";
  const other = anAct(aDb(), { role: "admin", dataFolder: aFolder() });
  expect(must(importLine(other, first))).toEqual({ lineId });
  expect(exportLine(other, lineId)).toBe(first);
  expect(fileOf(other, lineId)).toEqual(fileOf(act, lineId));
});

test("readLineFile() takes a file that knows no hours, and refuses one that is none", () => {
  const ticket = { id: "t", number: "26-555-0171", calledOn: "2026-11-23", workBeginsOn: null };
  const read = readLineFile(JSON.stringify({ ...MINIMAL, locateTickets: [ticket] }));
  expect(read.ok && read.value.file.locateTickets[0]).toMatchObject({
    calledAt: "",
    workBeginsAt: "",
  });
  const late = { ...ticket, calledAt: "4 pm" };
  expect(problemsIn({ ...MINIMAL, locateTickets: [late] })).toEqual([
    { path: "locateTickets.0.calledAt", reason: "Enter a time, as 09:40, or leave it blank" },
  ]);
});

test("readLineFile() takes a file that knows of no white-lining and no posted card", () => {
  const older = {
    ...MINIMAL,
    line: { ...MINIMAL.line, authorityId: "a" },
    authority: {
      ...{ id: "a", name: "Alder" },
      clockRules: [
        {
          ...{ id: "c", title: "Dig window", event: "locate-called", count: 2 },
          ...{ unit: "business-days", meaning: "not-before", asOf: "2026-10-01" },
        },
      ],
    },
    locateTickets: [{ id: "t", calledOn: "2026-11-03" }],
    permits: [{ id: "p" }],
  };
  const { file } = must(readLineFile(JSON.stringify(older)));
  const none = { whiteLinedOn: null, whiteLinedBy: "", whiteLinedHow: null };
  expect(file.locateTickets).toMatchObject([{ ...none, whiteLinePhotoId: null }]);
  expect(file.permits).toMatchObject([{ postedOn: null, postedBy: "", postedPlace: "" }]);
  expect(file.authority?.clockRules).toMatchObject([{ whiteLineFirst: false }]);
  const chalk = [{ id: "t", calledOn: "2026-11-03", whiteLinedHow: "chalk" }];
  expect(problemsIn({ ...MINIMAL, locateTickets: chalk })).toMatchObject([
    { path: "locateTickets.0.whiteLinedHow" },
  ]);
  const gone = [{ id: "t", calledOn: "2026-11-03", whiteLinePhotoId: "gone" }];
  expect(problemsIn({ ...MINIMAL, locateTickets: gone })).toMatchObject([
    { path: "locateTickets.0.whiteLinePhotoId" },
  ]);
});

test("importLine() refuses a line that is there, and takes in nothing of a bad file", async () => {
  const { act, lineId } = await aFullLine();
  const text = exportLine(act, lineId) ?? "";
  expect(importLine(act, text)).toMatchObject({ error: { reason: "already-there" } });
  const other = anAct(aDb(), { role: "admin", dataFolder: aFolder() });
  const broken = JSON.parse(text);
  broken.uploads[0].content = Buffer.from("other bytes").toString("base64");
  expect(importLine(other, JSON.stringify(broken))).toMatchObject({
    error: { reason: "bad-value", problems: [{ path: "uploads.0.content" }] },
  });
  broken.uploads[0].content = null;
  expect(importLine(other, JSON.stringify(broken))).toMatchObject({
    error: {
      problems: [{ path: "uploads.0.content", reason: "The bytes of Łódź ½.pdf are missing" }],
    },
  });
  expect(other.db.all("select * from lines")).toEqual([]);
});

test("importLine() refuses a file that a viewer brings", async () => {
  const viewer = anAct(aDb(), { role: "viewer" });
  expect(importLine(viewer, JSON.stringify(MINIMAL))).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("importLine() takes an authority that the office does not know only from an admin", async () => {
  const { act, lineId } = await aFullLine();
  const text = exportLine(act, lineId) ?? "";
  const db = aDb();
  const office = anAct(db, { dataFolder: aFolder() });
  expect(importLine(office, text)).toMatchObject({
    error: { reason: "bad-value", problems: [{ path: "authority" }] },
  });
  const bare = JSON.parse(text);
  Object.assign(bare.line, { authorityId: null, ruleId: null });
  must(importLine(office, JSON.stringify({ ...bare, authority: null })));
  const admin = anAct(db, { role: "admin", dataFolder: office.dataFolder });
  must(saveAuthority(admin, JSON.parse(text).authority));
  const second = JSON.parse(text);
  second.line.id = "line-2";
  second.uploads = [];
  const { records: _records, agreementSteps: _steps, rulings: _rulings, ...rest } = second;
  const problems = importLine(office, JSON.stringify(rest));
  if (!problems.ok)
    expect(problems.error.problems.map(({ path }) => path)).not.toContain("authority");
});

test("importLine() gives tie-ins that were seen in a hand-written file their own rows", () => {
  const act = anAct(aDb(), { role: "admin", dataFolder: aFolder() });
  const seen = { runId: "run-1", kind: "tie-in", counter: 31 };
  const { tieIns: _tieIns, pairings: _pairings, ...rest } = EXAMPLE;
  const observations = [{ id: "x", ...seen }];
  const { lineId } = must(importLine(act, JSON.stringify({ ...rest, observations })));
  expect(fileOf(act, lineId).tieIns).toMatchObject([{ label: "T1" }]);
});

test("readLineFile() reads a reply of before, when nobody could say that it was dealt with", async () => {
  const { act, lineId } = await aFullLine();
  const file = JSON.parse(exportLine(act, lineId) ?? "");
  const {
    suitsOn: _,
    dealtBy: _b,
    dealtOn: _o,
    dealtHow: _h,
    dealtWords: _w,
    ...old
  } = file.replies[0];
  const { householdCalls: _calls, ...rest } = file;
  const read = must(readLineFile(JSON.stringify({ ...rest, replies: [old] })));
  expect(read.file.replies).toMatchObject([{ dealtBy: "", dealtOn: null, dealtHow: null }]);
  expect(read.file.householdCalls).toEqual([]);
});

test("readLineFile() takes a reply for one of letter and invoice, as a letter's where it is of before", async () => {
  const { act, lineId } = await aFullLine();
  const file = JSON.parse(exportLine({ db: act.db, dataFolder: act.dataFolder }, lineId) ?? "") as {
    replies: Record<string, unknown>[];
  };
  const [reply = {}] = file.replies;
  const { entryId, ...old } = reply;
  expect(entryId).toBe(null);
  const read = must(readLineFile(JSON.stringify({ ...file, replies: [old] })));
  expect(read.file.replies).toMatchObject([{ noticeId: reply["noticeId"], entryId: null }]);
  expect(problemsIn({ ...file, replies: [{ ...reply, noticeId: null }] })).toEqual([
    { path: "replies.0.noticeId", reason: "Say what this reply answers: a letter, or an invoice" },
  ]);
});

test("readLineFile() fills in what a small file leaves out", () => {
  const read = must(readLineFile(JSON.stringify(MINIMAL)));
  expect(read.file.line).toMatchObject({ id: "line", material: "unknown", upperEnd: null });
  expect(read.file.tieIns).toEqual([]);
  expect(read.file.authority).toBeNull();
});

test("the example is a valid file that says what an office would see", () => {
  const { file } = must(readLineFile(JSON.stringify(EXAMPLE)));
  const report = reportOn(file, latestDay(file));
  expect(report.problems).toEqual([]);
  expect(report.tieIns.map(({ standing }) => standing)).toEqual([
    "on-record-and-seen",
    "undocumented",
    "on-record-and-seen",
    "on-record-and-seen",
  ]);
  expect(latestDay(file)).toBe("2026-11-06");
});

test("readLineFile() keeps feet exact, and writeLineFile() writes them as they were", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 10_000_000 }), (cft) => {
      const upperEnd = cft / 100;
      const read = must(
        readLineFile(JSON.stringify({ ...MINIMAL, line: { ...MINIMAL.line, upperEnd } })),
      );
      expect(read.file.line.upperEnd).toBe(cft);
      expect(JSON.parse(writeLineFile(read)).line.upperEnd).toBe(upperEnd);
    }),
  );
});

test("readLineFile() refuses a third decimal", () => {
  expect(problemsIn({ ...MINIMAL, line: { ...MINIMAL.line, upperEnd: 12.345 } })).toEqual([
    {
      path: "line.upperEnd",
      reason: "Enter a length in feet from 0 to 100,000, with at most two decimals",
    },
  ]);
});

test("readLineFile() reads a run of version 1 as it was: its one direction, from where it went in", () => {
  const run = { id: "r", ranOn: "2026-11-03", direction: "downstream" };
  const read = readLineFile(JSON.stringify({ ...MINIMAL, runs: [run] }));
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  expect(read.value.file.runs).toMatchObject([
    { looks: "downstream", measuredFrom: "access", selfLeveling: "unknown" },
  ]);
  const written = writeLineFile(read.value);
  expect(JSON.parse(written)).toMatchObject({ version: 2, runs: [{ looks: "downstream" }] });
  expect(readLineFile(written)).toEqual(read);
});

test("readLineFile() says where in a file of version 1 a direction is none, and takes none in version 2", () => {
  const run = { id: "r", ranOn: "2026-11-03", direction: "sideways" };
  expect(problemsIn({ ...MINIMAL, runs: [run] })).toEqual([
    { path: "runs.0.direction", reason: "Choose one of: upstream, downstream" },
  ]);
  const newer = { ...MINIMAL, version: 2, runs: [{ ...run, direction: "upstream" }] };
  expect(problemsIn(newer).map(({ path }) => path)).toEqual(["runs.0.looks", "runs.0.direction"]);
});

test.each([
  ["no JSON", "{", "", /not JSON/],
  ["a field that nobody knows", { ...MINIMAL, tieins: [] }, "tieins", /no such field/],
  ["another version", { ...MINIMAL, version: 3 }, "version", /Enter 2/],
  ["no name", { version: 1, line: { openedOn: "2026-11-02" } }, "line.name", /Enter a name/],
  [
    "a day that does not exist",
    { ...MINIMAL, line: { name: "A", openedOn: "2026-02-30" } },
    "line.openedOn",
    /a date that exists/,
  ],
  [
    "a day that nothing can be counted from",
    { ...MINIMAL, line: { name: "A", openedOn: "9999-12-31" } },
    "line.openedOn",
    /from 1900 to 2199/,
  ],
  [
    "a moment that nothing can be counted from",
    { ...MINIMAL, history: [{ id: "h", at: "0000-01-01T00:00:00Z" }] },
    "history.0.at",
    /from 1900 to 2199/,
  ],
  [
    "parts below a millionth",
    {
      ...MINIMAL,
      properties: [{ id: "p", address: { street: "12 Fennel Row" } }],
      agreements: [{ id: "a", title: "A", shares: [{ propertyId: "p", parts: 1e-7 }] }],
    },
    "agreements.0.shares.0.parts",
    /at least 0.000001/,
  ],
  [
    "a price out of all proportion",
    {
      ...MINIMAL,
      scope: [{ id: "s", title: "Dig", place: "general", rate: 1_000_000_000, quantity: 11 }],
    },
    "scope.0.rate",
    /more than \$100,000,000/,
  ],
  ...[
    "..",
    ".",
    "a/b",
    "a?b",
    "a b",
    "%2e%2e",
    "<script>",
    "a\u0000",
    "💣",
    "",
    "x".repeat(65),
  ].map((id): [string, unknown, string, RegExp] => [
    `the line's id ${JSON.stringify(id)}`,
    { ...MINIMAL, line: { ...MINIMAL.line, id } },
    "line.id",
    /letters, digits, hyphens/,
  ]),
  ...["new", "import"].map((id): [string, unknown, string, RegExp] => [
    `the line's id ${id}`,
    { ...MINIMAL, line: { ...MINIMAL.line, id } },
    "line.id",
    /names another page/,
  ]),
  [
    "a row's id that is no word",
    { ...MINIMAL, points: [{ id: "../x", kind: "boundary", station: 1 }] },
    "points.0.id",
    /letters, digits, hyphens/,
  ],
  [
    "a run with two videos",
    {
      ...MINIMAL,
      runs: [{ id: "r", ranOn: "2026-11-03", looks: "upstream" }],
      videos: ["a", "b"].map((id) => ({ ...VIDEO, id })),
    },
    "videos.1.runId",
    /has a video already/,
  ],
  [
    "two splits of one number",
    { ...MINIMAL, splits: ["a", "b"].map((id) => ({ ...SPLIT, id })) },
    "splits.1.number",
    /has this number already/,
  ],
  [
    "a hold that was waived twice",
    {
      ...MINIMAL,
      waivers: ["a", "b"].map((id) => ({ id, holdKey: "x", on: "2026-11-03" })),
    },
    "waivers.1.holdKey",
    /waived already/,
  ],
  [
    "a requirement that was marked twice",
    {
      ...MINIMAL,
      requirementMarks: ["a", "b"].map((id) => ({ id, requirementId: "x", state: "in-hand" })),
    },
    "requirementMarks.1.requirementId",
    /marked already/,
  ],
  [
    "a pair refused and then accepted",
    {
      ...MINIMAL,
      records: [{ id: "r" }],
      entries: [{ id: "e", recordId: "r" }],
      tieIns: [{ id: "t", label: "T1" }],
      pairings: ["refused", "accepted"].map((state) => ({
        id: state,
        entryId: "e",
        tieInId: "t",
        state,
        decidedOn: "2026-11-03",
      })),
    },
    "pairings.1.tieInId",
    /decided on already/,
  ],
  [
    "more houses than a line has",
    {
      ...MINIMAL,
      properties: Array.from({ length: 60_000 }, (_, at) => ({
        id: `p${at}`,
        address: { street: `${at} Fennel Row` },
      })),
    },
    "properties",
    /60,000 rows, and one line takes at most 200/,
  ],
  ["brackets without end", "[".repeat(1_000_000), "", /nested too deeply/],
  [
    "an id twice",
    {
      ...MINIMAL,
      tieIns: [
        { id: "a", label: "T1" },
        { id: "a", label: "T2" },
      ],
    },
    "tieIns.1.id",
    /already/,
  ],
  [
    "a parent that is not there",
    { ...MINIMAL, tieIns: [{ id: "a", label: "T1", parentId: "b" }] },
    "tieIns.0.parentId",
    /no tie-in with the id "b"/,
  ],
  [
    "a ring of tie-ins",
    {
      ...MINIMAL,
      tieIns: [
        { id: "a", label: "T1", parentId: "b" },
        { id: "b", label: "T2", parentId: "a" },
      ],
    },
    "tieIns.0.parentId",
    /joins this one again/,
  ],
  [
    "a tie-in that joins itself",
    { ...MINIMAL, tieIns: [{ id: "a", label: "T1", parentId: "a" }] },
    "tieIns.0.parentId",
    /joins this one again/,
  ],
  [
    "a tie-in beyond the upper end",
    {
      version: 1,
      line: { ...MINIMAL.line, upperEnd: 50 },
      tieIns: [{ id: "a", label: "T1", station: 60 }],
    },
    "tieIns.0.station",
    /upper end of the line at 50.0 ft/,
  ],
  [
    "an end before its beginning",
    {
      ...MINIMAL,
      runs: [{ id: "r", ranOn: "2026-11-03", looks: "upstream", fromCounter: 9, toCounter: 8 }],
    },
    "runs.0.toCounter",
    /before it begins/,
  ],
  [
    "a rule of no authority",
    { version: 1, line: { ...MINIMAL.line, ruleId: "r" } },
    "line.ruleId",
    /no rule/,
  ],
  [
    "a chosen option that is not there",
    { version: 1, line: { ...MINIMAL.line, optionId: "o" } },
    "line.optionId",
    /no repair option/,
  ],
  [
    "an amount with a fraction of a cent",
    { ...MINIMAL, scope: [{ id: "s", title: "Dig", place: "general", rate: 1.5 }] },
    "scope.0.rate",
    /whole cents/,
  ],
  [
    "a stored file of a kind that a browser would run",
    {
      ...MINIMAL,
      uploads: [
        {
          id: "u",
          name: "x.html",
          type: "text/html",
          bytes: 1,
          sha256: "0".repeat(64),
          addedAt: "2026-11-03T00:00:00.000Z",
        },
      ],
    },
    "uploads.0.type",
    /Choose one of/,
  ],
] as const)("readLineFile() refuses %s and says where", (_what, file, at, words) => {
  const text = typeof file === "string" ? file : JSON.stringify(file);
  const read = readLineFile(text);
  const problems = read.ok ? [] : read.error;
  const found = problems.find(({ path: place }) => place === at);
  expect(found?.reason).toMatch(words);
});

test("readLineFile() never throws, whatever JSON it is given", () => {
  fc.assert(
    fc.property(fc.json(), (text) => {
      expect(readLineFile(text).ok).toBe(false);
    }),
  );
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(must(readLineFile(JSON.stringify(MINIMAL))).file)),
      fc.jsonValue(),
      (name, value) => {
        readLineFile(JSON.stringify({ ...MINIMAL, [name]: value }));
      },
    ),
  );
});

test("lineFileSchema() names every part that the file has, and its units", () => {
  const schema = JSON.parse(JSON.stringify(lineFileSchema()));
  const parts = Object.keys(JSON.parse(writeLineFile(must(readLineFile(JSON.stringify(MINIMAL))))));
  expect(Object.keys(schema.properties)).toEqual(parts);
  expect(schema.required).toEqual(["version", "line"]);
  expect(JSON.stringify(schema)).toContain("In feet, with at most two decimals");
});

test("isDay() knows leap years", () => {
  const days = ["2024-02-29", "2026-02-29", "1900-02-29", "2000-02-29", "2026-13-01", "2026-1-1"];
  expect(days.map(isDay)).toEqual([true, false, false, true, false, false]);
});

/** The command itself, as a person runs it. */
function line(args: readonly string[], input = "") {
  const done = spawnSync(process.execPath, ["lib/commands/line.mjs", ...args], {
    encoding: "utf8",
    input,
  });
  return { status: done.status, answer: JSON.parse(done.stdout) };
}

test("line report prints every computed answer as JSON, in feet and cents", () => {
  const folder = aFolder();
  const file = path.join(folder, "example.json");
  fs.writeFileSync(file, JSON.stringify(line(["example"]).answer));
  const { status, answer } = line(["report", file, "--today", "2026-11-25"]);
  expect(status).toBe(0);
  expect(Object.keys(answer)).toEqual([
    "line",
    "today",
    "units",
    "extent",
    "problems",
    "stations",
    "tieIns",
    "entries",
    "alignment",
    "alternatives",
    "residuals",
    "runCoverage",
    "pairings",
    "coverage",
    "reaches",
    "ties",
    "holds",
    "splits",
    "clocks",
  ]);
  expect(answer.today).toBe("2026-11-25");
  expect(answer.stations[0]).toMatchObject({ counter: 14.2, station: 20.2, side: "left" });
  const equal = answer.splits.find(({ rule }: { rule: string }) => rule === "equal");
  const total = equal.shares.reduce(
    (sum: number, { amount }: { amount: number }) => sum + amount,
    0,
  );
  expect(total).toBe(equal.total);
});

test("line ends with 2 and a list of problems on bad input, bad words and a file that is not there", () => {
  const ring = { ...MINIMAL, tieIns: [{ id: "a", label: "T1", parentId: "a" }] };
  const bad = line(["report", "-"], JSON.stringify(ring));
  expect(bad).toMatchObject({ status: 2, answer: { problems: [{ path: "tieIns.0.parentId" }] } });
  expect(line(["report", "/nowhere.json"])).toMatchObject({
    status: 2,
    answer: { problems: [{ path: "" }] },
  });
  expect(line(["rapport"])).toMatchObject({ status: 2, answer: { problems: [{ path: "" }] } });
});

test("line report says quickly what is wrong with 50 MB of brackets", () => {
  const file = path.join(aFolder(), "brackets.json");
  fs.writeFileSync(file, "[".repeat(50_000_000));
  const run = spawnSync(process.execPath, ["lib/commands/line.mjs", "report", file], {
    encoding: "utf8",
    timeout: 60_000,
  });
  expect(run.status).toBe(2);
  expect(run.stderr).toBe("");
  expect(JSON.parse(run.stdout).problems[0].reason).toMatch(/nested too deeply/);
});
