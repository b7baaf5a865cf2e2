import { expect, test } from "vitest";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

const REASON = "Same place, side and size";

function line() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  addRows(act, { lineId, table: "records" }, [
    { id: "card58", title: "Card 1958" },
    { id: "card94", title: "Card 1994" },
  ]);
  addRows(act, { lineId, table: "entries" }, [
    { id: "e58", recordId: "card58", label: "House 14", distance: 3_000 },
    { id: "e94", recordId: "card94", label: "No. 14", distance: 3_000 },
    { id: "e58b", recordId: "card58", label: "House 16", distance: 5_000 },
  ]);
  addRows(act, { lineId, table: "runs" }, [
    { id: "r1", name: "Run 1", ranOn: "2026-11-03", looks: "upstream" },
  ]);
  addRows(act, { lineId, table: "observations" }, [
    { id: "o1", runId: "r1", kind: "tie-in", counter: 3_000 },
  ]);
  const tieInId = fileOf(act, lineId).tieIns[0]?.id ?? "";
  const accept = (entryId: string) =>
    decidePairing(act, { lineId, entryId, tieInId, state: "accepted", reason: REASON });
  return { act, lineId, accept };
}

test("decidePairing() accepts the same tie-in for one entry of each of two records", () => {
  const { act, lineId, accept } = line();
  must(accept("e58"));
  must(accept("e94"));
  expect(fileOf(act, lineId).pairings.map(({ entryId }) => entryId)).toEqual(["e58", "e94"]);
});

test("decidePairing() refuses a tie-in that another entry of the same record has", () => {
  const { accept } = line();
  must(accept("e58"));
  expect(accept("e58b")).toMatchObject({
    ok: false,
    error: { reason: "already-there", path: "tieInId" },
  });
});
