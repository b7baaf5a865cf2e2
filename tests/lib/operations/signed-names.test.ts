import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { getImport } from "#db/queries/history.ts";
import { listVisits } from "#db/queries/link.ts";
import { insertRow } from "#db/queries/row.ts";
import { checkChain } from "#lib/domain/consent/chain.ts";
import { consentTable } from "#lib/domain/consent/table.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { certificateOf } from "#lib/domain/paper/certificate.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { mayAddLinkFile } from "#lib/operations/add-link-file.ts";
import { answerLink } from "#lib/operations/answer-link.ts";
import { dealWithReply } from "#lib/operations/deal-with-reply.ts";
import { decideSignedName } from "#lib/operations/decide-signed-name.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { importLine } from "#lib/operations/import-line.ts";
import { openLink, openLinkPaper } from "#lib/operations/open-link.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import { withdrawByLink } from "#lib/operations/withdraw-by-link.ts";
import { askingFor } from "#tests/support/sample-line.ts";
import { aDigArea, anOffice, aPermit, aPermitStep, aScopeItem } from "../../support/file.ts";
import {
  aDoor,
  aLinkTo,
  anOpenedLink,
  aSentLetter,
  aSplit,
  type LinkDesk,
} from "../../support/link.ts";
import { aDb, aDesk, addRows, aFolder, anAct, fileOf, must } from "../../support/office.ts";

const SIGNED = {
  kinds: ["pay"],
  capacity: "",
  drawing: null,
  records: true,
  language: "en",
} as const;

function renamed({ act, lineId }: LinkDesk, partyId: string, name: string): void {
  act.db.$client
    .prepare("update parties set name = ? where line_id = ? and id = ?")
    .run(name, lineId, partyId);
}

/** The owner of a house is asked to pay by private link, and has opened the letter. */
async function asked(desk = aDesk(), house = "12", splitId = aSplit(desk)) {
  const to = { splitId, partyId: `owner-${house}`, propertyId: house };
  const secret = await anOpenedLink(desk, aSentLetter(desk, "proposed-split", to));
  const sign = (...signedNames: string[]) =>
    signByLink(aDoor(desk), {
      ...{ ...SIGNED, secret, splitId, signedNames },
      capacity: house === "16" ? "managing member" : "",
    });
  return { desk, secret, splitId, sign };
}

function payCell({ act, lineId }: LinkDesk, house = "12") {
  const file = fileOf(act, lineId);
  const rows = consentTable(file, reportOn(file, act.today));
  return rows.find(({ propertyId }) => propertyId === house)?.cells.pay;
}

const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

test("a name that is not the party's is signed and held, until a person of the office accepts it", async () => {
  const { desk, secret, sign } = await asked();
  const { act, lineId } = desk;
  expect(must(await sign("Somebody Else Entirely")).held).toBe(true);
  const held = fileOf(act, lineId);
  expect(held.consents).toMatchObject([{ state: "name-held", enteredBy: "" }]);
  expect(payCell(desk)).toMatchObject({ inHand: false, signed: [] });
  expect(must(openLink(aDoor(desk), secret)).signed).toMatchObject([{ standing: "name-held" }]);
  const sentences = dueThings(held, reportOn(held, act.today)).map(({ sentence }) => sentence);
  expect(sentences.join("\n")).toContain("signed as “Somebody Else Entirely”");
  expect(held.history.at(-1)?.sentence).toContain("which is not the name on file");

  const consentId = held.consents[0]?.id ?? "";
  const decision = { lineId, consentId, accepted: true, reason: "Called her: her name since May" };
  for (const role of ["field", "viewer"] as const)
    expect(decideSignedName(anAct(act.db, { role }), decision)).toMatchObject({
      error: { reason: "not-allowed" },
    });
  expect(decideSignedName(act, { ...decision, reason: " " })).toMatchObject({
    error: { path: "reason" },
  });
  must(decideSignedName(act, decision));
  expect(decideSignedName(act, decision)).toMatchObject({ error: { path: "consentId" } });
  const file = fileOf(act, lineId);
  expect(file.consents).toMatchObject([
    { state: "name-held" },
    { state: "given", restsOnId: consentId, enteredBy: "Dana Okafor", note: decision.reason },
  ]);
  expect(payCell(desk)).toMatchObject({ inHand: true, signed: ["owner-12"] });
  expect(must(openLink(aDoor(desk), secret)).signed).toMatchObject([{ standing: "current" }]);
  expect(checkChain(file, sha256)).toMatchObject([{ fault: null }]);
  const [signature] = file.signatures;
  const certificate = signature && certificateOf(file, signature, "en");
  const rows = new Map(certificate?.rows.map(({ label, lines }) => [label, lines.join(" ")]));
  expect(rows.get("Name as typed")).toBe("Somebody Else Entirely");
  expect(rows.get("For")).toBe("Ottilie Brandvold");
  expect(rows.get("Name check")).toBe(
    "accepted by Dana Okafor of the office, November 25, 2026: Called her: her name since May",
  );
});

test("a name that the office does not take does not count, and can be signed again rightly", async () => {
  const { desk, secret, sign } = await asked();
  const { act, lineId } = desk;
  must(await sign("O. B."));
  const consentId = fileOf(act, lineId).consents[0]?.id ?? "";
  const no = { lineId, consentId, accepted: false, reason: "She says that it was not her" };
  must(decideSignedName(act, no));
  expect(payCell(desk)).toMatchObject({ inHand: false });
  expect(must(openLink(aDoor(desk), secret))).toMatchObject({
    signed: [{ standing: "name-refused" }],
    asks: [{ stop: null }],
  });
  expect(must(await sign("ottilie brandvold")).held).toBe(false);
  expect(payCell(desk)).toMatchObject({ inHand: true });
});

test("two owners who are one party each type their own name", async () => {
  const desk = aDesk();
  renamed(desk, "owner-12", "Rafael and June Ostrander");
  const { secret, sign } = await asked(desk);
  expect(must(openLink(aDoor(desk), secret)).asks).toMatchObject([
    { people: ["Rafael Ostrander", "June Ostrander"] },
  ]);
  expect(await sign("Rafael Ostrander", " ")).toMatchObject({ error: { path: "no-name" } });
  expect(must(await sign("June Ostrander")).held).toBe(true);
  expect(payCell(desk)).toMatchObject({ inHand: false });
  expect(must(await sign("Rafael Ostrander", "June Ostrander")).held).toBe(false);
  expect(payCell(desk)).toMatchObject({ inHand: true });
  expect(fileOf(desk.act, desk.lineId).signatures.map(({ signedName }) => signedName)).toEqual([
    "June Ostrander",
    "Rafael Ostrander; June Ostrander",
  ]);
});

test("who signs for a firm is looked at, unless the file says who does", async () => {
  const desk = aDesk();
  const { sign } = await asked(desk, "16");
  expect(must(await sign("Mara Lindt for Larkspur Holdings LLC")).held).toBe(true);
  const named = aDesk();
  named.act.db.$client
    .prepare("update roles set capacity = 'managing member Mara Lindt' where party_id = 'owner-16'")
    .run();
  const again = await asked(named, "16");
  expect(must(await again.sign("Mara Lindt")).held).toBe(false);
});

test("a later change of the party's name changes neither the certificate nor what is held", async () => {
  const { desk, sign } = await asked();
  const { act, lineId } = desk;
  must(await sign("Somebody Else Entirely"));
  renamed(desk, "owner-12", "Somebody Else Entirely");
  const file = fileOf(act, lineId);
  expect(file.signatures[0]?.forName).toBe("Ottilie Brandvold");
  expect(payCell(desk)).toMatchObject({ inHand: false });
});

test("a browser that is signed in to the office answers and signs nothing for a neighbor, and leaves no visit", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const splitId = aSplit(desk);
  const noticeId = aSentLetter(desk, "proposed-split", { splitId });
  const secret = await anOpenedLink(desk, noticeId);
  const office = aDoor(desk, { officeUser: "Dana Okafor" });
  const stop = { error: { reason: "not-allowed", path: "office-session" } };
  const before = fileOf(act, lineId);
  const visits = () =>
    act.db.$client.prepare("select count(*) from link_visits").pluck().get() as number;
  const noted = visits();
  const signing = { ...SIGNED, secret, splitId, signedNames: ["Ottilie Brandvold"] };
  expect(await signByLink(office, signing)).toMatchObject(stop);
  const answer = { secret, kind: "agrees", words: "", day: null, uploadId: null } as const;
  expect(answerLink(office, answer)).toMatchObject(stop);
  expect(withdrawByLink(office, { secret, consentId: "any", words: "" })).toMatchObject(stop);
  expect(mayAddLinkFile(office, secret)).toMatchObject(stop);
  expect(openLink(office, secret).ok).toBe(true);
  expect(openLinkPaper(office, secret, null).ok).toBe(true);
  expect(fileOf(act, lineId)).toEqual(before);
  expect(visits()).toBe(noted);
  // Nor does what the office opened count as opened by the reader.
  const fresh = aLinkTo(desk, noticeId);
  must(openLinkPaper(office, fresh, null));
  expect(await signByLink(aDoor(desk), { ...signing, secret: fresh })).toMatchObject({
    error: { path: "letter-not-opened" },
  });
  expect(listVisits(act.db, fresh)).toEqual([]);
});

/** All three owners asked to pay; the first two have signed. */
async function twoOfThree() {
  const desk = aDesk();
  const splitId = aSplit(desk);
  const [first, second, third] = [
    await asked(desk, "12", splitId),
    await asked(desk, "14", splitId),
    await asked(desk, "16", splitId),
  ];
  must(await first.sign("Ottilie Brandvold"));
  must(await second.sign("Jesús Peña"));
  return { desk, first, third };
}

const wordOf = ({ act, lineId }: LinkDesk, partyId: string) =>
  fileOf(act, lineId).consents.find((each) => each.partyId === partyId)?.id ?? "";

test("a promise to pay can be taken back until everybody who is asked to pay has signed", async () => {
  const { desk, first } = await twoOfThree();
  const back = { secret: first.secret, consentId: wordOf(desk, "owner-12"), words: "" };
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([{ binding: null }]);
  expect(must(withdrawByLink(aDoor(desk), back))).toEqual({ taken: "back" });
  expect(payCell(desk)).toMatchObject({ inHand: false });
});

test("once all have signed it binds: taking it back is a request with a reason, which a person answers", async () => {
  const { desk, first, third } = await twoOfThree();
  const { act, lineId } = desk;
  must(await third.sign("Mara Lindt"));
  // The firm's name is still held, so that not all have signed.
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([{ binding: null }]);
  const reason = "Their operating agreement names her";
  const consentId = wordOf(desk, "owner-16");
  must(decideSignedName(act, { lineId, consentId, accepted: true, reason }));
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([
    { binding: { why: "all-signed", since: "2026-11-25" }, releaseAskedOn: null },
  ]);
  const back = { secret: first.secret, consentId: wordOf(desk, "owner-12") };
  expect(withdrawByLink(aDoor(desk), { ...back, words: "  " })).toMatchObject({
    error: { path: "no-release-words" },
  });
  const words = "I sold the house";
  expect(must(withdrawByLink(aDoor(desk), { ...back, words }))).toEqual({ taken: "as-a-request" });
  expect(payCell(desk)).toMatchObject({ inHand: true });
  const file = fileOf(act, lineId);
  expect(file.replies).toMatchObject([{ kind: "asks-release", words, dealtBy: "" }]);
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([
    { standing: "current", releaseAskedOn: "2026-11-25" },
  ]);
  expect(withdrawByLink(aDoor(desk), { ...back, words })).toMatchObject({
    error: { path: "release-asked" },
  });
  const replyId = file.replies[0]?.id ?? "";
  const dealing = { lineId, replyId, how: "called-back", on: act.today, words: "No" } as const;
  must(dealWithReply(act, dealing));
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([
    { releaseAskedOn: null },
  ]);
});

test("once the work has begun it binds, whoever has not signed; leave to enter stays revocable", async () => {
  const { desk, first } = await twoOfThree();
  const { act, lineId } = desk;
  const area = aDigArea("area", "12", {
    ...{ place: "side yard", length: 2_000, width: 400 },
    ...{ firstOn: "2026-12-07", lastOn: "2026-12-09", restoration: "seed" },
  });
  addRows(act, { lineId, table: "digAreas" }, [area]);
  const secret = await anOpenedLink(desk, aSentLetter(desk, "entry-consent"));
  const entry = { ...SIGNED, secret, splitId: null, signedNames: ["Ottilie Brandvold"] };
  must(await signByLink(aDoor(desk), { ...entry, kinds: ["enter", "dig"] }));
  addRows(act, { lineId, table: "permits" }, [aPermit("permit")]);
  const step = aPermitStep("step", "permit", { state: "working", on: "2026-11-24" });
  insertRow(act.db, "permitSteps", { lineId, row: step });
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([
    { binding: { why: "work-begun", since: "2026-11-24" } },
  ]);
  const back = { secret: first.secret, consentId: wordOf(desk, "owner-12"), words: "" };
  expect(withdrawByLink(aDoor(desk), back)).toMatchObject({ error: { path: "no-release-words" } });
  const enter = fileOf(act, lineId).consents.find(({ kind }) => kind === "enter")?.id ?? "";
  expect(must(withdrawByLink(aDoor(desk), { secret, consentId: enter, words: "" }))).toEqual({
    taken: "back",
  });
});

test("an amount that no longer holds binds nobody", async () => {
  const { desk, first, third } = await twoOfThree();
  const { act, lineId } = desk;
  must(await third.sign("Mara Lindt"));
  const consentId = wordOf(desk, "owner-16");
  must(decideSignedName(act, { lineId, consentId, accepted: true, reason: "She is the manager" }));
  addRows(act, { lineId, table: "scope" }, [
    aScopeItem("more", { place: "general", from: null, to: null, quantity: 100, rate: 90_000 }),
  ]);
  expect(must(openLink(aDoor(desk), first.secret)).signed).toMatchObject([
    { standing: "superseded-amount", binding: null },
  ]);
});

test("an English letter that is read in Spanish is signed with its date in Spanish", async () => {
  const { desk, splitId, secret } = await asked();
  must(
    await signByLink(aDoor(desk), {
      ...{ ...SIGNED, secret, splitId, signedNames: ["Ottilie Brandvold"] },
      language: "es",
    }),
  );
  const [signature] = fileOf(desk.act, desk.lineId).signatures;
  expect(signature?.intent).toContain("del 25 de noviembre de 2026");
  expect(signature?.intent).not.toContain("November");
  expect(must(openLink(aDoor(desk), secret)).dates).toEqual({
    en: "November 25, 2026",
    es: "25 de noviembre de 2026",
  });
});

test("before a document that was signed on screen, the packet has its signature: name, day, words, certificate", async () => {
  const { desk, sign } = await asked();
  const { act, lineId } = desk;
  must(await sign("Somebody Else Entirely"));
  const file = fileOf(act, lineId);
  const input = { file, report: reportOn(file, act.today), office: anOffice() };
  const packet = composePacket(askingFor(["consents", "split"], input));
  const at = packet.sheets.findIndex(({ uploadId }) => uploadId === file.signatures[0]?.documentId);
  const before = packet.sheets[at - 1];
  expect(before?.title).toBe("Signed by Ottilie Brandvold: signature on the document that follows");
  const said = JSON.stringify(before?.blocks);
  for (const words of [
    "Somebody Else Entirely",
    "November 25, 2026",
    "I agree to pay $100.00 as the share of 12 Fennel Row",
    "signed, name not yet accepted",
    file.signatures[0]?.documentHash ?? "no hash",
    file.signatures[0]?.hash ?? "no hash",
  ])
    expect(said).toContain(words);
});

test("importLine() takes no signature that is not what was signed, and the office keeps that a line came in so", async () => {
  const { desk, sign } = await asked();
  const { act, lineId } = desk;
  must(await sign("Ottilie Brandvold"));
  const text = exportLine(act, lineId) ?? "";
  const file = JSON.parse(text) as { signatures: Record<string, unknown>[] };
  const forged = { ...file.signatures[0], signedName: "Eve" };
  const elsewhere = anAct(aDb(), { role: "admin", dataFolder: aFolder() });
  const bring = (signatures: object[]) =>
    importLine(elsewhere, JSON.stringify({ ...file, signatures }));
  expect(bring([forged])).toMatchObject({ error: { problems: [{ path: "signatures.0" }] } });
  expect(bring([{ ...file.signatures[0], previousHash: "a".repeat(64) }])).toMatchObject({
    error: { problems: [{ path: expect.stringMatching(/^signatures\.0/) }] },
  });
  expect(getImport(elsewhere.db, lineId)).toBeNull();
  must(importLine(elsewhere, text));
  expect(getImport(elsewhere.db, lineId)).toEqual({ at: elsewhere.now, by: "Dana Okafor" });
  expect(getImport(act.db, lineId)).toBeNull();
});
