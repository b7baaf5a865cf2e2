import { expect, test } from "vitest";
import { consentTable } from "#lib/domain/consent/table.ts";
import { signersFor } from "#lib/domain/party/signers.ts";
import { aConsent, aFile, aParty, aProperty, aRole } from "#tests/support/file.ts";

test("signersFor() wants every title holder, a contract purchaser too, each once", () => {
  const file = aFile({
    parties: [aParty("ada"), aParty("bo"), aParty("cy"), aParty("dee")],
    roles: [
      aRole("ada", "p"),
      aRole("bo", "p"),
      aRole("bo", "p", { role: "contract-purchaser" }),
      aRole("cy", "p", { role: "occupant" }),
      aRole("dee", "p", { role: "manager" }),
      aRole("cy", "other"),
    ],
  });
  expect(signersFor(file, "p").map(({ partyId }) => partyId)).toEqual(["ada", "bo"]);
});

test("signersFor() takes the owner of a lot that is only crossed", () => {
  const file = aFile({
    parties: [aParty("ada")],
    roles: [aRole("ada", "p", { role: "crossed-lot-owner" })],
  });
  expect(signersFor(file, "p")).toHaveLength(1);
});

test("signersFor() takes the association where no title holder is known", () => {
  const parties = [aParty("hoa", { kind: "association" }), aParty("ada")];
  const hoa = aRole("hoa", "p", { role: "association", capacity: "president" });
  expect(signersFor(aFile({ parties, roles: [hoa] }), "p")).toEqual([
    {
      ...{ partyId: "hoa", role: "association", name: "hoa, by its president" },
      ...{ holder: "hoa", capacity: "president", capacityMissing: false, heldWith: "" },
    },
  ]);
  const withOwner = aFile({ parties, roles: [hoa, aRole("ada", "p")] });
  expect(signersFor(withOwner, "p").map(({ partyId }) => partyId)).toEqual(["ada"]);
});

test("signersFor() says where nobody knows who signs for a trust or a firm", () => {
  const parties = [
    aParty("trust", { kind: "trust", name: "Winfield Family Trust" }),
    aParty("firm", { kind: "firm", name: "Larkspur Holdings LLC" }),
    aParty("ada", { name: "Ada Winfield" }),
  ];
  const roles = [
    aRole("trust", "p"),
    aRole("firm", "p", { capacity: "managing member" }),
    aRole("ada", "p", { capacity: "a widow" }),
  ];
  expect(
    signersFor(aFile({ parties, roles }), "p").map(({ name, capacityMissing }) => [
      name,
      capacityMissing,
    ]),
  ).toEqual([
    ["Winfield Family Trust", true],
    ["Larkspur Holdings LLC, by its managing member", false],
    ["Ada Winfield", false],
  ]);
});

test("signersFor() is empty where nobody is entered", () => {
  expect(signersFor(aFile(), "p")).toEqual([]);
});

test("a consent is never on file for all while an owner is not named", () => {
  const pair = aFile({
    properties: [aProperty("12")],
    parties: [aParty("ein")],
    roles: [aRole("ein", "12", { heldWith: "wife, not named" })],
    consents: [aConsent("c1", { kind: "dig", partyId: "ein", propertyId: "12" })],
  });
  const cellOf = (file: typeof pair) => consentTable(file)[0]?.cells["dig"];
  expect(cellOf(pair)).toMatchObject({ inHand: false, open: [], signed: ["ein"] });
  const known = { ...pair, roles: [aRole("ein", "12")] };
  expect(cellOf(known)).toMatchObject({ inHand: true });
});
