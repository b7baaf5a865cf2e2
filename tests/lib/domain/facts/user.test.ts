import { expect, test } from "vitest";
import { type ActorRole, type Deed, mayDo, USER_ROLES } from "#lib/domain/facts/user.ts";

const ROLES: readonly ActorRole[] = [...USER_ROLES, "link-reader", "worker"];

test("mayDo() lets each role do its own, and nobody of the office answer in a reader's place", () => {
  const who = (deed: Deed) => ROLES.filter((role) => mayDo(role, deed));
  expect(who("run-the-office")).toEqual(["admin"]);
  expect(who("work-the-file")).toEqual(["admin", "office"]);
  expect(who("record-the-field")).toEqual(["admin", "office", "field"]);
  expect(who("answer-own-letter")).toEqual(["link-reader"]);
});
