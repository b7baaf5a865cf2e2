import fs from "node:fs";
import path from "node:path";
import { expect, test, vi } from "vitest";
import { getJob, listJobs } from "#db/queries/job.ts";
import { readCode } from "#lib/domain/consent/link-code.ts";
import { LINK_MISSES } from "#lib/domain/consent/private-link.ts";
import { addResidents } from "#lib/operations/add-residents.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { newCodes } from "#lib/operations/link-code.ts";
import { openByCode } from "#lib/operations/open-by-code.ts";
import { openLink } from "#lib/operations/open-link.ts";
import { printMailing } from "#lib/operations/print-mailing.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { hasMailing, readMailing } from "#lib/storage/mailings.ts";
import { readStored } from "#lib/storage/store.ts";
import { sweepParts } from "#lib/storage/sweep.ts";
import { aUnit } from "#tests/support/file.ts";
import { aDoor, aWorker, type LinkDesk } from "#tests/support/link.ts";
import { aDesk, addRows, fileOf, must } from "#tests/support/office.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { readQr } from "#tests/support/qr.ts";

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 600_000 });

const ADDRESS = "https://office.example.com";
const TODAY = "2026-11-25";

function drafted({ act, lineId }: LinkDesk): readonly string[] {
  const recipients = [
    { partyId: "owner-14", propertyId: "14", tieInId: null, splitId: null },
    { partyId: "owner-12", propertyId: "12", tieInId: null, splitId: null },
  ];
  return must(draftNotices(act, { lineId, kind: "finding", replyBy: "2026-12-09", recipients }))
    .noticeIds;
}

async function mailed(desk: LinkDesk) {
  const { act, lineId } = desk;
  const noticeIds = drafted(desk);
  const codes = await newCodes(noticeIds);
  const print = { codes: { days: 30, address: ADDRESS, codes } };
  must(sendNotices(act, { lineId, noticeIds, method: "first-class", sentOn: TODAY, print }));
  const [job] = listJobs(act.db, lineId);
  if (job === undefined) throw new Error("nothing is printed");
  await runNextJob(aWorker(desk));
  const bytes = readMailing(act.dataFolder, job.id);
  if (bytes === null) throw new Error(getJob(act.db, job.id)?.problem);
  return { noticeIds, codes, jobId: job.id, bytes };
}

/** Every byte under the data folder, and of a backup of it, as Latin letters. */
function everythingUnder(folder: string): string {
  return fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => fs.readFileSync(path.join(entry.parentPath, entry.name), "latin1"))
    .join("\n");
}

const NAMES = ["Ottilie Brandvold", "Jesús Peña"];

test("a mailing is one PDF in mailing order, each letter with a QR code that opens its own page", async () => {
  const desk = aDesk();
  const { noticeIds, codes, bytes } = await mailed(desk);
  const pdf = readPdf(bytes);
  pdf.check();
  const file = fileOf(desk.act, desk.lineId);
  const inOrder = ["owner-12", "owner-14"].map(
    (partyId) => file.notices.find((notice) => notice.partyId === partyId)?.id ?? "",
  );
  expect(noticeIds).toEqual(inOrder.toReversed());
  const pages = Number(pdf.info()["Pages"]);
  const seen: (string | null)[] = [];
  for (let page = 1; page <= pages; page += 1) {
    const url = await readQr(bytes, page);
    if (url !== null) seen.push(url);
  }
  expect(seen).toEqual(inOrder.map((id) => `${ADDRESS}/n/${codes.get(id)?.secret}`));
  for (const [at, url] of seen.entries()) {
    const opened = openLink(aDoor(desk), url?.split("/n/")[1] ?? "");
    expect(opened).toMatchObject({ ok: true, value: { partyName: NAMES[at] } });
  }
});

test("the short code beside it opens the same page, typed by hand", async () => {
  const desk = aDesk();
  const { codes, bytes } = await mailed(desk);
  const printed = /\b(\w{4}-\w{4}-\w{4})\b/.exec(readPdf(bytes).text(1))?.[1] ?? "";
  const file = fileOf(desk.act, desk.lineId);
  const first = file.notices.find(({ partyId }) => partyId === "owner-12")?.id ?? "";
  expect(readCode(printed)).toBe(codes.get(first)?.code);
  const opened = must(await openByCode(aDoor(desk), printed.toLowerCase().replaceAll("-", " ")));
  expect(opened.secret).toBe(codes.get(first)?.secret);
});

test("no code is kept in the database, the line's files or a backup, nor beside them once it is printed", async () => {
  const desk = aDesk();
  const { act } = desk;
  const { codes, jobId, noticeIds } = await mailed(desk);
  const words = [...codes.values()].flatMap(({ code, secret }) => [code, secret]);
  const said = fs.readdirSync(path.join(act.dataFolder, "link-secrets"));
  expect(said).toEqual([]);
  const stored = fileOf(act, desk.lineId).uploads.map(({ sha256 }) =>
    readPdf(readStored(act.dataFolder, sha256) ?? new Uint8Array()).text(),
  );
  expect(stored).toHaveLength(noticeIds.length);
  for (const text of stored) expect(text).not.toMatch(/\w{4}-\w{4}-\w{4}/);
  const rows = JSON.stringify([
    act.db.$client.prepare("select * from history").all(),
    act.db.$client.prepare("select * from links").all(),
    act.db.$client.prepare("select * from jobs").all(),
    act.db.$client.prepare("select * from notices").all(),
  ]);
  for (const word of words) expect(rows).not.toContain(word);
  expect(hasMailing(act.dataFolder, jobId)).toBe(true);
  sweepParts(act.dataFolder, Date.now() + 8 * 86_400_000);
  expect(hasMailing(act.dataFolder, jobId)).toBe(false);
  const left = everythingUnder(act.dataFolder);
  for (const word of words) expect(left).not.toContain(word);
});

test("printed once more, a letter has a new code and the old one opens nothing", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const { codes, noticeIds } = await mailed(desk);
  const [one = ""] = noticeIds;
  const again = await newCodes([one]);
  const wish = { days: 30, address: ADDRESS, codes: again };
  const { jobId } = must(printMailing(act, { lineId, noticeIds: [one], codes: wish }));
  await runNextJob(aWorker(desk));
  const bytes = readMailing(act.dataFolder, jobId) ?? new Uint8Array();
  expect(await readQr(bytes)).toBe(`${ADDRESS}/n/${again.get(one)?.secret}`);
  expect(await openByCode(aDoor(desk), codes.get(one)?.code ?? "")).toMatchObject({
    error: { path: "gone" },
  });
  expect(await openByCode(aDoor(desk), again.get(one)?.code ?? "")).toMatchObject({ ok: true });
});

test("who types codes that open nothing has to wait, and a slip of the finger costs no try", async () => {
  const desk = aDesk();
  const door = aDoor(desk);
  for (let at = 0; at < LINK_MISSES + 5; at += 1)
    expect(await openByCode(door, "ABC")).toMatchObject({ error: { path: "bad-code" } });
  for (const { code } of (
    await newCodes(Array.from({ length: LINK_MISSES }, (_, at) => String(at)))
  ).values())
    expect(await openByCode(door, code)).toMatchObject({ error: { path: "gone" } });
  const [more] = (await newCodes(["x"])).values();
  expect(await openByCode(door, more?.code ?? "")).toMatchObject({ error: { path: "too-many" } });
  expect(await openByCode(aDoor(desk, { address: "203.0.113.8" }), more?.code ?? "")).toMatchObject(
    { error: { path: "gone" } },
  );
});

test("a draft is not printed again, and codes need an address that opens outside", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk);
  expect(printMailing(act, { lineId, noticeIds })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  const codes = await newCodes(noticeIds);
  const print = { codes: { days: 30, address: "http://localhost:3200", codes } };
  expect(
    sendNotices(act, { lineId, noticeIds, method: "certified", sentOn: TODAY, print }),
  ).toMatchObject({ error: { path: "links" } });
  expect(fileOf(act, lineId).notices.every(({ state }) => state === "draft")).toBe(true);
});

test("what is posted on a door has no private code", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk);
  const codes = await newCodes(noticeIds);
  const print = { codes: { days: 30, address: ADDRESS, codes } };
  must(sendNotices(act, { lineId, noticeIds, method: "posted", sentOn: TODAY, print }));
  const [job] = listJobs(act.db, lineId);
  await runNextJob(aWorker(desk));
  const bytes = readMailing(act.dataFolder, job?.id ?? "") ?? new Uint8Array();
  expect(await readQr(bytes)).toBeNull();
  expect(act.db.$client.prepare("select count(*) from links").pluck().get()).toBe(0);
});

test("labels print each address once, where the sheet has its labels", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeIds = drafted(desk);
  must(startJob(act, { lineId, kind: "labels", subjectIds: ["30", ...noticeIds] }));
  await runNextJob(aWorker(desk));
  const [job] = listJobs(act.db, lineId);
  const upload = fileOf(act, lineId).uploads.find(({ id }) => id === job?.uploadId);
  const pdf = readPdf(readStored(act.dataFolder, upload?.sha256 ?? "") ?? new Uint8Array());
  pdf.check();
  expect(pdf.text().match(/QUILLHAVEN/g)).toHaveLength(noticeIds.length);
  const lefts = new Set(
    pdf
      .words(1)
      .filter(({ text }) => text === "QUILLHAVEN")
      .map(({ left }) => Math.round(left)),
  );
  expect([...lefts]).toEqual([Math.round(0.1875 * 72 + 9), Math.round(2.9375 * 72 + 9)]);
  expect(startJob(act, { lineId, kind: "labels", subjectIds: noticeIds })).toMatchObject({
    error: { reason: "bad-value" },
  });
});

test("door hangers hang on each door once, three to a sheet, with no code and no name on them", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const admin = { ...act, actor: { ...act.actor, role: "admin" as const } };
  addRows(act, { lineId, table: "units" }, [
    aUnit("u-1", "12", { name: "Unit 1" }),
    aUnit("u-2", "12", { name: "Unit 2" }),
  ]);
  must(addResidents(act, { lineId }));
  const recipients = fileOf(act, lineId).roles.map(({ partyId, propertyId }) => ({
    ...{ partyId, propertyId, tieInId: null, splitId: null },
  }));
  const drafts = { lineId, kind: "drains-back", replyBy: null, recipients } as const;
  const { noticeIds } = must(draftNotices(admin, drafts));
  must(startJob(act, { lineId, kind: "door-hangers", subjectIds: noticeIds }));
  await runNextJob(aWorker(desk));
  const [job] = listJobs(act.db, lineId);
  const upload = fileOf(act, lineId).uploads.find(({ id }) => id === job?.uploadId);
  const bytes = readStored(act.dataFolder, upload?.sha256 ?? "") ?? new Uint8Array();
  const pdf = readPdf(bytes);
  pdf.check();
  const text = pdf.text().replaceAll(/\s+/g, " ");
  for (const door of ["Unit 1", "Unit 2"]) expect(text.split(door), text).toHaveLength(2);
  for (const name of NAMES) expect(text).not.toContain(name);
  expect(text).not.toMatch(/\b\w{4}-\w{4}-\w{4}\b/);
  for (let page = 1; page <= Number(pdf.info()["Pages"]); page += 1)
    expect(await readQr(bytes, page)).toBeNull();
});
