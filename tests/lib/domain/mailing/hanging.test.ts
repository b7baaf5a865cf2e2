import { expect, test } from "vitest";
import { hungLetters } from "#lib/domain/mailing/hanging.ts";
import { aNotice, aProperty, aRole, aUnit } from "../../../support/file.ts";

const about = (partyId: string, propertyId: string | null, more = {}) =>
  aNotice(`to-${partyId}`, { partyId, propertyId, kind: "drain-pause", state: "sent", ...more });

function doors(
  file: Parameters<typeof hungLetters>[0],
  notices: Parameters<typeof hungLetters>[1],
) {
  return hungLetters(file, notices).map(({ notice, property, unit }) => [
    ...[property.id, unit?.name ?? "", notice.partyId],
  ]);
}

const PLEX = {
  properties: [aProperty("16"), aProperty("12")],
  units: ["Unit 1", "Unit 2", "Unit 3"].map((name) => aUnit(`12-${name}`, "12", { name })),
  roles: [
    aRole("landlord", "12"),
    aRole("ann", "12", { role: "occupant", unitId: "12-Unit 1" }),
    aRole("ben", "12", { role: "occupant", unitId: "12-Unit 1" }),
    aRole("owner-16", "16"),
  ],
};

test("each door gets one, in walking order: of those who live there, else what goes to the owner", () => {
  const notices = ["owner-16", "landlord", "ann", "ben"].map((who) =>
    about(who, who === "owner-16" ? "16" : "12"),
  );
  expect(doors(PLEX, notices)).toEqual([
    ["12", "Unit 1", "ben"],
    ["12", "Unit 2", "landlord"],
    ["12", "Unit 3", "landlord"],
    ["16", "", "owner-16"],
  ]);
});

test("two languages at one door are two hangers", () => {
  const notices = [about("ann", "12"), about("ben", "12", { language: "es" })];
  expect(doors({ ...PLEX, units: [] }, notices).map(([, , who]) => who)).toEqual(["ann", "ben"]);
});

test("what is about no property, or about money, hangs nowhere", () => {
  const notices = [about("health", null), about("owner-16", "16", { kind: "demand" })];
  expect(doors(PLEX, notices)).toEqual([]);
});
