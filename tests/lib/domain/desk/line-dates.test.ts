import { expect, test } from "vitest";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import { lineDates } from "#lib/domain/desk/line-dates.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { aDelivery, aFile, aNotice, anInspection, aParty, aPermit } from "#tests/support/file.ts";
import { aReport } from "#tests/support/report.ts";

const TODAY = "2026-11-25";

function datesOf(file: LineFile) {
  const report = aReport({ today: TODAY, clocks: clocksOf(file, TODAY) });
  return lineDates(file, report, dueThings(file, report));
}

const sent = (id: string, replyBy: string) =>
  aNotice(id, { partyId: id, state: "sent", sentAt: "2026-11-20T17:00:00Z", replyBy });
const FILE = aFile({
  parties: ["a", "b", "c"].map((id) => aParty(id, { name: `${id} Winfield` })),
  notices: [sent("a", "2026-12-01"), sent("b", "2026-12-01"), sent("c", "2026-12-04")],
  deliveries: ["a", "b", "c"].map((id) => aDelivery(id, id)),
  permits: [aPermit("p")],
  inspections: [anInspection("i", "p")],
});

test("lineDates() counts the replies of a day and names no reader", () => {
  const dates = datesOf(FILE);
  expect(dates.filter(({ key }) => key.startsWith("replies:"))).toMatchObject([
    { day: "2026-12-01", title: "2 replies due", path: "notices" },
    { day: "2026-12-04", title: "1 reply due" },
  ]);
  expect(dates.some(({ key, day }) => key.startsWith("inspection:") && day === "2026-12-02")).toBe(
    true,
  );
  expect(JSON.stringify(dates)).not.toContain("Winfield");
});

test("lineDates() keeps a key for a thing whose day moves, and each key once", () => {
  const keys = datesOf(FILE).map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  const moved = {
    ...FILE,
    inspections: [anInspection("i", "p", { bookedFor: "2026-12-09" })],
  };
  expect(datesOf(moved).map(({ key }) => key)).toEqual(
    expect.arrayContaining(keys.filter((key) => key.startsWith("inspection:"))),
  );
});

test("lineDates() of a closed file is empty", () => {
  expect(datesOf({ ...FILE, line: { ...FILE.line, closedOn: TODAY } })).toEqual([]);
});
