import { expect, test } from "vitest";
import {
  countDue,
  countKept,
  dueOf,
  getTallies,
  keeperOf,
  summedLines,
} from "#db/queries/summary.ts";
import { insertUser } from "#db/queries/user.ts";
import { DUE_KINDS, WAITS_ON } from "#lib/domain/desk/answer.ts";
import { countsOf, EVERYTHING, endOfWeek, type Narrowing } from "#lib/domain/desk/narrowing.ts";
import type { UserRole } from "#lib/domain/facts/user.ts";
import type { Act } from "#lib/operations/act.ts";
import { changeUser } from "#lib/operations/change-user.ts";
import { keepLine } from "#lib/operations/keep-line.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { renewSummaries } from "#lib/operations/renew-summaries.ts";
import { aDesk, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

const ALL = { from: 0, most: 1_000 };
const DAY = "2026-11-25";

function aUser(act: Act, id: string, role: UserRole = "office"): void {
  const user = { id, name: `User ${id}`, email: `${id}@example.com`, role, disabled: false };
  insertUser(act.db, { user, passwordHash: "none", at: act.now });
}

/** Every narrowing that a desk offers, held against what is listed without any. */
function expectNarrowed(act: Act, keepers: readonly string[]): void {
  const until = endOfWeek(DAY);
  const all = DUE_KINDS.flatMap((kind) => dueOf(act.db, kind, ALL));
  const counts = countDue(act.db, until);
  const narrowings: Narrowing[] = [null, ...keepers].flatMap((keeper) =>
    [null, ...WAITS_ON].flatMap((waitsOn) =>
      [null, until].map((end) => ({ keeper, waitsOn, until: end })),
    ),
  );
  for (const narrowing of narrowings)
    for (const kind of DUE_KINDS) {
      const left = all.filter(
        (thing) =>
          thing.kind === kind &&
          (narrowing.keeper === null ||
            (keeperOf(act.db, thing.lineId) ?? "") === narrowing.keeper) &&
          (narrowing.waitsOn === null || thing.waitsOn === narrowing.waitsOn) &&
          (narrowing.until === null || (thing.on ?? "9999") <= narrowing.until),
      );
      expect(dueOf(act.db, kind, { ...ALL, narrowing })).toEqual(left);
      expect(countsOf(counts, narrowing)[kind]).toBe(left.length);
    }
  expect(countsOf(counts, EVERYTHING)).toMatchObject(
    Object.fromEntries(DUE_KINDS.map((kind) => [kind, getTallies(act.db)[kind]])),
  );
}

test("whoever opens a line looks after it, and finds what is due there under theirs", () => {
  const { act, lineId } = aDesk({ undocumented: true });
  expect(keeperOf(act.db, lineId)).toBeNull();
  aUser(act, "user-1");
  aUser(act, "user-2");
  const other = anOpenLine(act);
  expect(keeperOf(act.db, other)).toBe("user-1");
  renewSummaries(act.db, DAY, 10);
  expectNarrowed(act, ["", "user-1", "user-2"]);

  must(keepLine(act, { lineId, userId: "user-2" }));
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    "User user-2 handles Alley behind Fennel Row now.",
  );
  expectNarrowed(act, ["", "user-1", "user-2"]);
  const blocked = dueOf(act.db, "blocked", {
    ...ALL,
    narrowing: { ...EVERYTHING, keeper: "user-2" },
  });
  expect(blocked.map((thing) => thing.lineId)).toContain(lineId);
  expect(countKept(act.db, "user-2")).toBe(1);
  const theirs = { day: DAY, ...ALL, keeper: "user-2" };
  expect(summedLines(act.db, "on-the-desk", theirs).map((line) => line.lineId)).toEqual([lineId]);

  must(keepLine(act, { lineId, userId: null }));
  renewSummaries(act.db, "2026-12-24", 10);
  expectNarrowed(act, ["", "user-1", "user-2"]);
});

test("a line is not looked after by who cannot work on it; nothing is told where nothing changes", () => {
  const { act, lineId } = aDesk();
  aUser(act, "viewer", "viewer");
  const told = fileOf(act, lineId).history.length;
  expect(keepLine(act, { lineId, userId: "viewer" })).toMatchObject({
    ok: false,
    error: { detail: "User viewer does not work on files" },
  });
  expect(keepLine(act, { lineId, userId: "none" })).toMatchObject({ ok: false });
  must(keepLine(act, { lineId, userId: null }));
  expect(fileOf(act, lineId).history).toHaveLength(told);
  const viewer = anAct(act.db, { role: "viewer" });
  expect(keepLine(viewer, { lineId, userId: null })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("lines of somebody whose access is taken away are nobody's", async () => {
  const { act } = aDesk();
  aUser(act, "user-1");
  aUser(act, "boss", "admin");
  const { lineId } = must(openLine(act, { name: "Alder Court", town: "", authorityId: null }));
  const admin = anAct(act.db, { role: "admin" });
  must(await changeUser(admin, { userId: "user-1", role: "admin" }));
  expect(keeperOf(act.db, lineId)).toBe("user-1");
  must(await changeUser(admin, { userId: "user-1", disabled: true }));
  expect(keeperOf(act.db, lineId)).toBeNull();
});
