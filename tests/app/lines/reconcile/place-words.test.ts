import { expect, test } from "vitest";
import { entryWords } from "#app/lines/[lineId]/reconcile/place-words.ts";
import { aFile, anEntry, aRecord } from "#tests/support/file.ts";

test("a distance that does not count from the main says from where it counts", () => {
  const words = (measuredFrom: "main" | "upper-end" | "unknown") =>
    entryWords(
      aFile({
        records: [aRecord("card", { measuredFrom })],
        entries: [anEntry("e", { distance: 7_450, side: "right" })],
      }),
      "e",
      "south",
    ).place;
  expect(words("main")).toBe("74.5 ft, right, south side");
  expect(words("upper-end")).toBe("74.5 ft from the upper end, right, south side");
  expect(words("unknown")).toBe("74.5 ft as written, from an unknown end, right, south side");
});
