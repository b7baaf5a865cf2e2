import { expect, test } from "vitest";
import { entrySpokenOf } from "#lib/domain/reconcile/entry-spoken-of.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFile, anEntry, aRecord } from "#tests/support/file.ts";

// A card measured from the house, on a line of 84 ft: what it has at 18 ft lies 66 ft from the main.
const CARD = aFile({
  line: { upperEnd: 8_400 },
  records: [aRecord("card", { measuredFrom: "upper-end" })],
  entries: [
    anEntry("at-66", { distance: 1_800 }),
    anEntry("at-24", { distance: 6_000 }),
    anEntry("unread", { distance: null }),
  ],
});

function meant(aboutRecord: string, fromMain: number | null, file = CARD): string | undefined {
  const { entries } = reportOn(file, "2026-11-25");
  return entrySpokenOf(file.entries, entries, { aboutRecord, fromMain })?.id;
}

test("where a row lies is held against the station of an entry, whichever end its card measures from", () => {
  expect(meant("that's on the card", 6_600)).toBe("at-66");
  expect(meant("that's on the card", 2_500)).toBe("at-24");
  expect(meant("that's on the card", 4_500)).toBeUndefined();
  expect(meant("that's on the card", null)).toBeUndefined();
  // 60 ft from the main is not the entry that the card has 60 ft from the house.
  expect(meant("that's on the card", 6_000)).not.toBe("at-24");
});

test("a distance that is told of the record is its own, not that of the row told with it", () => {
  const words = "sixty six feet wye on the right the card has it at sixteen";
  expect(meant(words, 6_600)).toBe("at-66");
  expect(meant("the card has it at sixty", 2_400)).toBe("at-24");
  expect(meant("sixty six feet and that's the one on the card", 6_600)).toBe("at-66");
});

test("a told distance that is one entry on the card and another from the main speaks of neither", () => {
  const file = {
    ...CARD,
    entries: [anEntry("a", { distance: 1_800 }), anEntry("b", { distance: 6_600 })],
  };
  expect(meant("the card has it at sixty six", 9_000, file)).toBeUndefined();
});

test("words that deny the record, and name no distance of their own, speak of no entry", () => {
  expect(meant("not on the card", 6_600)).toBeUndefined();
  expect(meant("it's not at eighteen like the card says", 7_000)).toBe("at-66");
});
