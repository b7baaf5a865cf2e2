import { expect, test } from "vitest";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { nextWay } from "#lib/domain/notices/next-way.ts";
import { aDelivery, aFile, aNotice, aParty } from "#tests/support/file.ts";

const NOTICE = aNotice("n", { partyId: "ann", state: "sent" });

function next(deliveries: readonly Delivery[], email = "") {
  const parties = [aParty("ann", { email })];
  return nextWay(aFile({ parties, notices: [NOTICE], deliveries }), NOTICE)?.method ?? null;
}

const gone = (
  id: string,
  method: Delivery["method"],
  outcome: Delivery["outcome"] = "returned",
): Delivery => aDelivery(id, "n", { method, outcome, outcomeOn: "2026-11-18" });

test("nothing is offered while a letter is on its way, and none for one that was never brought", () => {
  expect(next([])).toBeNull();
  expect(next([gone("1", "certified", "on-its-way")])).toBeNull();
});

test("what came back is offered the next way that was not tried yet", () => {
  expect(next([gone("1", "certified", "unclaimed")])).toBe("first-class");
  expect(next([gone("1", "mail-message", "failed")])).toBe("first-class");
  expect(next([gone("1", "first-class")])).toBe("by-hand");
  expect(next([gone("1", "certified", "unclaimed"), gone("2", "first-class")])).toBe("by-hand");
  expect(next([gone("1", "first-class"), gone("2", "by-hand", "failed")])).toBe("posted");
});

test("email is offered last, and only to a party with an address; where all failed, nothing is", () => {
  const tried = (["first-class", "by-hand", "posted", "door-hanger"] as const).map((method, at) =>
    gone(String(at), method, "failed"),
  );
  const back = [...tried.slice(1), gone("9", "first-class")];
  expect(next(back)).toBeNull();
  expect(next(back, "ann@example.com")).toBe("mail-message");
});
