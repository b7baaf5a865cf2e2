import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { listLinks, listVisits } from "#db/queries/link.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { addLinkFile, mayAddLinkFile } from "#lib/operations/add-link-file.ts";
import { answerLink } from "#lib/operations/answer-link.ts";
import { closeLine } from "#lib/operations/close-line.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { actOfLink } from "#lib/operations/link-door.ts";
import { makeLink } from "#lib/operations/make-link.ts";
import { openLink, openLinkPaper } from "#lib/operations/open-link.ts";
import { SECRET_GAP } from "#lib/operations/outgoing.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { revokeLink } from "#lib/operations/revoke-link.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { aDoor, aLinkTo, anOpenedLink, aSecret, aSentLetter, aSplit } from "../../support/link.ts";
import { aDesk, anAct, closeAnyhow, fileOf, must } from "../../support/office.ts";

const GONE = { ok: false, error: { reason: "not-found", path: "gone" } };

test("makeLink() keeps only the hash of the secret, which is 256 random bits", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "finding");
  const secret = aLinkTo(desk, noticeId);
  const [link, ...others] = listLinks(act.db, { lineId, noticeId });
  expect(others).toEqual([]);
  expect(link?.tokenHash).toBe(createHash("sha256").update(secret).digest("hex"));
  expect(link?.expiresAt).toBe("2026-12-25T18:00:00.000Z");
  const tables = act.db.$client
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .all() as { name: string }[];
  const all = tables.map(({ name }) => act.db.$client.prepare(`select * from "${name}"`).all());
  expect(JSON.stringify(all)).not.toContain(secret);
});

test("makeLink() calls back the one before it, and refuses drafts, odd days and who may not", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const recipients = [{ partyId: "owner-14", propertyId: "14", tieInId: null, splitId: null }];
  const drafted = must(draftNotices(act, { lineId, kind: "finding", replyBy: null, recipients }));
  const [draftId = ""] = drafted.noticeIds;
  const noticeId = aSentLetter(desk, "finding");
  const first = aLinkTo(desk, noticeId);
  const order = { lineId, noticeId, days: 30, secret: aSecret() };
  expect(makeLink(act, { ...order, noticeId: draftId })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
  expect(makeLink(act, { ...order, days: 0 })).toMatchObject({ error: { path: "days" } });
  expect(makeLink(act, { ...order, days: 181 })).toMatchObject({ error: { path: "days" } });
  expect(makeLink(anAct(act.db, { role: "field" }), order)).toMatchObject({
    error: { reason: "not-allowed" },
  });
  expect(() => makeLink(act, { ...order, secret: "short" })).toThrow(RangeError);
  expect(openLink(aDoor(desk), first).ok).toBe(true);
  must(makeLink(act, order));
  expect(openLink(aDoor(desk), first)).toMatchObject(GONE);
  expect(openLink(aDoor(desk), order.secret).ok).toBe(true);
});

test("openLink() gives an unknown, an expired and a revoked link one and the same answer", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "finding");
  const secret = aLinkTo(desk, noticeId, 7);
  const unknown = openLink(aDoor(desk), aSecret());
  expect(unknown).toMatchObject(GONE);
  expect(openLink(aDoor(desk), "x")).toEqual(unknown);
  expect(openLink(aDoor(desk, { now: "2026-12-02T17:59:59.999Z" }), secret).ok).toBe(true);
  expect(openLink(aDoor(desk, { now: "2026-12-02T18:00:00.000Z" }), secret)).toEqual(unknown);
  must(revokeLink(act, { lineId, noticeId }));
  expect(openLink(aDoor(desk), secret)).toEqual(unknown);
  expect(revokeLink(act, { lineId, noticeId })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
});

test("openLink() shows the party's own letter and share, notes the visit, and changes nothing", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const splitId = aSplit(desk);
  const noticeId = aSentLetter(desk, "proposed-split", { splitId });
  const secret = aLinkTo(desk, noticeId);
  const before = fileOf(act, lineId);
  const view = must(openLink(aDoor(desk), secret));
  expect(fileOf(act, lineId)).toEqual(before);
  expect(view).toMatchObject({
    partyName: "Ottilie Brandvold",
    share: { amount: 10_000, versionNumber: 1 },
    superseded: null,
    documentId: null,
  });
  expect(view.letter?.blocks.some(({ kind }) => kind === "answer-slip")).toBe(false);
  const [link] = listLinks(act.db, { lineId, noticeId });
  expect(listVisits(act.db, link?.id ?? "")).toMatchObject([
    { what: "opened", address: "203.0.113.7", agent: "Test browser 1", at: act.now },
  ]);
});

test("openLinkPaper() hands out the letter's own bytes, and no other file of the line", async () => {
  const desk = aDesk();
  const secret = await anOpenedLink(desk, aSentLetter(desk, "finding"));
  const other = await anOpenedLink(
    desk,
    aSentLetter(desk, "finding", { partyId: "owner-14", propertyId: "14" }),
  );
  const own = must(openLinkPaper(aDoor(desk), secret, null));
  const theirs = must(openLinkPaper(aDoor(desk), other, null));
  expect(own.type).toBe("application/pdf");
  expect(own.id).not.toBe(theirs.id);
  expect(openLinkPaper(aDoor(desk), secret, theirs.id).ok).toBe(false);
});

test("findOpenLink() makes an address wait that tries many links, and nobody else", () => {
  const desk = aDesk();
  const secret = aLinkTo(desk, aSentLetter(desk, "finding"));
  for (let tries = 0; tries < 30; tries += 1) openLink(aDoor(desk), aSecret());
  expect(openLink(aDoor(desk), secret)).toMatchObject({ error: { path: "too-many" } });
  expect(openLink(aDoor(desk, { address: "203.0.113.8" }), secret).ok).toBe(true);
  const later = aDoor(desk, { now: "2026-11-25T18:15:01.000Z" });
  expect(openLink(later, secret).ok).toBe(true);
});

test("findOpenLink() makes one link wait after many deeds by it", () => {
  const desk = aDesk();
  const secret = aLinkTo(desk, aSentLetter(desk, "finding"));
  const answer = { secret, kind: "asks", words: "When?", day: null, uploadId: null } as const;
  for (let tries = 0; tries < 40; tries += 1) must(answerLink(aDoor(desk), answer));
  expect(answerLink(aDoor(desk), answer)).toMatchObject({ error: { path: "too-many" } });
});

test("answerLink() becomes an ordinary reply, also on a closed file", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "finding");
  const secret = aLinkTo(desk, noticeId);
  must(closeAnyhow(act, lineId));
  must(
    answerLink(aDoor(desk), {
      secret,
      kind: "books-a-test",
      words: " Mornings please ",
      day: "2026-12-03",
      uploadId: null,
    }),
  );
  expect(fileOf(act, lineId).replies).toMatchObject([
    {
      noticeId,
      kind: "books-a-test",
      receivedOn: "2026-11-25",
      takenBy: "private link",
      words: "Mornings please",
      suitsOn: "2026-12-03",
    },
  ]);
  expect(fileOf(act, lineId).history.at(-1)).toMatchObject({
    by: "Ottilie Brandvold, by private link",
    action: "answer-link",
  });
});

test("an answer that a browser sends again is there once; another from the same form is another", () => {
  const desk = aDesk();
  const secret = aLinkTo(desk, aSentLetter(desk, "finding"));
  const said = { secret, kind: "asks", words: "When?", day: null, uploadId: null } as const;
  const { replyId } = must(answerLink(aDoor(desk), { ...said, form: "page-1" }));
  expect(must(answerLink(aDoor(desk), { ...said, form: "page-1" })).replyId).toBe(replyId);
  must(answerLink(aDoor(desk), { ...said, words: "When, please?", form: "page-1" }));
  must(answerLink(aDoor(desk), { ...said, form: "page-2" }));
  const { replies, history } = fileOf(desk.act, desk.lineId);
  expect(replies.map(({ words }) => words)).toEqual(["When?", "When, please?", "When?"]);
  expect(history.filter(({ action }) => action === "answer-link")).toHaveLength(3);
  const other = aLinkTo(desk, aSentLetter(desk, "entry-consent"));
  must(answerLink(aDoor(desk), { ...said, secret: other, form: "page-1" }));
  expect(fileOf(desk.act, desk.lineId).replies).toHaveLength(4);
});

test("answerLink() wants words for a question, and takes a bare agreement", () => {
  const desk = aDesk();
  const secret = aLinkTo(desk, aSentLetter(desk, "finding"));
  const silent = { secret, words: "  ", day: null, uploadId: null };
  expect(answerLink(aDoor(desk), { ...silent, kind: "asks" })).toMatchObject({
    error: { path: "no-words" },
  });
  expect(answerLink(aDoor(desk), { ...silent, kind: "other" as never })).toMatchObject({
    error: { path: "no-kind" },
  });
  expect(answerLink(aDoor(desk), { ...silent, kind: "agrees" }).ok).toBe(true);
  expect(
    answerLink(aDoor(desk), { ...silent, kind: "asks", words: "x".repeat(5_001) }),
  ).toMatchObject({ error: { path: "too-long" } });
});

test("a file goes with an answer only by the link that it came by, ten at most", () => {
  const desk = aDesk();
  const secret = aLinkTo(desk, aSentLetter(desk, "finding"));
  const other = aLinkTo(
    desk,
    aSentLetter(desk, "finding", { partyId: "owner-14", propertyId: "14" }),
  );
  const stored = { type: "image/png", bytes: 10, sha256: "a".repeat(64) } as const;
  const add = () =>
    addLinkFile(aDoor(desk), must(mayAddLinkFile(aDoor(desk), secret)), {
      name: "../old plan.png",
      stored,
    });
  const { uploadId } = must(add());
  const answer = { kind: "offers-a-record", words: "", day: null, uploadId } as const;
  expect(answerLink(aDoor(desk), { ...answer, secret: other })).toMatchObject({
    error: { path: "bad-file" },
  });
  must(answerLink(aDoor(desk), { ...answer, secret }));
  const file = fileOf(desk.act, desk.lineId);
  expect(file.replies).toMatchObject([{ uploadId }]);
  expect(file.uploads[0]).toMatchObject({
    name: "old plan.png",
    addedBy: "Ottilie Brandvold, by private link",
  });
  for (let more = 1; more < 10; more += 1) must(add());
  expect(mayAddLinkFile(aDoor(desk), secret)).toMatchObject({ error: { path: "too-many-files" } });
});

test("sendNotices() puts a new link into each mail message, in the letter's language", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const recipients = ["12", "14"].map((house) => ({
    ...{ partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null },
  }));
  const { noticeIds } = must(
    draftNotices(act, { lineId, kind: "finding", replyBy: null, recipients }),
  );
  const secrets: string[] = [];
  const newSecret = () => {
    const secret = aSecret();
    secrets.push(secret);
    return secret;
  };
  const links = { days: 30, address: "https://office.example.com", newSecret };
  const sending = { lineId, noticeIds, method: "mail-message", sentOn: act.today } as const;
  expect(sendNotices(act, { ...sending, links: { ...links, days: 0 } }).ok).toBe(false);
  must(sendNotices(act, { ...sending, links }));
  const texts = listOutgoing(act.db, lineId).map(({ text }) => text);
  expect(texts[0]).toContain(`https://office.example.com/n/${SECRET_GAP}\n`);
  expect(texts[0]).toContain("until December 25, 2026");
  expect(texts[1]).toContain(`https://office.example.com/n/${SECRET_GAP}\n`);
  expect(texts[1]).toContain("hasta el 25 de diciembre de 2026");
  expect(secrets.map((secret) => openLink(aDoor(desk), secret).ok)).toEqual([true, true]);
});

test("a link's reader is an actor of their own, who may answer and can work no file", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "finding");
  aLinkTo(desk, noticeId);
  const [link] = listLinks(act.db, { lineId, noticeId });
  if (link === undefined) throw new Error("There is no link");
  const reader = actOfLink(aDoor(desk), link, "Ottilie Brandvold");
  expect(reader.actor).toEqual({
    id: `link:${link.id}`,
    name: "Ottilie Brandvold, by private link",
    role: "link-reader",
  });
  const refused = { error: { reason: "not-allowed" } };
  const reply = { receivedOn: act.today, words: "", uploadId: null } as const;
  expect(recordReply(reader, { lineId, noticeId, kind: "agrees", ...reply })).toMatchObject(
    refused,
  );
  expect(closeLine(reader, { lineId, acknowledged: [] } as never)).toMatchObject(refused);
  expect(saveRows(reader, { lineId, table: "runs", base: 0, rows: [] })).toMatchObject(refused);
  const order = { lineId, noticeId, days: 30, secret: aSecret() };
  expect(makeLink(reader, order)).toMatchObject(refused);
});
