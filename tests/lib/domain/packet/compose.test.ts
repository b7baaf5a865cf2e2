import { expect, test } from "vitest";
import { contractorStanding } from "#lib/domain/clocks/contractor-standing.ts";
import { endOfWork } from "#lib/domain/clocks/work-end.ts";
import { SHEET_KINDS, type SheetKind } from "#lib/domain/facts/authority.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import type { PacketInput } from "#lib/domain/packet/packet-input.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aHold } from "#tests/support/answers.ts";
import {
  aConsent,
  aFile,
  anAnchor,
  anAuthority,
  anEvent,
  anObservation,
  anOffice,
  anUpload,
  aPermit,
  aPermitStep,
  aRequirement,
  aRequirementMark,
  aRun,
  aSplit,
} from "#tests/support/file.ts";
import { askingFor, sampleLine } from "#tests/support/sample-line.ts";

function packetWith(change: Partial<PacketInput["file"]>, kinds: readonly SheetKind[] = []) {
  const line = askingFor(kinds, sampleLine());
  return composePacket({ ...line, file: { ...line.file, ...change } });
}

function check(packet: ReturnType<typeof composePacket>, id: string) {
  return packet.checks.find(({ requirementId }) => requirementId === id);
}

function textOf(packet: ReturnType<typeof composePacket>, kind: (typeof SHEET_KINDS)[number]) {
  return JSON.stringify(packet.sheets.find((sheet) => sheet.kind === kind)?.blocks);
}

test("composePacket() holds the sheets that the authority asks for, as a clerk reads, and no more", () => {
  const kinds = (input: PacketInput) => composePacket(input).sheets.map(({ kind }) => kind);
  expect(kinds(sampleLine())).toEqual([
    "application",
    "line-drawing",
    "crew-safety",
    "consents",
    "contractor-standing",
  ]);
  const later: readonly SheetKind[] = ["as-built", "upload"];
  expect(kinds(askingFor(SHEET_KINDS, sampleLine()))).toEqual(
    SHEET_KINDS.filter((kind) => !later.includes(kind)),
  );
});

test("composePacket() leaves out what is due later, or does not apply here", () => {
  const line = askingFor(["tests", "split"], sampleLine());
  const kinds = (change: Partial<PacketInput["file"]>) =>
    composePacket({ ...line, file: { ...line.file, ...change } }).sheets.map(({ kind }) => kind);
  expect(kinds({})).toEqual(expect.arrayContaining(["tests", "split"]));
  const marks = [aRequirementMark("asks-split", { state: "does-not-apply" })];
  expect(kinds({ requirementMarks: marks })).not.toContain("split");
  const { authority } = line.file;
  const requirements = (authority?.requirements ?? []).map((each) => ({
    ...each,
    due: each.sheet === "tests" ? ("final" as const) : each.due,
  }));
  const packet = composePacket({
    ...line,
    file: { ...line.file, authority: authority && { ...authority, requirements } },
  });
  expect(packet.sheets.map(({ kind }) => kind)).not.toContain("tests");
  expect(packet.missing.join(" ")).not.toContain("tests:");
  expect(packet.checks.find(({ title }) => title === "tests")?.due).toBe("final");
});

test("composePacket() keeps the neighbors’ amounts, refusals, tests and waivers out unless asked", () => {
  const signed = {
    uploads: [anUpload("letter"), anUpload("dig")],
    consents: [
      aConsent("pay", {
        kind: "pay",
        partyId: "ottilie",
        propertyId: "p12",
        splitId: "split-1",
        amount: 318_333,
        uploadId: "letter",
      }),
      aConsent("no", { partyId: "georgina", propertyId: "p9", state: "refused" }),
      aConsent("yes", { partyId: "jesus", propertyId: "p14", uploadId: "dig" }),
    ],
  };
  const plain = packetWith(signed, ["scope"]);
  const words = JSON.stringify(plain.sheets);
  for (const secret of [
    "$3,183.33",
    "refused",
    "superseded",
    "letter.pdf",
    "to pay",
    "inspector stands by",
  ])
    expect(words).not.toContain(secret);
  expect(textOf(plain, "consents")).toContain("given, in effect");
  expect(textOf(plain, "consents")).toContain("not received");
  expect(words).toContain("dig.pdf");
  expect(textOf(plain, "scope")).toContain("Value of the work");
  expect(textOf(plain, "scope")).not.toContain("$100.00 a");
  expect(plain.contents).toEqual([
    "Left out on purpose, since Quillhaven Sewer Utility does not ask for them: the camera’s log, tests, responsibility by section, who pays what, letters and their delivery, and holds and waivers.",
  ]);
  const asked = JSON.stringify(packetWith(signed, ["split", "holds-and-waivers", "tests"]).sheets);
  for (const told of ["$3,183.33", "refused", "letter.pdf", "inspector stands by"])
    expect(asked).toContain(told);
});

test("composePacket() draws north on the strip where the line's bearing is known", () => {
  const line = sampleLine();
  const northOn = (bearing: number | null) =>
    composePacket({
      ...line,
      file: { ...line.file, line: { ...line.file.line, bearing } },
    }).sheets.find(({ kind }) => kind === "line-drawing")?.drawing?.north;
  expect(northOn(76)).toMatchObject({ turn: 14, words: expect.stringContaining("N 76° E") });
  expect(northOn(null)).toBeNull();
});

test("composePacket() makes a usual set without private sums where no list is on file, and says so", () => {
  const line = sampleLine();
  const packet = composePacket({ ...line, file: { ...line.file, authority: null } });
  expect(packet.sheets.map(({ kind }) => kind)).toEqual([
    "application",
    "line-drawing",
    "schedule-of-connections",
    "observation-log",
    "scope",
    "crew-safety",
    "consents",
    "contractor-standing",
  ]);
  expect(packet.contents[0]).toBe(
    "What the authority asks for is not on file. These are the sheets that most counters ask for; no amounts, refusals, tests or waivers are among them.",
  );
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

test("composePacket() keeps an expired license missing, even if somebody marks it as in hand", () => {
  const line = sampleLine();
  const office = anOffice({ licenseExpiresOn: "2026-11-24" });
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

test("composePacket() says of a hold only that the packet is a draft, and prints waivers where asked", () => {
  const line = askingFor(["holds-and-waivers"], sampleLine());
  const hold = aHold("easement-missing:x2", {
    stops: ["submission"],
    sentence: "No easement at x2.",
  });
  const report = { ...line.report, holds: [...line.report.holds, hold] };
  const plain = composePacket({ ...sampleLine(), report });
  expect(plain.missing[0]).toBe(
    "This is a draft, not for submission: one hold is open in the office’s file.",
  );
  expect(JSON.stringify(plain)).not.toContain("No easement at x2.");
  const packet = composePacket({ ...line, report });
  expect(packet.missing.join(" ")).toContain("No easement at x2.");
  expect(textOf(packet, "holds-and-waivers")).toContain("The authority's inspector stands by");
});

test("composePacket() calls a split out of date once facts have changed", () => {
  const line = askingFor(["split"], sampleLine());
  const splits = line.report.splits.map((outcome) => ({ ...outcome, basis: "other" }));
  const packet = composePacket({ ...line, report: { ...line.report, splits } });
  expect(packet.missing.join(" ")).toContain(
    "Split No. 2 is out of date: facts have changed since it was chosen.",
  );
  expect(textOf(packet, "split")).toContain("out of date");
});

test("composePacket() says that a split is a proposal before its amounts, so that no page parts them", () => {
  const { sheets } = packetWith({}, ["split"]);
  const kinds = sheets.find(({ kind }) => kind === "split")?.blocks.map(({ kind }) => kind) ?? [];
  expect(kinds.indexOf("caution")).toBeGreaterThanOrEqual(0);
  expect(kinds.indexOf("caution")).toBeLessThan(kinds.indexOf("table"));
});

test("composePacket() shows signatures on another amount as superseded", () => {
  const packet = packetWith(
    {
      splits: [
        aSplit("split-9", {
          number: 9,
          basis: "basis-1",
          shares: [{ propertyId: "p12", tieInId: null, amount: 1, recoverable: 0 }],
        }),
      ],
    },
    ["split"],
  );
  expect(textOf(packet, "consents")).toContain("signed for an earlier amount");
});

test("composePacket() sets the record against the camera, unpaired ones from both sides", () => {
  const schedule = textOf(
    composePacket(askingFor(["schedule-of-connections"], sampleLine())),
    "schedule-of-connections",
  );
  expect(schedule).toContain('["T1","18.2 ± 1.0","House 12","18.4"');
  expect(schedule).toContain('["T3","43.1 ± 1.0","none","–"');
  expect(schedule).toContain('["none","–","House 20","86.0"');
  expect(schedule).toContain("on record and seen (proposed)");
});

test("composePacket() lists deliveries with tracking and what became of them", () => {
  const notices = textOf(
    composePacket(askingFor(["proof-of-notice"], sampleLine())),
    "proof-of-notice",
  );
  expect(notices).toContain("9407 1000 0000 0000 0001");
  expect(notices).toContain("arrived November 19, 2026, by its tracking number");
  expect(notices).toContain("returned November 22, 2026");
});

test("composePacket() gives a stretch of the log from below up, whichever way the camera went", () => {
  const file = aFile({
    runs: [aRun("run", { looks: "downstream" })],
    anchors: [anAnchor("run", { counter: 10_000, station: 0 })],
    observations: [
      anObservation("roots", {
        ...{ kind: "fault", fault: "roots", counter: 6_000, toCounter: 6_500, runId: "run" },
      }),
    ],
    authority: anAuthority({ requirements: [aRequirement("log", { sheet: "observation-log" })] }),
  });
  const report = reportOn(file, "2026-11-25");
  const { sheets } = composePacket({ file, report, office: anOffice() });
  expect(JSON.stringify(sheets)).toContain('["60.0–65.0","35.0–40.0"');
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

const STANDS = { today: "2026-11-25", end: "2026-12-11" };

test("contractorStanding() holds each paper against the end of the work, its last day counting", () => {
  const office = anOffice({
    licenseExpiresOn: "2026-12-11",
    bondExpiresOn: "2026-12-10",
    insuranceExpiresOn: null,
  });
  const papers = contractorStanding(office, STANDS);
  expect(papers.map(({ state }) => state)).toEqual([
    "in-force",
    "ends-before-work",
    "expiry-unknown",
  ]);
  expect(papers[1]?.sentence).toContain(
    "expires on December 10, 2026, before the work ends on December 11, 2026.",
  );
});

test("contractorStanding() calls nothing in force to an end that nobody entered", () => {
  const office = anOffice({ licenseExpiresOn: "2026-11-25", bondExpiresOn: "2026-11-24" });
  const papers = contractorStanding(office, { today: "2026-11-25", end: null });
  expect(papers.map(({ state }) => state)).toEqual([
    "end-of-work-unknown",
    "expired",
    "end-of-work-unknown",
  ]);
  expect(papers[0]?.sentence).toContain("its last day is not entered");
});

test("endOfWork() is the day entered last, else the final’s", () => {
  const events = ["2026-12-11", "2026-12-18"].map((on, at) =>
    anEvent(`e${at}`, { event: "work-ends", on }),
  );
  const permits = [aPermit("p")];
  const permitSteps = [aPermitStep("s", "p", { state: "final", on: "2026-12-20" })];
  expect(endOfWork(aFile({ events, permits, permitSteps }))).toBe("2026-12-18");
  expect(endOfWork(aFile({ permits, permitSteps }))).toBe("2026-12-20");
  expect(endOfWork(aFile({ permits }))).toBeNull();
  const begins = anEvent("b", { event: "work-begins", on: "2026-12-07", lastOn: "2026-12-21" });
  expect(endOfWork(aFile({ events: [begins], permits }))).toBe("2026-12-21");
  expect(endOfWork(aFile({ events: [begins, ...events] }))).toBe("2026-12-21");
});

test("no requirement reads “in hand” because nothing was entered", () => {
  const requirements = SHEET_KINDS.map((sheet) => aRequirement(sheet, { sheet, title: sheet }));
  const permit = aRequirement("street", { permitKind: "street-use", due: "work" });
  const file = aFile({
    line: { upperEnd: null },
    authority: anAuthority({ requirements: [...requirements, permit] }),
  });
  const report = reportOn(file, "2026-11-25");
  const { checks } = composePacket({ file, report, office: anOffice() });
  const green = checks.filter(({ state }) => state === "in-hand").map(({ title }) => title);
  expect(green).toEqual([]);
});
