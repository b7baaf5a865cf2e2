import { getAuthority } from "#db/queries/authority.ts";
import { insertLine } from "#db/queries/line.ts";
import { putKeeper } from "#db/queries/summary.ts";
import { getUser } from "#db/queries/user.ts";
import type { LineFacts } from "#lib/domain/facts/line.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { townWritten } from "#lib/domain/party/address.ts";
import { lineShape } from "#lib/exchange/shape.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse, tell } from "./change.ts";
import { parse } from "./parse.ts";

/** Opens the file on a line, which whoever opens it looks after. Refuses without a name, and an authority that the office does not know. */
export function openLine(
  act: Act,
  input: { readonly name: string; readonly town: string; readonly authorityId: string | null },
): Result<{ lineId: string }, Refusal> {
  if (!mayDo(act.actor.role, "work-the-file")) return refuse("not-allowed");
  const lineId = act.newId();
  const parsed = parse(lineShape("memory"), { ...input, id: lineId, openedOn: act.today });
  if (!parsed.ok) return parsed;
  const line: LineFacts = {
    ...parsed.value,
    name: parsed.value.name.trim(),
    town: townWritten(parsed.value.town),
  };
  return act.db.transaction(
    (db) => {
      if (line.authorityId !== null && getAuthority(db, line.authorityId) === null)
        return refuse("not-found", "authorityId", "the authority");
      insertLine(db, line);
      if (getUser(db, act.actor.id) !== null) putKeeper(db, lineId, act.actor.id);
      const sentence = `Opened the file on ${line.name}.`;
      tell({ ...act, db }, { lineId, action: "open-line", sentence, detail: line });
      return ok({ lineId });
    },
    { behavior: "immediate" },
  );
}
