import { describe, expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Act } from "#lib/operations/act.ts";
import { chooseOption } from "#lib/operations/choose-option.ts";
import { decideChangeOrder } from "#lib/operations/decide-change-order.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { proposeChangeOrder } from "#lib/operations/propose-change-order.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { aConsent, aLand, aPermit, aPermitStep, aRole, aScopeItem } from "#tests/support/file.ts";
import {
  aDesk,
  addRows,
  agreeToWork,
  callLocate,
  fileOf,
  measureBranches,
  must,
} from "#tests/support/office.ts";

// A line of three houses with a fourth tie-in at 50 ft on no record: an undocumented branch stops
// capping, lining and bursting where it lies, and no digging.

type Desk = ReturnType<typeof aDesk>;

/** What lies between 40 and 60 ft, where the undocumented branch is. */
const OVER = { from: 4_500, to: 5_500 };
/** A foot beyond all that is uncertain about it. */
const BESIDE = { from: 0, to: 3_000 };

function desk(
  scope: readonly ScopeItem[],
  { agreed = true }: { readonly agreed?: boolean } = {},
): Desk & { permitId: string } {
  const at = aDesk({ undocumented: true });
  if (agreed) agreeToWork(at.act, at.lineId);
  addRows(at.act, { lineId: at.lineId, table: "land" }, [
    aLand("all", { to: 10_000, propertyId: "12" }),
  ]);
  measureBranches(at.act, at.lineId);
  addRows(at.act, { lineId: at.lineId, table: "scope" }, scope);
  callLocate(at.act, at.lineId);
  insertRow(at.act.db, "permits", { lineId: at.lineId, row: aPermit("permit") });
  return { ...at, permitId: "permit" };
}

function step({ act, lineId, permitId }: ReturnType<typeof desk>, state: PermitState) {
  return stepPermit(act, { lineId, permitId, state, on: act.today, note: "" });
}

function walk(at: ReturnType<typeof desk>, ...states: PermitState[]): void {
  for (const state of states) must(step(at, state));
}

function waiveAll({ act, lineId }: Desk): void {
  for (const { key, waiver } of reportOn(fileOf(act, lineId), act.today).holds)
    if (waiver === null) must(waiveHold(act, { lineId, holdKey: key, reason: "Camera stands by" }));
}

const HELD = {
  ok: false,
  error: {
    reason: "held",
    detail: expect.stringMatching(
      /not on record.*It stops .*To lift it: .*“Does the record match the camera\?”/,
    ),
  },
};

describe("stepPermit()", () => {
  test.each(["line", "burst", "cap"] as const)(
    "stepPermit() begins no work that would %s over a branch that nobody knows, until it is waived",
    (kind) => {
      const at = desk([aScopeItem("work", { kind, ...OVER })]);
      walk(at, "submitted", "issued");
      expect(step(at, "working")).toMatchObject(HELD);
      waiveAll(at);
      must(step(at, "working"));
    },
  );

  test("stepPermit() lets the same work begin where no hold lies", () => {
    const at = desk([aScopeItem("work", { kind: "line", ...BESIDE })]);
    walk(at, "submitted", "issued", "working", "inspection-requested", "passed-may-backfill");
  });

  test("stepPermit() asks at the inspection too, where the step to work was left out", () => {
    const at = desk([aScopeItem("work", { kind: "line", ...OVER })]);
    walk(at, "submitted", "issued");
    expect(step(at, "inspection-requested")).toMatchObject(HELD);
    walk(at, "extended");
    expect(step(at, "passed-may-backfill")).toMatchObject({
      error: { reason: "not-in-this-state" },
    });
    expect(step(at, "inspection-requested")).toMatchObject(HELD);
  });

  test("stepPermit() asks again before backfill: a hold may have come up in the open trench", () => {
    const at = desk([aScopeItem("work", { kind: "spot-repair", ...OVER })]);
    walk(at, "submitted", "issued", "working", "inspection-requested");
    addRows(at.act, { lineId: at.lineId, table: "scope" }, []);
    insertRow(at.act.db, "scope", {
      lineId: at.lineId,
      row: aScopeItem("plug", { kind: "cap", place: "point", from: 5_000, to: null }),
    });
    expect(step(at, "passed-may-backfill")).toMatchObject(HELD);
  });

  test("stepPermit() counts work whose kind nobody said as the strictest that its words allow", () => {
    const said = desk([aScopeItem("work", { kind: "unknown", title: "Spot repair", ...OVER })]);
    walk(said, "submitted", "issued", "working");
    const unsaid = desk([aScopeItem("work", { kind: "unknown", title: "Mend it", ...OVER })]);
    walk(unsaid, "submitted", "issued");
    expect(step(unsaid, "working")).toMatchObject(HELD);
  });

  test("stepPermit() takes work without a place for the whole line", () => {
    const at = desk([aScopeItem("work", { kind: "line", place: "general", from: null, to: null })]);
    walk(at, "submitted", "issued");
    expect(step(at, "working")).toMatchObject(HELD);
  });
});

describe("branches that the work closes", () => {
  const liner = aScopeItem("work", { kind: "line", title: "Line it", ...BESIDE });

  function unmeasured() {
    const at = desk([liner]);
    const { act, lineId } = at;
    const base = getRevisions(act.db, lineId).reconnections;
    must(saveRows(act, { lineId, table: "reconnections", base, rows: [] }));
    return at;
  }

  test("stepPermit() lines nothing over a branch that is not measured from both ends", () => {
    const at = unmeasured();
    walk(at, "submitted", "issued");
    expect(step(at, "working")).toMatchObject({
      error: {
        reason: "held",
        detail: expect.stringMatching(
          /“Line it” closes or cuts off active branches.*T1 at 20.0 ft is active and not measured from the upper end\..*“Branches to reconnect”/,
        ),
      },
    });
    measureBranches(at.act, at.lineId);
    walk(at, "working");
  });

  test("stepPermit() lets a named person’s waiver through", () => {
    const at = unmeasured();
    walk(at, "submitted", "issued");
    waiveAll(at);
    walk(at, "working");
  });

  test("chooseOption() takes a liner whose branches are still to be measured: only the work waits", () => {
    const at = unmeasured();
    const { act, lineId } = at;
    addRows(act, { lineId, table: "options" }, [{ id: "line", title: "Line", kind: "lining" }]);
    must(chooseOption(act, { lineId, optionId: "line", reason: "Cheapest" }));
  });
});

describe("choosing and changing the work", () => {
  function withOptions() {
    const at = aDesk({ undocumented: true });
    addRows(at.act, { lineId: at.lineId, table: "options" }, [
      { id: "dig", title: "Dig", kind: "spot-repair" },
      { id: "line", title: "Line", kind: "lining" },
    ]);
    addRows(at.act, { lineId: at.lineId, table: "scope" }, [
      aScopeItem("d", { optionId: "dig", ...OVER }),
      aScopeItem("l", { optionId: "line", kind: "line", ...OVER }),
    ]);
    return at;
  }

  test("chooseOption() refuses to line over an unknown branch, and takes the option that digs", () => {
    const { act, lineId } = withOptions();
    const choice = { lineId, reason: "Cheapest" };
    expect(chooseOption(act, { ...choice, optionId: "line" })).toMatchObject(HELD);
    must(chooseOption(act, { ...choice, optionId: "dig" }));
  });

  test("chooseOption() lets a named person’s waiver through", () => {
    const at = withOptions();
    waiveAll(at);
    must(chooseOption(at.act, { lineId: at.lineId, optionId: "line", reason: "Cheapest" }));
  });

  function proposed(item: ScopeItem) {
    const at = desk([]);
    const { act, lineId } = at;
    const order = { lineId, title: "More", reason: "Rock", orderedBy: "Ottilie Brandvold" };
    const { changeOrderId } = must(proposeChangeOrder(act, order));
    addRows(act, { lineId, table: "scope" }, [{ ...item, addedById: changeOrderId }]);
    const decide = (state: "agreed" | "refused") =>
      decideChangeOrder(act, { lineId, changeOrderId, state, by: "All", reason: "Needed" });
    return { at, decide };
  }

  test("decideChangeOrder() agrees to no lining over an unknown branch; refusing it is free", () => {
    const { at, decide } = proposed(aScopeItem("more", { kind: "line", ...OVER }));
    expect(decide("agreed")).toMatchObject(HELD);
    must(decide("refused"));
    const waived = proposed(aScopeItem("more", { kind: "line", ...OVER }));
    waiveAll(waived.at);
    must(waived.decide("agreed"));
    expect(fileOf(at.act, at.lineId).changeOrders[0]?.state).toBe("refused");
  });

  test("decideChangeOrder() agrees to no digging against a hold once work has begun", () => {
    const { at, decide } = proposed(aScopeItem("more", { ...OVER }));
    walk(at, "submitted", "issued", "working");
    insertRow(at.act.db, "crossings", {
      lineId: at.lineId,
      row: {
        ...{ id: "x", propertyId: "12", from: 4_000, to: 6_000, easement: "none" },
        ...{ recordingNumber: "", note: "" },
      },
    });
    expect(decide("agreed")).toMatchObject({ error: { reason: "held" } });
  });

  test("saveRows() prices what it likes before the work begins, and adds nothing that is held after", () => {
    const at = desk([aScopeItem("dig", BESIDE)]);
    const { act, lineId } = at;
    const liner = aScopeItem("liner", { kind: "line", ...OVER });
    const save = () =>
      saveRows(act, {
        ...{ lineId, table: "scope", base: getRevisions(act.db, lineId).scope },
        rows: [aScopeItem("dig", BESIDE), liner],
      });
    walk(at, "submitted", "issued", "working");
    expect(save()).toMatchObject({
      error: {
        reason: "bad-rows",
        cells: [{ row: 1, column: "kind", message: expect.stringContaining("not on record") }],
      },
    });
    const before = desk([aScopeItem("dig", BESIDE)]);
    addRows(before.act, { lineId: before.lineId, table: "scope" }, [liner]);
  });
});

describe("the permits that the work takes", () => {
  const dig = aScopeItem("dig", { from: 0, to: 2_000 });

  function onStreet() {
    const at = desk([dig]);
    const { act, lineId } = at;
    const rows = [
      aLand("street", { to: 1_200, kind: "right-of-way", propertyId: null }),
      aLand("lot", { from: 1_200, to: 10_000, propertyId: "12" }),
    ];
    must(saveRows(act, { lineId, table: "land", base: getRevisions(act.db, lineId).land, rows }));
    return at;
  }

  test("stepPermit() begins no work in the street without a street use permit in force", () => {
    const at = onStreet();
    const { act, lineId } = at;
    walk(at, "submitted", "issued");
    const refused = {
      error: {
        reason: "not-in-this-state",
        path: "state",
        detail: expect.stringMatching(
          /no street use permit.*the street is dug from 0.0 to 12.0 ft/,
        ),
      },
    };
    expect(step(at, "working")).toMatchObject(refused);
    expect(step(at, "inspection-requested")).toMatchObject(refused);
    insertRow(act.db, "permits", { lineId, row: aPermit("street", { kind: "street-use" }) });
    expect(step(at, "working")).toMatchObject(refused);
    const street = { ...at, permitId: "street" };
    walk(street, "submitted", "issued");
    walk(at, "working");
  });

  test("stepPermit() has the street looked at after the sewer is final, and begins no more work there", () => {
    const at = onStreet();
    const { act, lineId } = at;
    insertRow(act.db, "permits", { lineId, row: aPermit("street", { kind: "street-use" }) });
    insertRow(act.db, "permits", { lineId, row: aPermit("more", { kind: "street-use" }) });
    const street = { ...at, permitId: "street" };
    const more = { ...at, permitId: "more" };
    walk(at, "submitted", "issued");
    for (const each of [street, more]) walk(each, "submitted", "issued");
    walk(at, "working");
    walk(street, "working");
    const row = aPermitStep("closed", "permit", { state: "final", on: act.today });
    insertRow(act.db, "permitSteps", { lineId, row });
    expect(step(more, "working")).toMatchObject({
      error: { detail: expect.stringMatching(/is final, so more work needs a new one/) },
    });
    walk(street, "inspection-requested");
  });

  test("stepPermit() begins no work under a permit that is printed to have expired", () => {
    const at = desk([dig]);
    const { act, lineId } = at;
    walk(at, "submitted", "issued");
    updateRow(act.db, "permits", {
      lineId,
      row: aPermit("permit", { number: "SS-1", expiresOn: "2026-11-20" }),
    });
    expect(step(at, "working")).toMatchObject({
      error: { detail: expect.stringMatching(/SS-1 is issued and expired.*extended/) },
    });
  });
});

describe("consent for the land", () => {
  const consent = (at: Desk, kind: "enter" | "dig", partyId = "owner-12") =>
    insertRow(at.act.db, "consents", {
      lineId: at.lineId,
      row: aConsent(`${kind}-${partyId}`, { kind, partyId, propertyId: "12" }),
    });

  test("stepPermit() begins no digging before everybody who owns the lot agreed to it", () => {
    const at = desk([aScopeItem("work", { kind: "dig-and-replace", ...BESIDE })], {
      agreed: false,
    });
    const { act, lineId } = at;
    insertRow(act.db, "roles", { lineId, row: aRole("owner-14", "12") });
    walk(at, "submitted", "issued");
    const refused = {
      error: {
        reason: "not-in-this-state",
        path: "state",
        detail: expect.stringMatching(/^Consent to dig at 12 Fennel Row is not on file: record it/),
      },
    };
    expect(step(at, "working")).toMatchObject(refused);
    expect(step(at, "inspection-requested")).toMatchObject(refused);
    consent(at, "enter");
    consent(at, "dig");
    expect(step(at, "working")).toMatchObject(refused);
    consent(at, "dig", "owner-14");
    walk(at, "working");
  });

  test("stepPermit() lines nothing on a lot that nobody may enter", () => {
    const at = desk([aScopeItem("work", { kind: "line", ...BESIDE })], { agreed: false });
    walk(at, "submitted", "issued");
    expect(step(at, "working")).toMatchObject({
      error: { detail: expect.stringMatching(/^Consent to enter 12 Fennel Row is not on file/) },
    });
    consent(at, "enter");
    walk(at, "working");
  });
});

describe("whose land it is", () => {
  const dig = aScopeItem("dig", { from: 1_200, to: 4_600 });

  test("stepPermit() submits no digging over land that nobody named, and says which stretch", () => {
    const at = desk([dig]);
    const { act, lineId } = at;
    const save = (rows: readonly object[]) =>
      must(saveRows(act, { lineId, table: "land", base: getRevisions(act.db, lineId).land, rows }));
    save([aLand("row", { to: 1_500, kind: "right-of-way", propertyId: null })]);
    expect(step(at, "submitted")).toMatchObject({
      error: {
        reason: "held",
        detail: expect.stringMatching(
          /^The land over the pipe from 15.0 to 46.0 ft.*“Who is on it\?”/,
        ),
      },
    });
    save([
      aLand("row", { to: 1_500, kind: "right-of-way", propertyId: null }),
      aLand("lot", { from: 1_500, to: 5_000, propertyId: "12" }),
    ]);
    walk(at, "submitted");
  });
});

test("settleTieIn() takes down no cap on a branch that is not proven dead", () => {
  const at = aDesk({ undocumented: true });
  const { act, lineId } = at;
  const tieInId =
    fileOf(act, lineId).observations.find(({ id }) => id === "extra")?.tieInId ?? "none";
  const word = { lineId, tieInId, propertyId: null, ownerAccepted: false } as const;
  const cap = { ...word, kind: "capped-stub", reason: "Plugged by the crew" } as const;
  expect(settleTieIn(act, { ...cap, inactive: false })).toMatchObject(HELD);
  must(settleTieIn(act, { ...cap, inactive: true, reason: "Camera saw dry earth behind it" }));
  const known = fileOf(act, lineId).tieIns.find(({ id }) => id !== tieInId)?.id ?? "none";
  expect(settleTieIn(act, { ...cap, tieInId: known, inactive: false })).toMatchObject({
    error: { reason: "missing-value", path: "inactive" },
  });
});

test("sendNotices() announces no work that is held", () => {
  const at = desk([aScopeItem("work", { kind: "line", ...OVER })]);
  const { act, lineId } = at;
  const recipient = { partyId: "owner-12", propertyId: "12", tieInId: null, splitId: null };
  const { noticeIds } = must(
    draftNotices(act, { lineId, kind: "work-start", replyBy: null, recipients: [recipient] }),
  );
  const despite = "The owners know the day already";
  const sending = { lineId, noticeIds, method: "certified", sentOn: act.today, despite } as const;
  const admin: Act = { ...act, actor: { ...act.actor, role: "admin" } };
  expect(sendNotices(admin, sending)).toMatchObject(HELD);
  waiveAll(at);
  must(sendNotices(admin, sending));
});
