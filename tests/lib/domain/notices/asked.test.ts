import { expect, test } from "vitest";
import { consentsAskedBy } from "#lib/domain/notices/asked.ts";

const visit = (frozen: string | null) => consentsAskedBy({ kind: "test-visit", frozen });

test("consentsAskedBy() takes what a frozen letter says, and of one that can't be read its kind's", () => {
  expect(visit(null)).toEqual(["enter"]);
  expect(visit(JSON.stringify({ asks: [] }))).toEqual([]);
  expect(visit(JSON.stringify({ asks: ["dig", "gold"] }))).toEqual(["dig"]);
  expect(visit(JSON.stringify({ title: "A letter from before" }))).toEqual(["enter"]);
  for (const odd of [" ", "{", "null", "7"]) expect(visit(odd), odd).toEqual(["enter"]);
});
