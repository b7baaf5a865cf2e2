import { expect, test } from "vitest";
import { formatBytes } from "#app/_components/bytes.ts";
import { viewOf, wordsOf } from "#app/_components/job.ts";
import { readAnswer } from "#app/_components/send-file.ts";
import { inOrder } from "#app/lines/[lineId]/authority/check-order.ts";
import { signerRows } from "#app/lines/[lineId]/notices/consent-cells.ts";
import { othersFor } from "#app/lines/[lineId]/notices/write/others.ts";
import type { ConsentCell, ConsentRow } from "#lib/domain/consent/table.ts";
import { CONSENT_KINDS, type Consent } from "#lib/domain/facts/consent.ts";
import type { Party, Role } from "#lib/domain/facts/party.ts";
import type { PacketCheck } from "#lib/domain/packet/packet.ts";
import { aFile, aNotice } from "#tests/support/file.ts";

function check(requirementId: string, rest: Partial<PacketCheck>): PacketCheck {
  return {
    requirementId,
    title: requirementId,
    state: "in-hand",
    mandatory: true,
    due: "submission",
    sentence: "",
    why: "",
    citation: "",
    ...rest,
  };
}

test("inOrder() puts what is missing and always asked for first, what does not apply last", () => {
  const checks = [
    check("none", { state: "does-not-apply" }),
    check("have", {}),
    check("maybe", { state: "missing", mandatory: false }),
    check("must", { state: "missing" }),
  ];
  expect(inOrder(checks).map((each) => each.requirementId)).toEqual([
    "must",
    "maybe",
    "have",
    "none",
  ]);
});

const OPEN: ConsentCell = {
  needed: true,
  inHand: false,
  signed: [],
  open: [{ partyId: "ann", standing: null }],
};

const ROW: ConsentRow = {
  propertyId: "p1",
  signers: [
    {
      ...{ partyId: "ann", role: "owner", name: "Ann", holder: "Ann", capacity: "" },
      ...{ capacityMissing: false, heldWith: "" },
    },
  ],
  cells: Object.fromEntries(CONSENT_KINDS.map((kind) => [kind, OPEN])) as ConsentRow["cells"],
};

function consent(id: string, rest: Partial<Consent>): Consent {
  return {
    id,
    kind: "enter",
    partyId: "ann",
    propertyId: "p1",
    state: "given",
    stateOn: "2026-11-10",
    splitId: null,
    amount: null,
    recordingNumber: "",
    uploadId: null,
    note: "",
    restsOnId: null,
    enteredBy: "",
    ...rest,
  };
}

test("signerRows() shows the newest word of each signer, and what is needed and not asked", () => {
  const consents = [
    consent("new", { state: "withdrawn", stateOn: "2026-11-12" }),
    consent("old", { stateOn: "2026-11-10" }),
  ];
  const [row] = signerRows(aFile({ consents }), [ROW]);
  expect(row?.cells.find((cell) => cell.kind === "enter")?.consent?.id).toBe("new");
  expect(row?.cells.find((cell) => cell.kind === "dig")).toEqual({
    kind: "dig",
    consent: null,
    askedOn: null,
    open: true,
  });
  const notices = [
    aNotice("n", {
      kind: "entry-consent",
      partyId: "ann",
      propertyId: "p1",
      state: "sent",
      createdOn: "2026-11-09",
    }),
  ];
  const [asked] = signerRows(aFile({ consents, notices }), [ROW]);
  expect(asked?.cells.find((cell) => cell.kind === "dig")?.askedOn).toBe("2026-11-09");
  expect(asked?.cells.find((cell) => cell.kind === "enter")?.askedOn).toBeNull();
});

test("signerRows() adds an occupant once something of theirs was recorded", () => {
  const consents = [consent("let-in", { partyId: "tom" })];
  expect(signerRows(aFile({ consents }), [ROW]).map((row) => row.partyId)).toEqual(["ann", "tom"]);
  expect(signerRows(aFile(), [ROW]).map((row) => row.partyId)).toEqual(["ann"]);
});

function role(partyId: string, propertyId: string): Role {
  return {
    id: `${partyId} ${propertyId}`,
    partyId,
    propertyId,
    role: "owner",
    unitId: null,
    capacity: "",
    heldWith: "",
  };
}

const PARTIES = [{ id: "ann", language: "en" }, { id: "ben" }] as Party[];
const ROLES = [role("ann", "p1"), role("ben", "p2"), role("ben", "p2"), role("ben", "p1")];
const TO_ANN = {
  partyId: "ann",
  propertyId: "p1",
  tieInId: null,
  splitId: null,
  language: "en",
} as const;

test("othersFor() offers everybody with a role who is not proposed, once for each property", () => {
  const file = { roles: ROLES, parties: PARTIES, splits: [] };
  expect(othersFor(file, "finding", [TO_ANN])).toEqual([
    { partyId: "ben", propertyId: "p2", tieInId: null, splitId: null },
    { partyId: "ben", propertyId: "p1", tieInId: null, splitId: null },
  ]);
});

test("othersFor() asks others about the tie-ins that the inquiry is about", () => {
  const file = { roles: [role("ben", "p2")], parties: PARTIES, splits: [] };
  const proposed = [
    { ...TO_ANN, tieInId: "t1" },
    { ...TO_ANN, tieInId: "t2" },
  ];
  expect(othersFor(file, "tie-in-inquiry", proposed).map((other) => other.tieInId)).toEqual([
    "t1",
    "t2",
  ]);
});

test("othersFor() offers nobody for a demand, nor for a split that is not chosen", () => {
  const file = { roles: ROLES, parties: PARTIES, splits: [] };
  expect(othersFor(file, "share-demand", [])).toEqual([]);
  expect(othersFor(file, "proposed-split", [])).toEqual([]);
});

test("readAnswer() gives the stored file's id, or a sentence on what is wrong", () => {
  expect(readAnswer(200, '{"id":"u1"}')).toEqual({ ok: true, value: "u1" });
  expect(readAnswer(415, '{"message":"Nothing was stored: a text file."}')).toEqual({
    ok: false,
    error: "Nothing was stored: a text file.",
  });
  expect(readAnswer(502, "<html>")).toMatchObject({ ok: false });
  expect(readAnswer(200, "null")).toMatchObject({ ok: false });
});

test("viewOf() counts what it cannot read as waiting still, and tells the problem of what failed", () => {
  expect(viewOf(null).state).toBe("waiting");
  expect(viewOf({ state: "odd" }).state).toBe("waiting");
  expect(viewOf({ state: "failed", uploadId: null, message: "No font." })).toEqual({
    state: "failed",
    uploadId: null,
    message: "No font.",
  });
});

test("wordsOf() adds why a paper could not be made", () => {
  expect(wordsOf({ state: "failed", uploadId: null, message: "A stored file is damaged." })).toBe(
    "It could not be created. A stored file is damaged.",
  );
});

test("formatBytes() counts in thousands, with a decimal while it is small", () => {
  expect([999, 1000, 9_949, 10_000, 1_000_000, 25_000_000].map(formatBytes)).toEqual([
    "999 bytes",
    "1.0 KB",
    "9.9 KB",
    "10 KB",
    "1.0 MB",
    "25 MB",
  ]);
});
