import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { bareNumber } from "#lib/domain/notices/tracking.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { wrongNumber } from "./record-delivery.ts";

interface Numbers {
  readonly lineId: string;
  /** By delivery, as they were typed; an empty one takes away what was there. */
  readonly numbers: Readonly<Record<string, string>>;
}

/**
 * Enters the numbers of certified mail for many deliveries at once, all of them or none. Refuses, beside
 * the number, what can't be one, what stands at another delivery already, a delivery by another way, and
 * one whose result is recorded: its number is part of that proof.
 */
export function numberDeliveries(
  act: Act,
  { lineId, numbers }: Numbers,
): Result<{ count: number }, Refusal> {
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "number-deliveries",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file) => {
    const pairs: { before: Delivery; after: Delivery }[] = [];
    for (const [deliveryId, typed] of Object.entries(numbers)) {
      const found = find(file.deliveries, deliveryId, { path: deliveryId, what: "the delivery" });
      if (!found.ok) return found;
      const before = found.value;
      const after = { ...before, tracking: typed.trim() };
      if (after.tracking === before.tracking) continue;
      const wrong = wrongOf(file, after);
      if (wrong !== null) return wrong;
      pairs.push({ before, after });
    }
    const twice = twiceIn(
      file,
      pairs.map(({ after }) => after),
    );
    if (twice !== null) return twice;
    const letters = pairs.map(
      ({ after }) =>
        `${nameRow(file, "notices", after.noticeId)}${after.tracking === "" ? ", none" : `, ${after.tracking}`}`,
    );
    return ok({
      value: { count: pairs.length },
      sentence: pairs.length === 0 ? null : `Certified mail numbers: ${letters.join("; ")}.`,
      detail: pairs,
      write: (db) => {
        for (const { after } of pairs) updateRow(db, "deliveries", { lineId, row: after });
      },
    });
  });
}

function wrongOf(file: LineFile, { id, method, outcome, noticeId, tracking }: Delivery) {
  const letter = nameRow(file, "notices", noticeId);
  if (method !== "certified")
    return refuse("not-in-this-state", id, `The ${letter} did not go by certified mail`);
  if (outcome !== "on-its-way")
    return refuse(
      "not-in-this-state",
      id,
      `The result of the ${letter} is recorded already; correct it on the letter's own page`,
    );
  const words = wrongNumber(method, tracking);
  return words === null ? null : refuse("bad-value", id, words);
}

/** Each piece of mail has a number of its own. */
function twiceIn(file: LineFile, changed: readonly Delivery[]) {
  const now = new Map([...file.deliveries, ...changed].map((each) => [each.id, each]));
  for (const one of changed) {
    const number = bareNumber(one.tracking);
    if (number === "") continue;
    const other = [...now.values()].find(
      ({ id, method, tracking }) =>
        id !== one.id && method === "certified" && bareNumber(tracking) === number,
    );
    if (other !== undefined)
      return refuse(
        "bad-value",
        one.id,
        `This number stands at the ${nameRow(file, "notices", other.noticeId)} too; each piece of mail has its own`,
      );
  }
  return null;
}
