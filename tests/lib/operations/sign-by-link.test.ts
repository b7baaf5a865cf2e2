import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import fs from "node:fs";
import { type ParsedMail, simpleParser } from "mailparser";
import sharp from "sharp";
import { SMTPServer } from "smtp-server";
import { expect, onTestFinished, test } from "vitest";
import { listLinks, listVisits } from "#db/queries/link.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { checkChain } from "#lib/domain/consent/chain.ts";
import { consentStanding } from "#lib/domain/consent/standing.ts";
import { disclosureText } from "#lib/domain/consent/words.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { openLink, openLinkPaper } from "#lib/operations/open-link.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { signByLink } from "#lib/operations/sign-by-link.ts";
import { withdrawByLink } from "#lib/operations/withdraw-by-link.ts";
import { isStoredWhole, readStored, storedPath } from "#lib/storage/store.ts";
import { aDigArea, anOffice, aRole } from "../../support/file.ts";
import {
  aDoor,
  aLinkTo,
  anOpenedLink,
  aSentLetter,
  aSplit,
  aWorker,
  type LinkDesk,
} from "../../support/link.ts";
import { aDesk, addRows, closeAnyhow, fileOf, must } from "../../support/office.ts";
import { tamper } from "../../support/tamper.ts";

function sha256(data: string | Uint8Array): string {
  return createHash("sha256").update(data).digest("hex");
}

const SIGNED = {
  kinds: ["pay"],
  signedNames: ["Ottilie  Brandvold"],
  capacity: "",
  drawing: null,
  records: true,
  language: "en",
} as const;

/** A letter that puts a share to the owner of 12, opened by its link. */
async function asked(overrides: { partyId?: string; propertyId?: string } = {}) {
  const desk = aDesk();
  const splitId = aSplit(desk);
  const noticeId = aSentLetter(desk, "proposed-split", { splitId, ...overrides });
  const secret = await anOpenedLink(desk, noticeId);
  return { desk, splitId, noticeId, secret, signing: { ...SIGNED, secret, splitId } };
}

function chainOf({ act, lineId }: LinkDesk) {
  return checkChain(fileOf(act, lineId), sha256).map(({ fault }) => fault);
}

test("signByLink() keeps what E-SIGN and UETA practice keep, tied to the very bytes", async () => {
  const { desk, splitId, noticeId, signing } = await asked();
  const { act, lineId } = desk;
  const { signatureIds, copied } = must(await signByLink(aDoor(desk), signing));
  expect(copied).toBe(true);
  const file = fileOf(act, lineId);
  const letter = file.uploads.find(({ id }) => id === file.notices[0]?.uploadId);
  const [signature] = file.signatures;
  expect(signature?.id).toBe(signatureIds[0]);
  expect(file.consents).toMatchObject([
    {
      id: signature?.consentId,
      kind: "pay",
      state: "given",
      stateOn: "2026-11-25",
      splitId,
      amount: 10_000,
      uploadId: letter?.id,
    },
  ]);
  const [link] = listLinks(act.db, { lineId, noticeId });
  expect(signature).toMatchObject({
    linkId: link?.id,
    signedName: "Ottilie  Brandvold",
    drawingId: null,
    intent: expect.stringContaining(
      "I agree to pay $100.00 as the share of 12 Fennel Row, version 1",
    ),
    disclosure: disclosureText("en", anOffice()),
    documentId: letter?.id,
    documentHash: sha256(readStored(act.dataFolder, letter?.sha256 ?? "") ?? ""),
    signedAt: act.now,
    zone: anOffice().zone,
    address: "203.0.113.7",
    agent: "Test browser 1",
    copyMessageId: listOutgoing(act.db, lineId)[0]?.messageId,
  });
  expect(signature?.disclosureVersion).toContain(sha256(signature?.disclosure ?? ""));
  expect(signature?.views.map(({ what }) => what)).toEqual([
    "opened",
    "opened-letter",
    "Checked the consent to sign on screen",
    "Checked what is agreed to",
  ]);
  expect(chainOf(desk)).toEqual([null]);
  expect(listVisits(act.db, link?.id ?? "").map(({ what }) => what)).toContain("signed");
  expect(file.history.at(-1)?.sentence).toContain("Ottilie Brandvold signed on screen");
});

test("signByLink() refuses without intent, consent to electronic records, a name, or an opened letter", async () => {
  const { desk, noticeId, signing } = await asked();
  const tries = [
    [{ kinds: [] }, "no-intent"],
    [{ records: false }, "no-records"],
    [{ signedNames: ["  "] }, "no-name"],
    [{ signedNames: ["42"] }, "no-name"],
    [{ signedNames: ["Ottilie\nBrandvold"] }, "no-name"],
    [{ kinds: ["dig" as const] }, "nothing-to-sign"],
    [{ kinds: ["agreement-signed" as never] }, "nothing-to-sign"],
    [{ splitId: "another" }, "superseded"],
    [{ drawing: Buffer.from("%PDF-1.7 no picture") }, "bad-drawing"],
  ] as const;
  for (const [part, stop] of tries)
    expect(await signByLink(aDoor(desk), { ...signing, ...part }), stop).toMatchObject({
      error: { path: stop },
    });
  const fresh = aLinkTo(desk, noticeId);
  expect(await signByLink(aDoor(desk), { ...signing, secret: fresh })).toMatchObject({
    error: { path: "letter-not-opened" },
  });
  expect(fileOf(desk.act, desk.lineId).signatures).toEqual([]);
  expect(fileOf(desk.act, desk.lineId).consents).toEqual([]);
});

test("signByLink() refuses before the letter's PDF is there", async () => {
  const desk = aDesk();
  const splitId = aSplit(desk);
  const secret = aLinkTo(desk, aSentLetter(desk, "proposed-split", { splitId }));
  expect(openLinkPaper(aDoor(desk), secret, null)).toMatchObject({
    error: { path: "letter-not-ready" },
  });
  await runNextJob(aWorker(desk));
  must(openLinkPaper(aDoor(desk), secret, null));
  expect((await signByLink(aDoor(desk), { ...SIGNED, secret, splitId })).ok).toBe(true);
});

test("a newer version voids a signature that is pending and keeps the one that was given", async () => {
  const { desk, secret, signing } = await asked();
  const { act, lineId } = desk;
  must(await signByLink(aDoor(desk), signing));
  const other = aSentLetter(desk, "proposed-split", {
    splitId: signing.splitId,
    partyId: "owner-14",
    propertyId: "14",
  });
  const pending = await anOpenedLink(desk, other);
  aSplit(desk, 60_000);
  expect(must(openLink(aDoor(desk), pending))).toMatchObject({
    superseded: { amount: 30_000 },
    asks: [{ stop: "superseded" }],
  });
  expect(
    await signByLink(aDoor(desk), { ...signing, secret: pending, language: "es" }),
  ).toMatchObject({ error: { path: "superseded" } });
  const file = fileOf(act, lineId);
  const [consent] = file.consents;
  expect(consent && consentStanding(file, consent, reportOn(file, act.today))).toBe(
    "superseded-amount",
  );
  // Still readable, with the amount and the bytes that were signed.
  const view = must(openLink(aDoor(desk), secret));
  expect(view.signed).toMatchObject([
    { standing: "superseded-amount", consent: { amount: 10_000 } },
  ]);
  expect(
    must(openLinkPaper(aDoor(desk), secret, view.signed[0]?.signature.documentId ?? "")).sha256,
  ).toBe(view.signed[0]?.signature.documentHash);
  expect(chainOf(desk)).toEqual([null]);
});

test("an amount that no longer follows from the facts can't be signed, though no version is newer", async () => {
  const { desk, signing } = await asked();
  const { act, lineId } = desk;
  act.db.$client.prepare("update scope_items set rate_cents = rate_cents * 2").run();
  expect(await signByLink(aDoor(desk), signing)).toMatchObject({ error: { path: "superseded" } });
  expect(fileOf(act, lineId).signatures).toEqual([]);
});

test("an agreement that is to be recorded is never signed on screen", async () => {
  const desk = aDesk();
  const splitId = aSplit(desk);
  const secret = await anOpenedLink(desk, aSentLetter(desk, "proposed-split", { splitId }));
  tamper(desk.act.db, "update notices set kind = 'joint-agreement'");
  expect(must(openLink(aDoor(desk), secret))).toMatchObject({ onPaper: true, asks: [] });
  for (const kind of ["pay", "agreement-signed"] as const)
    expect(
      await signByLink(aDoor(desk), { ...SIGNED, secret, splitId, kinds: [kind as "pay"] }),
    ).toMatchObject({ error: { path: expect.stringMatching(/on-paper|nothing-to-sign/) } });
  expect(fileOf(desk.act, desk.lineId).signatures).toEqual([]);
});

const AREA = aDigArea("area", "12", {
  ...{ place: "side yard", length: 2_000, width: 400 },
  ...{ firstOn: "2026-12-07", lastOn: "2026-12-09", restoration: "seed" },
});

test("two consents of one letter are two signatures in one chain, entering and digging", async () => {
  const { desk, signing } = await asked();
  must(await signByLink(aDoor(desk), signing));
  const open = await anOpenedLink(desk, aSentLetter(desk, "entry-consent"));
  const both = { ...signing, secret: open, splitId: null, kinds: ["enter", "dig"] as const };
  expect(await signByLink(aDoor(desk), both)).toMatchObject({ error: { path: "area-open" } });
  addRows(desk.act, { lineId: desk.lineId, table: "digAreas" }, [AREA]);
  expect(await signByLink(aDoor(desk), both)).toMatchObject({ error: { path: "area-open" } });
  const secret = await anOpenedLink(desk, aSentLetter(desk, "entry-consent"));
  const named = { ...both, secret };
  must(await signByLink(aDoor(desk), named));
  const { signatures, consents } = fileOf(desk.act, desk.lineId);
  expect(consents.map(({ kind }) => kind)).toEqual(["pay", "enter", "dig"]);
  expect(signatures.map(({ previousHash }) => previousHash)).toEqual([
    "0".repeat(64),
    signatures[0]?.hash,
    signatures[1]?.hash,
  ]);
  expect(chainOf(desk)).toEqual([null, null, null]);
  expect(await signByLink(aDoor(desk), named)).toMatchObject({ error: { path: "signed-already" } });
});

test("an occupant may let people in, and may neither pay nor let them dig", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  addRows(act, { lineId, table: "parties" }, [
    { ...fileOf(act, lineId).parties[0], id: "tenant", name: "Ana Ruiz", email: "" },
  ]);
  addRows(act, { lineId, table: "roles" }, [
    { ...aRole("tenant", "12"), id: "tenant-role", role: "occupant" },
  ]);
  const secret = await anOpenedLink(
    desk,
    aSentLetter(desk, "entry-consent", { partyId: "tenant" }),
  );
  const signing = { ...SIGNED, secret, splitId: null, signedNames: ["Ana Ruiz"] };
  expect(await signByLink(aDoor(desk), { ...signing, kinds: ["dig"] })).toMatchObject({
    error: { path: "not-your-signature" },
  });
  const signed = must(await signByLink(aDoor(desk), { ...signing, kinds: ["enter"] }));
  expect(signed.copied).toBe(false);
  expect(listOutgoing(act.db, lineId)).toEqual([]);
});

test("a firm of which nobody said who signs has to say it, and the signature keeps it", async () => {
  const { desk, signing } = await asked({ partyId: "owner-16", propertyId: "16" });
  const one = { ...signing, signedNames: ["Bo Larkspur"] };
  expect(await signByLink(aDoor(desk), one)).toMatchObject({ error: { path: "no-capacity" } });
  must(await signByLink(aDoor(desk), { ...one, capacity: "managing member" }));
  const { signatures, consents } = fileOf(desk.act, desk.lineId);
  expect(signatures[0]?.intent).toContain(
    "I sign for Larkspur Holdings LLC as its managing member.",
  );
  expect(consents[0]?.note).toContain("as managing member by the signer’s own word");
});

test("a drawn signature is kept as a picture", async () => {
  const { desk, signing } = await asked();
  const size = { width: 40, height: 20, channels: 4, background: "#000" } as const;
  const drawing = await sharp({ create: size }).png().toBuffer();
  must(await signByLink(aDoor(desk), { ...signing, drawing }));
  const { signatures, uploads } = fileOf(desk.act, desk.lineId);
  const kept = uploads.find(({ id }) => id === signatures[0]?.drawingId);
  expect(kept).toMatchObject({ type: "image/png", sha256: sha256(drawing) });
});

test("signatures can be neither changed nor taken out, and a file altered behind them is found", async () => {
  const { desk, signing } = await asked();
  const { act, lineId } = desk;
  must(await signByLink(aDoor(desk), signing));
  const run = (sql: string) => act.db.$client.prepare(sql).run();
  expect(() => run("update signatures set signed_name = 'Eve'")).toThrow(/append-only/);
  expect(() => run("delete from signatures")).toThrow(/append-only/);
  expect(() => run("update consents set amount_cents = 1")).toThrow(/stays as it was recorded/);
  tamper(act.db, "update consents set amount_cents = 1");
  expect(chainOf(desk)).toEqual(["changed"]);
  tamper(act.db, "update consents set amount_cents = 10000");
  expect(chainOf(desk)).toEqual([null]);
  const hash = fileOf(act, lineId).signatures[0]?.documentHash ?? "";
  const place = storedPath(act.dataFolder, hash);
  const bytes = fs.readFileSync(place);
  expect(isStoredWhole(act.dataFolder, hash)).toBe(true);
  bytes[bytes.length - 10] = (bytes[bytes.length - 10] ?? 0) ^ 1;
  fs.writeFileSync(place, bytes);
  expect(isStoredWhole(act.dataFolder, hash)).toBe(false);
});

test("withdrawByLink() takes a consent back once; it can be given again, and both stay readable", async () => {
  const { desk, secret, signing } = await asked();
  const { act, lineId } = desk;
  must(await signByLink(aDoor(desk), signing));
  const [first] = fileOf(act, lineId).consents;
  const back = { secret, consentId: first?.id ?? "", words: "" };
  must(withdrawByLink(aDoor(desk), back));
  expect(withdrawByLink(aDoor(desk), back)).toMatchObject({
    error: { path: "nothing-to-withdraw" },
  });
  expect(must(openLink(aDoor(desk), secret)).signed).toMatchObject([{ standing: "withdrawn" }]);
  must(await signByLink(aDoor(desk), signing));
  expect(fileOf(act, lineId).consents.map(({ state }) => state)).toEqual([
    "given",
    "withdrawn",
    "given",
  ]);
  expect(chainOf(desk)).toEqual([null, null]);
});

test("recordConsent() corrects no word that was signed on screen, but adds its own", async () => {
  const { desk, splitId, signing } = await asked();
  const { act, lineId } = desk;
  must(await signByLink(aDoor(desk), signing));
  const signed = fileOf(act, lineId).consents[0];
  must(
    recordConsent(act, {
      ...{ lineId, kind: "pay", partyId: "owner-12", propertyId: "12", state: "given" },
      ...{ stateOn: act.today, splitId, amount: 10_000, recordingNumber: "", uploadId: null },
      note: "Also on paper",
    } as const),
  );
  expect(fileOf(act, lineId).consents[0]).toEqual(signed);
  expect(fileOf(act, lineId).consents).toHaveLength(2);
});

test("signByLink() signs nothing on a closed file", async () => {
  const { desk, signing } = await asked();
  must(closeAnyhow(desk.act, desk.lineId));
  expect(await signByLink(aDoor(desk), signing)).toMatchObject({ error: { path: "closed" } });
});

test("the signer's copy goes out over SMTP: the very bytes that were signed, and the certificate", async () => {
  const { desk, signing } = await asked({ partyId: "owner-14", propertyId: "14" });
  const { act, lineId } = desk;
  must(await signByLink(aDoor(desk), { ...signing, signedNames: ["Jesús Peña"], language: "es" }));
  const received: ParsedMail[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    onData(stream, _session, done) {
      simpleParser(stream).then((mail) => {
        received.push(mail);
        done();
      }, done);
    },
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => new Promise<void>((resolve) => server.close(() => resolve())));
  const address = server.server.address();
  const port = typeof address === "object" ? (address?.port ?? 0) : 0;
  const smtp = { host: "127.0.0.1", port, user: "", password: "" };
  expect(await sendNextOutgoing(aWorker(desk, smtp))).toBe(true);
  const { signatures, history } = fileOf(act, lineId);
  const [mail] = received;
  expect(mail?.messageId).toBe(signatures[0]?.copyMessageId);
  expect(mail?.to).toMatchObject({ value: [{ address: "jesus@example.org" }] });
  expect(mail?.text).toContain("CERTIFICADO DE UNA FIRMA HECHA EN PANTALLA");
  expect(mail?.text).toContain(signatures[0]?.hash);
  const [letter, certificate, ...others] = mail?.attachments ?? [];
  expect(others).toEqual([]);
  expect(certificate?.filename).toBe("Certificado-de-una-firma-hecha-en-pantalla.pdf");
  expect(sha256(letter?.content ?? "")).toBe(signatures[0]?.documentHash);
  const place = `${act.dataFolder}/certificate.pdf`;
  fs.writeFileSync(place, certificate?.content ?? "");
  const text = execFileSync("pdftotext", ["-layout", place, "-"]).toString();
  expect(text).toContain("Jesús Peña");
  expect(text).toContain("Acepto pagar $100.00");
  expect(text).toContain(signatures[0]?.documentHash);
  expect(history.at(-1)?.sentence).toContain("to Jesús Peña sent: 250");
});
