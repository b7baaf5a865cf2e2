import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { openDb } from "#db/open.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { isWhole } from "#db/queries/backup.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { LINK_MISSES } from "#lib/domain/consent/private-link.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import type { MoneyWord } from "#lib/operations/enter-money.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { decidedOf } from "#lib/operations/pairing-row.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { aHoliday, anAuthority, aRequirement } from "../../support/file.ts";
import { aDesk, addRows, aFolder, anAct, anOpenLine, fileOf, must } from "../../support/office.ts";
import { twoServers } from "../../support/two-servers.ts";

/** The line of three houses in an office's folder, which two processes serve. */
async function aServedDesk() {
  const { act: made, lineId } = aDesk();
  const { dataFolder } = made;
  const file = path.join(dataFolder, "wyebook.db");
  fs.writeFileSync(file, made.db.$client.serialize());
  const act = anAct(openDb(file), { dataFolder });
  return { act, lineId, servers: await twoServers(dataFolder) };
}

/** Two houses on the card; the camera saw a branch 4 ft past each, and one at the first. */
function anAmbiguousLine(act: Act): string {
  let made = 0;
  const newId = () => {
    made += 1;
    return `two-ways-${made}`;
  };
  const one = { ...act, newId };
  const lineId = anOpenLine(one);
  addRows(one, { lineId, table: "records" }, [
    { id: "card", title: "Card 1958", measuredFrom: "main" },
  ]);
  addRows(one, { lineId, table: "entries" }, [
    { id: "e1", recordId: "card", label: "House 12", distance: 2_000 },
    { id: "e2", recordId: "card", label: "House 14", distance: 4_000 },
  ]);
  addRows(one, { lineId, table: "runs" }, [
    { id: "r1", name: "Run 1", ranOn: "2026-11-03", looks: "upstream", toCounter: 12_000 },
  ]);
  addRows(one, { lineId, table: "anchors" }, [
    { id: "a1", runId: "r1", kind: "main-connection", counter: 0, station: 0 },
  ]);
  addRows(
    one,
    { lineId, table: "observations" },
    [2_400, 4_400, 2_000].map((counter, at) => ({
      ...{ id: `o${at}`, runId: "r1" },
      ...{ kind: "tie-in", counter },
    })),
  );
  return lineId;
}

function unitsOf({ act, lineId }: Pick<Awaited<ReturnType<typeof aServedDesk>>, "act" | "lineId">) {
  return fileOf(act, lineId).units.map(({ id }) => id);
}

test("rows that two add by a form at the same moment are all there, and none is refused", async () => {
  const { servers, ...desk } = await aServedDesk();
  const asked = { lineId: desk.lineId, times: 40 };
  const taken = (await servers.both("addUnits", [asked, asked])).flat();
  expect(taken).toHaveLength(80);
  expect(unitsOf(desk).toSorted()).toEqual(taken.toSorted());
});

test("the rows that a page shows are those of the revision that it sends back with them", async () => {
  const { lineId, servers } = await aServedDesk();
  const [added, read] = await servers.each(
    ["addUnits", { lineId, times: 60 }],
    ["readUnits", { lineId, until: 60 }],
  );
  expect(added).toHaveLength(60);
  expect(read.length).toBeGreaterThan(10);
  expect(read.filter(({ rows, revision }) => rows !== revision)).toEqual([]);
});

test("of a table that two type into at once nothing is lost: whoever was second is told", async () => {
  const { servers, ...desk } = await aServedDesk();
  const asked = { lineId: desk.lineId, times: 30 };
  const [first, second] = await servers.both("typeUnits", [asked, asked]);
  expect(first + second).toBeGreaterThan(0);
  expect(new Set(unitsOf(desk)).size).toBe(60);
});

test("two that change two tables of one authority at once lose nothing of either", async () => {
  const { act, servers } = await aServedDesk();
  must(saveAuthority(anAct(act.db, { role: "admin" }), anAuthority()));
  const days = Array.from({ length: 20 }, (_, at) =>
    aHoliday(`2027-01-${String(at + 1).padStart(2, "0")}`),
  );
  const requirements = Array.from({ length: 20 }, (_, at) => aRequirement(`r-${at}`));
  await servers.both("addToPart", [
    { part: "holidays", rows: days },
    { part: "requirements", rows: requirements },
  ]);
  const authority = getAuthority(act.db, "authority-1");
  expect(authority?.holidays).toHaveLength(20);
  expect(authority?.requirements).toHaveLength(20);
});

test("the same payment entered by two at once counts once", async () => {
  const { act, lineId, servers } = await aServedDesk();
  for (let at = 1; at <= 12; at += 1) {
    const word: MoneyWord & { readonly lineId: string } = {
      lineId,
      kind: "payment",
      partyId: "owner-12",
      propertyId: "12",
      amount: 10_000 + at,
      on: "2026-11-25",
      method: "check",
      reference: `No. ${at}`,
      uploadId: null,
      note: "",
      beyond: false,
    };
    const answers = await servers.both("enterMoney", [word, word]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.flatMap((each) => (each.ok ? [] : [each.error.reason]))).toEqual([
      "already-there",
    ]);
  }
  const numbers = fileOf(act, lineId).ledger.map(({ number }) => number);
  expect(numbers).toEqual(Array.from({ length: 12 }, (_, at) => at + 1));
});

test("the same letters drafted and sent by two at once are there once, and go out once", async () => {
  const { act, lineId, servers } = await aServedDesk();
  for (const kind of ["finding", "entry-consent"] as const) {
    const recipients = ["12", "14"].map((house) => ({
      partyId: `owner-${house}`,
      propertyId: house,
      tieInId: null,
      splitId: null,
    }));
    const drafting = { lineId, kind, replyBy: "2026-12-10", recipients };
    const drafted = await servers.both("draftNotices", [drafting, drafting]);
    const [noticeIds, same] = drafted.map((each) => must(each).noticeIds);
    expect(same).toEqual(noticeIds);
    const sending = {
      lineId,
      noticeIds: noticeIds ?? [],
      method: "mail-message",
      sentOn: "2026-11-25",
      despite: "They asked for it",
    } as const;
    const sent = await servers.both("sendNotices", [sending, sending]);
    expect(sent.filter(({ ok }) => ok)).toHaveLength(1);
  }
  const { notices, deliveries } = fileOf(act, lineId);
  expect(notices).toHaveLength(4);
  expect(deliveries).toHaveLength(4);
  expect(listOutgoing(act.db, lineId)).toHaveLength(4);
});

test("who guesses at two servers at once may guess no more often than at one", async () => {
  const { servers } = await aServedDesk();
  const answers = await servers.both("guess", [{ times: 30 }, { times: 30 }]);
  for (const what of ["codes", "links", "feeds"] as const)
    expect(answers.reduce((sum, looked) => sum + looked[what], 0)).toBe(LINK_MISSES);
});

test("of two who decide the same pair at once one counts, and the other is told who it was", async () => {
  const { act, lineId, servers } = await aServedDesk();
  for (const house of ["12", "14", "16"]) {
    const tieInId = fileOf(act, lineId).observations.find(({ id }) => id === `o-${house}`)?.tieInId;
    const seen = seenOf(decidedOf(fileOf(act, lineId), house));
    const pair = { lineId, entryId: house, tieInId: tieInId ?? "", seen };
    const answers = await servers.both("decidePairing", [
      { ...pair, state: "refused", reason: "Another pipe" },
      { ...pair, state: "accepted", reason: "The dye came out there" },
    ]);
    const { pairings } = fileOf(act, lineId);
    const stands = pairings.find(({ entryId }) => entryId === house);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.flatMap((each) => (each.ok ? [] : [each.error]))).toEqual([
      { reason: "changed-meanwhile", path: "", detail: stands?.decidedBy },
    ]);
  }
});

test("another way to pair is looked for in the file that it is accepted on", async () => {
  const { act, servers } = await aServedDesk();
  const lineId = anAmbiguousLine(act);
  const offered = reportOn(fileOf(act, lineId), act.today);
  const way = offered.alternatives.find(({ shift }) => shift !== offered.alignment?.shift);
  expect(way).toBeDefined();
  const [dropped, accepted] = await servers.each(
    ["dropEntrySlowly", { lineId, entryId: "e2" }],
    ["acceptMeanwhile", { lineId, key: way?.key ?? "", reason: "The lid is there" }],
  );
  expect(dropped).toBe(true);
  const left = reportOn(fileOf(act, lineId), act.today).alternatives;
  expect(left.some(({ key }) => key === way?.key)).toBe(false);
  expect(accepted).toMatchObject({ ok: false, error: { reason: "not-in-this-state" } });
  expect(fileOf(act, lineId).alignments).toEqual([]);
});

test("a backup that is made while two write is of one moment, and lacks nothing kept before", async () => {
  const { act, lineId, servers } = await aServedDesk();
  const asked = { lineId, times: 60 };
  const writing = servers.both("addUnits", [asked, asked]);
  let over = false;
  writing.then(() => {
    over = true;
  });
  const folder = aFolder();
  const made: number[] = [];
  while (!over) {
    const before = unitsOf({ act, lineId }).length;
    const backup = path.join(folder, String(made.length));
    must(makeBackup({ dataFolder: act.dataFolder, folder: backup, now: act.now }));
    const db = openDb(path.join(backup, "wyebook.db"));
    const { units, history } = fileOf({ ...act, db }, lineId);
    expect(isWhole(db)).toBe(true);
    expect(getRevisions(db, lineId).units).toBe(units.length);
    expect(history.filter(({ detail }) => detail.includes('"units"'))).toHaveLength(units.length);
    expect(units.length).toBeGreaterThanOrEqual(before);
    db.$client.close();
    made.push(units.length);
    await new Promise((resolve) => setTimeout(resolve));
  }
  await writing;
  expect(made.length).toBeGreaterThan(1);
});
