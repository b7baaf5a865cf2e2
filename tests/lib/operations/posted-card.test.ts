import { describe, expect, test } from "vitest";
import { insertRow } from "#db/queries/row.ts";
import { permitStateOf } from "#lib/domain/permit/steps.ts";
import { type PostedCard, postCard } from "#lib/operations/post-card.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { aPermit } from "#tests/support/file.ts";
import { aDesk, agreeToWork, anAct, callLocate, fileOf, must } from "#tests/support/office.ts";

const CARD = { postedOn: "2026-11-24", postedBy: " Sami Orlov ", postedPlace: "Front gate" };
const KEPT = { ...CARD, postedBy: "Sami Orlov" };
const NONE = { postedOn: null, postedBy: "", postedPlace: "" };

/** A line with an issued permit. */
function desk() {
  const { act, lineId } = aDesk();
  agreeToWork(act, lineId);
  callLocate(act, lineId);
  insertRow(act.db, "permits", { lineId, row: aPermit("permit", { number: "SS-1" }) });
  const at = { lineId, permitId: "permit" };
  const step = (state: "submitted" | "issued" | "working", card?: PostedCard) =>
    stepPermit(act, { ...at, state, on: act.today, note: "", ...(card ? { card } : {}) });
  must(step("submitted"));
  must(step("issued"));
  const permit = () => fileOf(act, lineId).permits[0];
  const told = () => fileOf(act, lineId).history.map(({ sentence }) => sentence);
  return { act, at, lineId, step, permit, told };
}

describe("the step by which the work begins", () => {
  test("takes the posted card down with it, in one entry of the history", () => {
    const { act, lineId, step, permit, told } = desk();
    must(step("working", CARD));
    expect(permit()).toMatchObject(KEPT);
    expect(permitStateOf(fileOf(act, lineId), { id: "permit" })).toBe("working");
    expect(told().at(-1)).toBe(
      "Side sewer permit SS-1: work in progress, November 25, 2026. Card posted November 24, 2026 by Sami Orlov (Front gate).",
    );
  });

  test("says nothing of the card where nobody did, and keeps what was said before", () => {
    const { step, permit, told } = desk();
    must(step("working", NONE));
    expect(permit()).toMatchObject(NONE);
    expect(told().at(-1)).not.toMatch(/card/i);
    const other = desk();
    must(postCard(other.act, { ...other.at, ...CARD }));
    must(other.step("working", NONE));
    expect(other.permit()).toMatchObject(KEPT);
  });

  test("is not recorded with a card that has no day or one to come", () => {
    const { act, lineId, step, permit } = desk();
    expect(step("working", { ...NONE, postedPlace: "Gate" })).toMatchObject({
      error: { reason: "missing-value", path: "postedOn" },
    });
    expect(step("working", { ...CARD, postedOn: "2026-11-26" })).toMatchObject({
      error: { path: "postedOn" },
    });
    expect(permitStateOf(fileOf(act, lineId), { id: "permit" })).toBe("issued");
    expect(permit()).toMatchObject(NONE);
  });
});

describe("postCard()", () => {
  test("takes the card down, corrects it and takes it back, each once in the history", () => {
    const { act, at, permit, told } = desk();
    must(postCard(act, { ...at, ...CARD }));
    expect(permit()).toMatchObject(KEPT);
    const once = told().length;
    must(postCard(act, { ...at, ...CARD }));
    expect(told()).toHaveLength(once);
    must(postCard(act, { ...at, ...CARD, postedPlace: "Truck window" }));
    expect(told().at(-1)).toBe(
      "Side sewer permit SS-1: card posted November 24, 2026 by Sami Orlov (Truck window).",
    );
    must(postCard(act, { ...at, ...NONE }));
    expect(permit()).toMatchObject(NONE);
    expect(told().at(-1)).toBe("Side sewer permit SS-1: card not posted.");
  });

  test("refuses a day to come, one that is none, a place without a day, no permit, and a viewer", () => {
    const { act, at } = desk();
    for (const postedOn of ["2026-11-26", "2026-02-30"])
      expect(postCard(act, { ...at, ...CARD, postedOn })).toMatchObject({
        error: { path: "postedOn" },
      });
    expect(postCard(act, { ...at, ...CARD, postedOn: null })).toMatchObject({
      error: { reason: "missing-value", path: "postedOn" },
    });
    expect(postCard(act, { ...at, ...CARD, permitId: "gone" })).toMatchObject({
      error: { reason: "not-found" },
    });
    expect(postCard(anAct(act.db, { role: "viewer" }), { ...at, ...CARD })).toMatchObject({
      error: { reason: "not-allowed" },
    });
  });
});
