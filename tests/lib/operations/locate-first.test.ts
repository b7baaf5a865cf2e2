import { expect, test } from "vitest";
import { insertRow } from "#db/queries/row.ts";
import type { LocateTicket, PermitState } from "#lib/domain/facts/permit.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import {
  aClockRule,
  aLand,
  aLocateTicket,
  anAuthority,
  aPermit,
  aRule,
  aScopeItem,
} from "#tests/support/file.ts";
import {
  aDesk,
  addRows,
  agreeToWork,
  anAct,
  measureBranches,
  must,
} from "#tests/support/office.ts";

const DIG = aScopeItem("dig", { title: "Dig", kind: "dig-and-replace", from: 500, to: 1_500 });

/** A line with an issued permit, whose authority opens the locate window two business days after the call. */
function desk(tickets: readonly LocateTicket[], scope: readonly ScopeItem[] = [DIG]) {
  const at = aDesk();
  const { act, lineId } = at;
  agreeToWork(act, lineId);
  const authority = anAuthority({ rules: [aRule("rule")], clockRules: [OPENS, ENDS] });
  must(saveAuthority(anAct(act.db, { role: "admin" }), authority));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: "rule" }));
  addRows(act, { lineId, table: "land" }, [aLand("all", { to: 10_000, propertyId: "12" })]);
  addRows(act, { lineId, table: "scope" }, scope);
  measureBranches(act, lineId);
  insertRow(act.db, "permits", { lineId, row: aPermit("permit") });
  for (const row of tickets) insertRow(act.db, "locateTickets", { lineId, row });
  const step = (state: PermitState) =>
    stepPermit(act, { lineId, permitId: "permit", state, on: act.today, note: "Ok by Dana" });
  return {
    step,
    begin: (state: PermitState = "working") =>
      [step("submitted"), step("issued"), step(state)].at(-1),
  };
}

const RULE = {
  unit: "business-days",
  way: "after",
  countsEventDay: false,
  fullDays: true,
} as const;
const OPENS = aClockRule("opens", {
  ...{ ...RULE, event: "locate-called", count: 2, meaning: "not-before", title: "Dig window" },
});
const ENDS = aClockRule("ends", {
  ...{ ...RULE, unit: "calendar-days", fullDays: false, event: "locate-called", count: 14 },
  ...{ meaning: "expires", title: "Marks" },
});

function refused(words: RegExp) {
  return { ok: false, error: { path: "state", detail: expect.stringMatching(words) } };
}

test("no work that digs begins before 811 was ever called, whichever step says that it began", () => {
  const words = /no locate ticket was called in by that day: call 811/;
  expect(desk([]).begin()).toMatchObject(refused(words));
  expect(desk([]).begin("inspection-requested")).toMatchObject(refused(words));
  expect(desk([]).step("emergency")).toMatchObject(refused(words));
  expect(desk([aLocateTicket("t", { calledOn: "2026-11-26" })]).begin()).toMatchObject(
    refused(words),
  );
});

test("no one digs before the window of the newest ticket opens, nor after its marks have expired", () => {
  const called = (calledOn: string, number = "26-1") => aLocateTicket(number, { calledOn, number });
  expect(desk([called("2026-11-24")]).begin()).toMatchObject(
    refused(
      /^Locate ticket 26-1 was called in on November 24, 2026, and its window opens .*: no one digs before$/,
    ),
  );
  expect(desk([called("2026-10-26")]).begin()).toMatchObject(
    refused(/^Locate ticket 26-1 expired on .*: call 811 again before anyone digs$/),
  );
  expect(desk([called("2026-11-16"), called("2026-11-24", "26-2")]).begin()).toMatchObject(
    refused(/^Locate ticket 26-2 /),
  );
  must(desk([called("2026-11-16")]).begin() ?? { ok: false, error: {} as never });
});

test("emergency work waits for the call and for no window", () => {
  must(desk([aLocateTicket("t", { calledOn: "2026-11-25" })]).step("emergency"));
});

test("work that digs nothing begins without a ticket", () => {
  const lining = aScopeItem("clean", {
    title: "Jet the line",
    kind: "clean",
    from: 500,
    to: 1_500,
  });
  must(desk([], [lining]).begin() ?? { ok: false, error: {} as never });
});
