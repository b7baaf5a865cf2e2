import { expect, test } from "vitest";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { contractorStanding } from "#lib/domain/packet/contractor-standing.ts";
import type { PacketInput } from "#lib/domain/packet/sheet-states.ts";
import { SHEET_KINDS } from "#lib/domain/responsibility/authority.ts";
import { aHold } from "#tests/support/answers.ts";
import { aConsent, anOffice, anUpload, aRequirementMark, aSplit } from "#tests/support/file.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

function packetWith(change: Partial<PacketInput["file"]>) {
  const line = sampleLine();
  return composePacket({ ...line, file: { ...line.file, ...change } });
}

function check(packet: ReturnType<typeof composePacket>, id: string) {
  return packet.checks.find(({ requirementId }) => requirementId === id);
}

function textOf(packet: ReturnType<typeof composePacket>, kind: (typeof SHEET_KINDS)[number]) {
  return JSON.stringify(packet.sheets.find((sheet) => sheet.kind === kind)?.blocks);
}

test("composePacket() has every kind of sheet once, uploads last", () => {
  const kinds = composePacket(sampleLine()).sheets.map(({ kind }) => kind);
  expect(kinds).toEqual([
    "application",
    "line-drawing",
    "schedule-of-connections",
    "observation-log",
    "tests",
    "scope",
    "crew-safety",
    "responsibility",
    "split",
    "consents",
    "proof-of-notice",
    "contractor-standing",
    "holds-and-waivers",
  ]);
  // Slope and load come only where something is measured or counted, or where they are asked for;
  // what was built comes after the work.
  expect([...kinds, "capacity", "as-built", "upload"].sort()).toEqual([...SHEET_KINDS].sort());
});

test("composePacket() has worker safety by the work in force, each rule with where it is written", () => {
  const text = textOf(composePacket(sampleLine()), "crew-safety") ?? "";
  expect(text).toContain("A competent person inspects the trench each day");
  expect(text).toContain("(29 CFR 1926.651(k)(1))");
  expect(text).toContain("Hydrogen sulfide");
  expect(text).not.toMatch(/memory/i);
});

test("composePacket() says what is missing: mandatory requirements that are not in hand", () => {
  const { missing } = composePacket(sampleLine());
  expect(missing.some((line) => line.startsWith("Recorded easement: "))).toBe(true);
  expect(missing.some((line) => line.startsWith("Consent of all owners: "))).toBe(true);
  expect(missing.some((line) => line.startsWith("Photographs"))).toBe(false);
});

test("composePacket() counts a requirement in hand when a file was added for it", () => {
  const packet = packetWith({
    uploads: [anUpload("easement")],
    requirementMarks: [aRequirementMark("r-easement", { uploadId: "easement" })],
  });
  expect(check(packet, "r-easement")?.state).toBe("in-hand");
  expect(packet.missing.some((line) => line.startsWith("Recorded easement"))).toBe(false);
  expect(packet.sheets.at(-1)).toMatchObject({
    kind: "upload",
    title: "Recorded easement (easement.pdf)",
    uploadId: "easement",
  });
});

test("composePacket() keeps an expired licence missing, even if somebody marks it as in hand", () => {
  const line = sampleLine();
  const office = anOffice({ licenceExpiresOn: "2026-11-24" });
  const marks = [aRequirementMark("r-standing")];
  const packet = composePacket({
    ...line,
    office,
    file: { ...line.file, requirementMarks: marks },
  });
  expect(check(packet, "r-standing")?.state).toBe("missing");
  expect(packet.missing.join(" ")).toContain("expired on November 24, 2026");
  expect(textOf(packet, "contractor-standing")).toContain("EXPIRED");
});

test("composePacket() tells of expired papers also where the authority asks for none", () => {
  const line = sampleLine();
  const office = anOffice({ bond: "", insuranceExpiresOn: "2026-01-31" });
  const packet = composePacket({ ...line, office, file: { ...line.file, authority: null } });
  expect(packet.missing).toEqual([
    "The authority is not chosen; what it asks for is unknown.",
    "Bond: not on file.",
    "Liability insurance Harbour Mutual 55-0102 expired on January 31, 2026.",
  ]);
});

test("composePacket() names open holds that stop submission, and prints waived ones with their reason", () => {
  const line = sampleLine();
  const hold = aHold("easement-missing:x2", {
    stops: ["submission"],
    sentence: "No easement at x2.",
  });
  const report = { ...line.report, holds: [...line.report.holds, hold] };
  const packet = composePacket({ ...line, report });
  expect(packet.missing).toContain("No easement at x2.");
  expect(textOf(packet, "holds-and-waivers")).toContain("The authority's inspector stands by");
});

test("composePacket() calls a split stale once facts have changed", () => {
  const line = sampleLine();
  const splits = line.report.splits.map((outcome) => ({ ...outcome, basis: "other" }));
  const packet = composePacket({ ...line, report: { ...line.report, splits } });
  expect(packet.missing).toContain("Split no. 2 is stale: facts have changed since it was chosen.");
  expect(textOf(packet, "split")).toContain("stale");
});

test("composePacket() shows signatures on another amount as superseded", () => {
  const packet = packetWith({
    splits: [
      aSplit("split-9", {
        number: 9,
        basis: "basis-1",
        shares: [{ propertyId: "p12", tieInId: null, amount: 1, recoverable: 0 }],
      }),
    ],
  });
  expect(textOf(packet, "consents")).toContain("signed on a superseded amount");
});

test("composePacket() sets the record against the camera, unpaired ones from both sides", () => {
  const schedule = textOf(composePacket(sampleLine()), "schedule-of-connections");
  expect(schedule).toContain('["T1","18.2","1.0","House 12","18.4"');
  expect(schedule).toContain('["T3","43.1","1.0","none","–"');
  expect(schedule).toContain('["none","–","–","House 20","86.0"');
  expect(schedule).toContain("on record and seen (proposed)");
});

test("composePacket() lists deliveries with tracking and what became of them", () => {
  const notices = textOf(composePacket(sampleLine()), "proof-of-notice");
  expect(notices).toContain("9407 1000 0000 0000 0001");
  expect(notices).toContain("arrived November 19, 2026, by its tracking number");
  expect(notices).toContain("came back November 22, 2026");
});

test("composePacket() encloses each stored file once", () => {
  const packet = packetWith({
    uploads: [anUpload("signed")],
    consents: [
      aConsent("one", { partyId: "ottilie", propertyId: "p12", uploadId: "signed" }),
      aConsent("two", { kind: "enter", partyId: "ottilie", propertyId: "p12", uploadId: "signed" }),
    ],
  });
  expect(packet.sheets.filter(({ kind }) => kind === "upload").map(({ title }) => title)).toEqual([
    "Signed by Ottilie Brandvold (signed.pdf)",
  ]);
});

test("contractorStanding() counts the last day itself as in force", () => {
  const office = anOffice({ licenceExpiresOn: "2026-11-25", bondExpiresOn: null });
  expect(contractorStanding(office, "2026-11-25").map(({ state }) => state)).toEqual([
    "in-force",
    "expiry-unknown",
    "in-force",
  ]);
  expect(contractorStanding(office, "2026-11-26")[0]?.state).toBe("expired");
});
