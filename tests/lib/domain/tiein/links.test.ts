import { expect, test } from "vitest";
import type { ProposedPairing } from "#lib/domain/findings/report.ts";
import { linksOf } from "#lib/domain/tiein/links.ts";
import { aPairing } from "#tests/support/file.ts";

function proposed(entryId: string, tieInId: string, rest: Partial<ProposedPairing> = {}) {
  const numbers = { distance: 10, rawDistance: 10, tolerance: 140 };
  return {
    entryId,
    tieInId,
    ...numbers,
    band: "same",
    reasons: [],
    nearTie: false,
    ...rest,
  } as const;
}

test("linksOf() takes a person's word before the program's", () => {
  const { byEntry } = linksOf([aPairing("e", "t")], [proposed("e", "other")]);
  expect(byEntry.get("e")?.tieInId).toBe("t");
  expect(byEntry.get("e")?.proposal).toBeNull();
});

test("linksOf() ties nothing by what was refused or lies in conflict", () => {
  const found = linksOf(
    [aPairing("e", "t", { state: "refused" })],
    [proposed("e", "u", { band: "conflict" })],
  );
  expect(found.byEntry.size).toBe(0);
  expect(found.conflicts).toHaveLength(1);
});

test("linksOf() tells of the accepted entry where a tie-in stands on two papers, else of the nearest", () => {
  const two = [proposed("far", "t", { distance: -90 }), proposed("near", "t", { distance: 20 })];
  expect(linksOf([], two).byTieIn.get("t")?.entryId).toBe("near");
  expect(linksOf([aPairing("far", "t")], two).byTieIn.get("t")?.entryId).toBe("far");
});
