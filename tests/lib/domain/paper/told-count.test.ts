import { expect, test } from "vitest";
import { toldCount } from "#lib/domain/paper/told-count.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aDelivery,
  aFile,
  aNotice,
  aParty,
  aProperty,
  aReply,
  aRole,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const NAMES = ["ann", "bo", "cy"];

test("toldCount() counts recipients, each for each property, and names who was not written to", () => {
  const facts = {
    properties: [...NAMES.map((name) => aProperty(name)), aProperty("second")],
    parties: NAMES.map((name) => aParty(name)),
    roles: [...NAMES.map((name) => aRole(name, name)), aRole("ann", "second")],
    notices: [
      aNotice("1", { partyId: "ann", propertyId: "ann", state: "sent" }),
      aNotice("2", { partyId: "bo", propertyId: "bo", state: "sent" }),
      aNotice("3", { partyId: "bo", propertyId: "bo", state: "sent", createdOn: "2026-11-20" }),
      aNotice("draft", { partyId: "cy", propertyId: "cy" }),
    ],
    deliveries: [
      aDelivery("d1", "1", { method: "by-hand" }),
      aDelivery("d2", "2", { method: "first-class" }),
      aDelivery("d3", "3", { method: "certified", outcome: "returned", outcomeOn: "2026-11-24" }),
    ],
  };
  const count = (more: object) => {
    const file = aFile({ ...facts, ...more });
    return toldCount(file, reportOn(file, TODAY), "finding");
  };
  expect(count({})).toEqual({
    of: 4,
    written: 2,
    reached: 1,
    answered: 0,
    missing: [
      { partyId: "cy", propertyId: "cy" },
      { partyId: "ann", propertyId: "second" },
    ],
  });
  const replies = [aReply("r", "2")];
  expect(count({ replies })).toMatchObject({ written: 2, reached: 2, answered: 1 });
  expect(count({ notices: [] })).toMatchObject({ of: 4, written: 0 });
});
