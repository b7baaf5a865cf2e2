import { getLineFile } from "#db/queries/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Result } from "#lib/result.ts";
import { acceptWay } from "./accept-way.ts";
import type { Act, Refusal } from "./act.ts";
import { decideAlignment } from "./decide-alignment.ts";

interface Asked {
  readonly lineId: string;
  readonly key: string;
  readonly reason: string;
}

/**
 * Accepts another way to pair: its shift and scale; or, where those are the same as now, the pairs in
 * which it differs. Refuses a way that the file no longer offers. It is looked for in the same
 * transaction in which it is accepted.
 */
export function acceptAlternative(act: Act, asked: Asked): Result<unknown, Refusal> {
  return act.db.transaction((db) => accept({ ...act, db }, asked), { behavior: "immediate" });
}

function accept(act: Act, { lineId, key, reason }: Asked): Result<unknown, Refusal> {
  const file = getLineFile(act.db, lineId);
  const report = file && reportOn(file, act.today);
  const way = report?.alternatives.find((each) => each.key === key);
  const own = report?.alignment?.own.find((each) => each.recordId === way?.recordId);
  const now = own ?? report?.alignment;
  const same = way?.shift === now?.shift && way?.scale === now?.scale;
  if (way === undefined || same) return acceptWay(act, { lineId, key, reason });
  const { recordId, shift, scale } = way;
  return decideAlignment(act, { lineId, recordId, shift, scale, reason, state: "accepted" });
}
