import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { UTILITY_ANSWERS, type UtilityResponse } from "#lib/domain/facts/utility-response.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  aLocateTicket,
  aPermit,
  aPermitStep,
  aUtilityResponse,
} from "#tests/support/file.ts";

const TICKET = aLocateTicket("ticket", { calledOn: "2026-11-20" });

function held(responses: readonly UtilityResponse[], more: Partial<LineFile> = {}) {
  const file = { ...aFile(), locateTickets: [TICKET], utilityResponses: responses, ...more };
  return reportOn(file, "2026-11-25")
    .holds.filter(({ cause }) => cause === "utility-open")
    .map(({ sentence }) => sentence);
}

describe("a utility that has not marked or cleared the dig", () => {
  test("stops digging and bursting, whatever else it said", () => {
    const open = UTILITY_ANSWERS.filter(
      (answer) => held([aUtilityResponse("gas", { answer })]).length > 0,
    );
    expect(open).toEqual(["awaited", "marked-in-part", "wants-time", "wants-to-meet", "no-access"]);
    expect(held([aUtilityResponse("gas", { answer: "no-access" })])).toEqual([
      "Harbor Gas could not get in to mark: its lines in the ground are not marked.",
    ]);
  });

  test("marks are good through their last day and no longer", () => {
    expect(held([aUtilityResponse("gas", { goodUntil: "2026-11-25" })])).toEqual([]);
    expect(held([aUtilityResponse("gas", { goodUntil: "2026-11-24" })])).toEqual([
      "Harbor Gas marks expired November 24, 2026: its lines in the ground are not marked.",
    ]);
  });

  test("only the newest ticket counts, and nothing once the work is final", () => {
    const awaited = aUtilityResponse("gas", { answer: "awaited" });
    const newer = aLocateTicket("newer", { calledOn: "2026-11-23" });
    expect(held([awaited], { locateTickets: [TICKET, newer] })).toEqual([]);
    const final = {
      permits: [aPermit("p")],
      permitSteps: [aPermitStep("s", "p", { state: "final" })],
    };
    expect(held([awaited], final)).toEqual([]);
  });
});
