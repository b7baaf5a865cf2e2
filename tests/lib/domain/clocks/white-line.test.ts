import { describe, expect, test } from "vitest";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { planStart } from "#lib/domain/clocks/start-plan.ts";
import { whiteLineBar, whiteLined } from "#lib/domain/clocks/white-line.ts";
import { digCard } from "#lib/domain/crew/dig-card.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { LocateTicket } from "#lib/domain/facts/permit.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aClockRule, aFile, aLocateTicket, anAuthority } from "#tests/support/file.ts";

const TODAY = "2026-11-25";

const ASKS = aClockRule("Locate marks", {
  ...{ event: "locate-called", count: 2, unit: "business-days", fullDays: true, roll: "none" },
  ...{ meaning: "not-before", whiteLineFirst: true, citation: "RCW 19.122.030" },
});

// RCW 19.122.030(1)(a): the excavator marks the boundary in white paint, then gives notice.
function fileWith(ticket: Partial<LocateTicket> | null, rule = ASKS): LineFile {
  const called = { calledOn: "2026-11-16", number: "26-1" };
  return aFile({
    authority: anAuthority({ clockRules: [rule] }),
    locateTickets: ticket === null ? [] : [aLocateTicket("t", { ...called, ...ticket })],
  });
}

const LATE =
  "locate ticket 26-1 was called in on November 16, 2026, before the dig area was white-lined on November 17, 2026: call 811 again";
const UNSAID =
  "no white-lining is on file for locate ticket 26-1, and the dig area has to be marked in white before the call";

describe("where the rule of the call asks for white-lining", () => {
  test("a ticket called before it, or without it, is said with the rule’s citation", () => {
    expect(whiteLineBar(fileWith({ whiteLinedOn: "2026-11-17" }))).toEqual({
      because: LATE,
      citation: "RCW 19.122.030",
    });
    expect(whiteLineBar(fileWith({}))?.because).toBe(UNSAID);
    expect(whiteLineBar(fileWith({ whiteLinedOn: "2026-11-16" }))).toBeNull();
    expect(whiteLineBar(fileWith({ whiteLinedOn: "2026-11-13" }))).toBeNull();
    expect(whiteLineBar(fileWith(null))).toBeNull();
  });

  test("only the ticket called last is asked", () => {
    const file = fileWith({ whiteLinedOn: "2026-11-17" });
    const again = aLocateTicket("t2", { calledOn: "2026-11-18", whiteLinedOn: "2026-11-17" });
    const both = { ...file, locateTickets: [...file.locateTickets, again] };
    expect(whiteLineBar(both)).toBeNull();
  });

  test("the start waits for it, and the dig card stops", () => {
    const start = (ticket: Partial<LocateTicket>) =>
      earliestStart(fileWith(ticket), TODAY).bars.map(({ because }) => because);
    expect(start({ whiteLinedOn: "2026-11-17" })).toContain(LATE);
    expect(start({})).toContain(UNSAID);
    expect(start({ whiteLinedOn: "2026-11-13" }).join(" ")).not.toMatch(/white/);
    const stops = (ticket: Partial<LocateTicket>) => {
      const file = fileWith(ticket);
      return digCard(file, reportOn(file, TODAY), TODAY).stops;
    };
    expect(stops({ whiteLinedOn: "2026-11-17" })).toContain(
      `${LATE.replace("locate ticket", "Locate ticket")}.`,
    );
    expect(stops({ whiteLinedOn: "2026-11-13" }).join(" ")).not.toMatch(/white/i);
  });

  test("the start plan has it by the day of the call, ahead of the call", () => {
    const steps = planStart(fileWith(null), "2026-12-01", TODAY);
    expect(steps.map(({ title, event, by }) => [title, event, by])).toEqual([
      ["White-line the dig area", null, "2026-11-26"],
      ["Locate marks", "locate-called", "2026-11-26"],
    ]);
    expect(steps[0]?.citation).toBe("RCW 19.122.030");
  });
});

test("nothing is said of white-lining where no rule of a call asks for it", () => {
  const silent = { ...ASKS, whiteLineFirst: false };
  const other = { ...ASKS, event: "permit-issued" as const };
  for (const rule of [silent, other]) {
    const file = fileWith({ whiteLinedOn: "2026-11-17" }, rule);
    expect(whiteLineBar(file)).toBeNull();
    expect(planStart(file, "2026-12-01", TODAY).map(({ title }) => title)).not.toContain(
      "White-line the dig area",
    );
  }
  expect(whiteLineBar(aFile({ locateTickets: [aLocateTicket("t")] }))).toBeNull();
});

test("whiteLined() says the day, the person, the way and whether a photo is on file", () => {
  const ticket = aLocateTicket("t", {
    ...{ whiteLinedOn: "2026-11-24", whiteLinedBy: "Sami Orlov" },
    ...{ whiteLinedHow: "paint-and-flags", whiteLinePhotoId: "u" },
  });
  expect(whiteLined(ticket, TODAY)).toMatch(
    /^White-lined .*, by Sami Orlov, with paint and flags; photo on file$/,
  );
  const bare = aLocateTicket("t", { whiteLinedOn: "2026-11-24" });
  expect(whiteLined(bare, TODAY)).toMatch(/^White-lined [^,]*(, November 24)?; no photo$/);
  expect(whiteLined(aLocateTicket("t"), TODAY)).toBeNull();
});
