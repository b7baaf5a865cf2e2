import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { decideAlignment, withdrawAlignment } from "#lib/operations/decide-alignment.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

const REASON = "The clerk says that the card measures from the manhole wall";
const STATIONS = [1_800, 3_400, 5_200, 6_800, 9_100];

/** A card that reads 2.4 ft longer than the camera throughout. */
function line() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "records" }, [
    { id: "card", title: "Card 1184", measuredFrom: "main" },
  ]);
  addRows(
    act,
    { lineId, table: "entries" },
    STATIONS.map((distance, at) => ({
      id: `e${at}`,
      recordId: "card",
      label: `House ${at}`,
      distance: distance + 240,
    })),
  );
  addRows(act, { lineId, table: "runs" }, [
    { id: "r1", name: "Run 1", ranOn: "2026-11-03", looks: "upstream", toCounter: 10_000 },
  ]);
  addRows(act, { lineId, table: "anchors" }, [
    { id: "a1", runId: "r1", counter: 0, station: 0, kind: "main-connection" },
  ]);
  addRows(
    act,
    { lineId, table: "observations" },
    STATIONS.map((counter, at) => ({ id: `o${at}`, runId: "r1", kind: "tie-in", counter })),
  );
  const decide = (state: "accepted" | "refused", shift = -240, reason = REASON) =>
    decideAlignment(act, { lineId, recordId: null, shift, scale: 0, state, reason });
  const alignment = () => reportOn(fileOf(act, lineId), act.today).alignment;
  return { act, lineId, decide, alignment };
}

test("decideAlignment() keeps what was accepted with name, day and reason, and uses it", () => {
  const { act, lineId, decide, alignment } = line();
  expect(alignment()).toMatchObject({ shift: -240, decision: null, plain: 0 });
  must(decide("accepted", -200));
  expect(alignment()).toMatchObject({
    shift: -200,
    explained: 5,
    proposed: { shift: -240, explained: 5 },
    decision: { decidedBy: act.actor.name, decidedOn: act.today, reason: REASON },
  });
  expect(alignment()?.sentence).toBe(
    `Accepted by ${act.actor.name}: the card reads 2.0 ft long throughout, probably a different zero point; with that corrected, 5 of 5 entries are within tolerance, none without it.`,
  );
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    `Accepted that the card reads 2.0 ft long throughout, probably a different zero point. Reason: ${REASON}`,
  );
});

test("decideAlignment() accepts one at most, and refuses what is not proposed again", () => {
  const { act, lineId, decide, alignment } = line();
  must(decide("accepted", -200));
  must(decide("accepted", -250));
  expect(fileOf(act, lineId).alignments.map(({ shift }) => shift)).toEqual([-250]);
  must(decide("refused", -250));
  expect(fileOf(act, lineId).alignments.map(({ state }) => state)).toEqual(["refused"]);
  expect(alignment()).toMatchObject({ shift: 0, scale: 0, explained: 0, decision: null });
});

test("decideAlignment() accepts that a record is in meters or measured from the other end", () => {
  const { act, lineId, alignment } = line();
  const accept = (shift: number, scale: number) =>
    decideAlignment(act, {
      lineId,
      recordId: null,
      shift,
      scale,
      state: "accepted",
      reason: REASON,
    });
  must(accept(0, 2_280_840));
  expect(alignment()?.sentence).toMatch(/^Accepted by .*: the card is in meters;/);
  must(accept(16_300, -2_000_000));
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    `Accepted that the card is measured from the other end, its zero at 163.0 ft. Reason: ${REASON}`,
  );
  expect(accept(16_300, 0)).toMatchObject({ ok: false, error: { path: "shift" } });
  expect(accept(0, 900_000)).toMatchObject({ ok: false, error: { path: "scale" } });
});

test("withdrawAlignment() lets the search propose again, and keeps both words in the history", () => {
  const { act, lineId, decide, alignment } = line();
  const { alignmentId } = must(decide("refused"));
  const reason = "It was the wrong card";
  expect(withdrawAlignment(act, { lineId, alignmentId, reason: " " })).toMatchObject({
    ok: false,
    error: { reason: "missing-value" },
  });
  must(withdrawAlignment(act, { lineId, alignmentId, reason }));
  expect(alignment()?.shift).toBe(-240);
  expect(
    fileOf(act, lineId)
      .history.slice(-2)
      .map(({ action }) => action),
  ).toEqual(["decide-alignment", "withdraw-alignment"]);
});

test.each([
  ["no reason", { reason: "  " }, "missing-value"],
  ["a record that is not there", { recordId: "gone" }, "not-found"],
  ["more than 100 ft", { shift: 10_001 }, "bad-value"],
  ["more than 20 %", { scale: 200_001 }, "bad-value"],
  ["refusing the record as written", { shift: 0, state: "refused" }, "bad-value"],
] as const)("decideAlignment() refuses %s", (_what, wrong, reason) => {
  const { act, lineId } = line();
  const word = { lineId, recordId: null, shift: -240, scale: 0, state: "accepted", reason: REASON };
  expect(decideAlignment(act, { ...word, ...wrong } as never)).toMatchObject({
    ok: false,
    error: { reason },
  });
  expect(fileOf(act, lineId).alignments).toEqual([]);
});

test("decideAlignment() is for those who work the file", () => {
  const { act, lineId } = line();
  const looker = { ...act, actor: { ...act.actor, role: "viewer" as const } };
  expect(
    decideAlignment(looker as never, {
      lineId,
      recordId: null,
      shift: -240,
      scale: 0,
      state: "accepted",
      reason: REASON,
    }),
  ).toMatchObject({ ok: false, error: { reason: "not-allowed" } });
});
