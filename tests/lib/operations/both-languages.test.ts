import { expect, test } from "vitest";
import { putOffice } from "#db/queries/office.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { renderStatements } from "#lib/documents/statement-document.tsx";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { statementOf } from "#lib/domain/paper/statement.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { dropDraft } from "#lib/operations/drop-draft.ts";
import { enclosedStatements } from "#lib/operations/enclosed-statements.ts";
import { saveNoticeWords } from "#lib/operations/save-notice-words.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { aFile, anOffice, aParty, aProperty, aRole } from "#tests/support/file.ts";
import { aLedgerEntry, aVersion } from "#tests/support/ledger.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

/** Rendering is slow where other work runs beside it. */
const TODAY = "2026-11-25";
const RECIPIENTS = ["12", "14", "16"].map((propertyId) => ({
  partyId: `owner-${propertyId}`,
  propertyId,
  tieInId: null,
  splitId: null,
}));

function draftedIn({ act, lineId }: ReturnType<typeof aDesk>) {
  for (const { id } of fileOf(act, lineId).notices) must(dropDraft(act, { lineId, noticeId: id }));
  must(draftNotices(act, { lineId, kind: "finding", replyBy: null, recipients: RECIPIENTS }));
  return fileOf(act, lineId).notices.map(({ language, alsoIn }) => [language, alsoIn]);
}

test("a draft is in both languages where its reader, the property or the office wants that", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const { parties, properties } = fileOf(act, lineId);
  const asked = parties.map((party) => {
    if (party.id === "owner-12") return { ...party, language: "both" as const };
    return party.id === "owner-16" ? { ...party, language: "unknown" as const } : party;
  });
  must(saveRows(act, { lineId, table: "parties", base: 1, rows: asked }));
  expect(draftedIn(desk)).toEqual([
    ["en", "es"],
    ["es", null],
    ["en", null],
  ]);
  const there = properties.map((each) => ({ ...each, bothLanguages: each.id === "14" }));
  must(saveRows(act, { lineId, table: "properties", base: 1, rows: there }));
  putOffice(act.db, anOffice({ bothLanguages: true }));
  expect(draftedIn(desk)).toEqual([
    ["en", "es"],
    ["es", "en"],
    ["en", "es"],
  ]);
});

test("a letter in two languages is frozen, mailed and printed as one", async () => {
  const { act, lineId } = aDesk();
  const [to] = RECIPIENTS;
  if (to === undefined) throw new Error("nobody to write to");
  const drafting = { lineId, kind: "finding", replyBy: null, recipients: [to] } as const;
  const [noticeId = ""] = must(draftNotices(act, drafting)).noticeIds;
  const languages = { language: "en", alsoIn: "es" } as const;
  must(saveNoticeWords(act, { lineId, noticeId, ownWords: "", replyBy: null, languages }));
  const sending = { lineId, noticeIds: [noticeId], method: "mail-message", sentOn: TODAY } as const;
  must(sendNotices(act, sending));
  const letter = JSON.parse(fileOf(act, lineId).notices[0]?.frozen ?? "") as Letter;
  const { also } = letter;
  expect([letter.language, also?.language]).toEqual(["en", "es"]);
  expect(also?.reference).toBe(letter.reference);

  const [message] = listOutgoing(act.db, lineId);
  expect(message?.subject).toBe(`${letter.subject} / ${also?.subject}`);
  expect(message?.text).toMatch(/^En español: vea más abajo/);
  expect(message?.text).toContain(letter.greeting);
  expect(message?.text).toContain(also?.greeting);

  const pdf = readPdf(await renderLetters([letter]));
  pdf.check();
  const pages = Number(pdf.info()["Pages"]);
  expect(pages).toBeLessThanOrEqual(4);
  expect(pdf.text(1)).toContain("Después del texto en inglés");
  expect(pdf.text(pages)).toContain(`Página ${pages} de ${pages}`);
  const second = [1, 2, 3, 4].find((page) => pdf.text(page).includes("El mismo texto en español"));
  expect(second).toBeGreaterThan(1);
});

test("the statement in the envelope is in the languages of its letter", async () => {
  const facts = sampleLine();
  const enclosedWith = (alsoIn: "es" | null) => {
    const notice = sampleNotice("ottilie", "p12", { kind: "proposed-split", alsoIn });
    const letter = composeLetter({ ...facts, notice });
    return enclosedStatements([{ notice, letter }], facts).get(letter);
  };
  expect(enclosedWith(null)?.also).toBeUndefined();
  const both = enclosedWith("es");
  if (both === undefined) throw new Error("no statement");
  expect([both.language, both.also?.language]).toEqual(["en", "es"]);
  const pdf = readPdf(await renderStatements([both]));
  pdf.check();
  const begins = (subject = "") =>
    [1, 2, 3, 4].find((page) => pdf.text(page).includes(subject)) ?? 0;
  expect(begins(both.subject)).toBe(1);
  expect(begins(both.also?.subject)).toBeGreaterThan(1);
});

test("a paper of joint owners is in each language that one of them wants, and asks once for the money", async () => {
  const file = aFile({
    properties: [aProperty("12")],
    parties: [
      aParty("ottilie", { name: "Ottilie Brandvold" }),
      aParty("nils", { name: "Nils Brandvold", language: "es" }),
    ],
    roles: [aRole("ottilie", "12"), aRole("nils", "12")],
    splits: [aVersion(1, { "12": 119_000 })],
    ledger: [
      aLedgerEntry(1, {
        amount: 119_000,
        partyId: "ottilie",
        dueOn: "2026-12-25",
        splitId: "split-1",
      }),
    ],
  });
  for (const [invoice] of [
    accountPapers({ file, office: anOffice(), today: TODAY }, ["entry-1"]),
    accountPapers({ file, office: anOffice(), today: TODAY }, ["12"]),
  ]) {
    if (invoice === undefined) throw new Error("no paper");
    expect([invoice.language, invoice.also?.language]).toEqual(["en", "es"]);
    const pdf = readPdf((await renderAccounts([invoice])).bytes);
    pdf.check();
    expect(pdf.text(2)).toContain(invoice.also?.subject);
    expect(pdf.text(2)).toContain("Página 2 de 2");
  }
  const alone = file.parties.map((party) => ({ ...party, language: "en" as const }));
  const input = { file: { ...file, parties: alone }, office: anOffice(), today: TODAY };
  expect(accountPapers(input, ["entry-1"])[0]?.also).toBeUndefined();
});

test("statementOf() speaks to joint owners in each of their languages", () => {
  const facts = sampleLine();
  const roles = [...facts.file.roles, aRole("jesus", "p12")];
  const shared = { ...facts, file: { ...facts.file, roles } };
  expect(statementOf({ ...shared, propertyId: "p12" })?.also?.language).toBe("es");
  expect(statementOf({ ...facts, propertyId: "p12" })?.also).toBeUndefined();
});
