import { expect, test } from "vitest";
import { consentTable } from "#lib/domain/consent/table.ts";
import type { ConsentKind } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  aConsent,
  aCrossing,
  aDelivery,
  aFile,
  aLand,
  aNotice,
  aParty,
  aProperty,
  aRole,
  aScopeItem,
  aSplit,
  aTieIn,
} from "#tests/support/file.ts";

/** Two title holders of `p`, which the line crosses from 10 to 20 ft, where it is dug. */
function crossedFile(facts: Parameters<typeof aFile>[0] = {}): LineFile {
  return aFile({
    properties: [aProperty("p", { stake: "crossed" }), aProperty("q")],
    parties: [aParty("ada"), aParty("bo"), aParty("cy")],
    roles: [aRole("ada", "p"), aRole("bo", "p"), aRole("cy", "q")],
    crossings: [aCrossing("c", { propertyId: "p", from: 1_000, to: 2_000 })],
    scope: [aScopeItem("dig", { from: 1_500, to: 2_500 })],
    ...facts,
  });
}

function cell(file: LineFile, propertyId: string, kind: ConsentKind) {
  const row = consentTable(file).find((each) => each.propertyId === propertyId);
  if (row === undefined) throw new Error(`No row for ${propertyId}`);
  return row.cells[kind];
}

const by = (partyId: string, kind: ConsentKind, rest = {}) =>
  aConsent(`${partyId}-${kind}`, { partyId, propertyId: "p", kind, ...rest });

test("consentTable() wants consent to dig where the work lies on a crossed lot, and nowhere else", () => {
  expect(cell(crossedFile(), "p", "dig").needed).toBe(true);
  expect(cell(crossedFile(), "q", "dig").needed).toBe(false);
  const elsewhere = crossedFile({ scope: [aScopeItem("dig", { from: 2_100, to: 2_500 })] });
  expect(cell(elsewhere, "p", "dig").needed).toBe(false);
  const atPoint = crossedFile({
    scope: [aScopeItem("spot", { place: "point", from: 2_000, to: null })],
  });
  expect(cell(atPoint, "p", "dig").needed).toBe(true);
  const general = crossedFile({
    scope: [aScopeItem("fees", { kind: "permit-fee", place: "general", from: null, to: null })],
  });
  expect(cell(general, "p", "dig").needed).toBe(false);
  const anywhere = crossedFile({
    scope: [aScopeItem("dig", { place: "general", from: null, to: null })],
  });
  expect(cell(anywhere, "p", "dig").needed).toBe(true);
});

test("consentTable() wants consent to dig of the lot that lies over what is dug, to enter where it is lined", () => {
  const land = [aLand("lot", { from: 1_200, to: 4_600, propertyId: "q" })];
  const over = (kind: "dig-and-replace" | "line" | "test", rest = {}) =>
    crossedFile({
      crossings: [],
      land,
      scope: [aScopeItem("w", { kind, from: 4_000, to: 4_800, ...rest })],
    });
  expect(cell(over("dig-and-replace"), "q", "dig").needed).toBe(true);
  expect(cell(over("dig-and-replace"), "q", "enter").needed).toBe(true);
  expect(cell(over("line"), "q", "dig").needed).toBe(false);
  expect(cell(over("line"), "q", "enter").needed).toBe(true);
  expect(cell(over("test"), "q", "enter").needed).toBe(false);
  expect(cell(over("dig-and-replace", { from: 4_700 }), "q", "dig").needed).toBe(false);
});

test("consentTable() wants consent to dig of the property whose own branch is worked on", () => {
  const file = crossedFile({
    tieIns: [aTieIn("T1", { propertyId: "q" })],
    scope: [aScopeItem("branch", { place: "branch", from: null, to: null, tieInId: "T1" })],
  });
  expect(cell(file, "q", "dig").needed).toBe(true);
  expect(cell(file, "p", "dig").needed).toBe(false);
});

test("consentTable() has a consent in hand only when all title holders signed", () => {
  const one = crossedFile({ consents: [by("ada", "dig")] });
  expect(cell(one, "p", "dig")).toEqual({
    needed: true,
    inHand: false,
    signed: ["ada"],
    open: [{ partyId: "bo", standing: null }],
  });
  const both = crossedFile({ consents: [by("ada", "dig"), by("bo", "dig")] });
  expect(cell(both, "p", "dig").inHand).toBe(true);
  const refused = crossedFile({
    consents: [by("ada", "dig"), by("bo", "dig", { state: "refused" })],
  });
  expect(cell(refused, "p", "dig")).toMatchObject({
    inHand: false,
    open: [{ partyId: "bo", standing: "refused" }],
  });
});

test("consentTable() lets one person let the crew in, unless another says no", () => {
  const file = crossedFile({ consents: [by("ada", "enter")] });
  expect(cell(file, "p", "enter").inHand).toBe(true);
  const no = crossedFile({
    consents: [by("ada", "enter"), by("bo", "enter", { state: "withdrawn" })],
  });
  expect(cell(no, "p", "enter").inHand).toBe(false);
});

test("consentTable() wants consent to pay of those who have a share in the latest split", () => {
  const shares = [{ propertyId: "q", tieInId: null, amount: 100_000, recoverable: 0 }];
  const file = crossedFile({ splits: [aSplit("s", { shares })] });
  expect(cell(file, "q", "pay").needed).toBe(true);
  expect(cell(file, "p", "pay").needed).toBe(false);
  expect(cell(crossedFile(), "q", "pay").needed).toBe(false);
});

test("consentTable() wants an agreement of all on the pipe once one was asked for it", () => {
  const begun = crossedFile({ consents: [by("ada", "agreement-signed", { state: "asked" })] });
  expect(cell(begun, "q", "agreement-signed").needed).toBe(true);
  expect(cell(begun, "q", "agreement-recorded").needed).toBe(false);
  expect(cell(crossedFile(), "q", "agreement-signed").needed).toBe(false);
});

test("consentTable() has nothing in hand where nobody can sign", () => {
  const file = crossedFile({ roles: [] });
  expect(cell(file, "p", "dig")).toEqual({ needed: true, inHand: false, signed: [], open: [] });
});

test("consentTable() takes a letter that went for asking, by the version that holds, until it comes back", () => {
  const shares = [{ propertyId: "q", tieInId: null, amount: 10_000, recoverable: 0 }];
  const letter = aNotice("n", {
    kind: "proposed-split",
    partyId: "cy",
    propertyId: "q",
    splitId: "s1",
    state: "sent",
  });
  const standing = (facts: Partial<LineFile>) => {
    const { line: _line, ...more } = aFile({ splits: [aSplit("s1", { shares })], ...facts });
    const { notices, deliveries, splits, consents } = more;
    return cell(crossedFile({ notices, deliveries, splits, consents }), "q", "pay").open[0]
      ?.standing;
  };
  expect(standing({})).toBeNull();
  expect(standing({ notices: [{ ...letter, state: "draft" }] })).toBeNull();
  expect(standing({ notices: [letter] })).toBe("asked");
  const back = aDelivery("d", "n", { outcome: "returned", outcomeOn: "2026-11-20" });
  expect(standing({ notices: [letter], deliveries: [back] })).toBeNull();
  const splits = [aSplit("s1", { shares }), aSplit("s2", { number: 2, shares })];
  expect(standing({ notices: [letter], splits })).toBeNull();
  const no = aConsent("no", { kind: "pay", partyId: "cy", propertyId: "q", state: "refused" });
  expect(standing({ notices: [letter], consents: [no] })).toBe("refused");
});
