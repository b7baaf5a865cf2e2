import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import { nameRow } from "#lib/domain/file/references.ts";
import { TIE_IN_KINDS, type TieIn, type TieInKind } from "#lib/domain/line/line.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface Settlement {
  readonly lineId: string;
  readonly tieInId: string;
  readonly kind: TieInKind;
  readonly propertyId: string | null;
  /** Proven dead. */
  readonly inactive: boolean;
  /** The owner accepted in writing that it is theirs. */
  readonly ownerAccepted: boolean;
  readonly reason: string;
}

/**
 * A person's word on what a tie-in is and whose, with the reason. Saying that it is unknown after
 * all opens the question again. Refuses an owner's acceptance where no property is named.
 */
export function settleTieIn(act: Act, settlement: Settlement): Result<null, Refusal> {
  const { lineId, tieInId } = settlement;
  const deal = { lineId, deed: "work-the-file", action: "settle-tie-in" } as const;
  return changeLine(act, deal, (file) => {
    const tieIn = find(file.tieIns, tieInId, { path: "tieInId", what: "the tie-in" });
    if (!tieIn.ok) return tieIn;
    const wrong = wrongIn(file, settlement);
    if (wrong !== null) return wrong;
    const after = settled(act, tieIn.value, settlement);
    return ok({
      value: null,
      sentence: sentenceFor(file, after, settlement.reason.trim()),
      detail: { before: tieIn.value, after },
      write: (db) => {
        updateRow(db, "tieIns", { lineId, row: after });
        countSave(db, { lineId, table: "tieIns", by: act.actor.name, at: act.now });
      },
    });
  });
}

function wrongIn(file: LineFile, { kind, propertyId, ownerAccepted, reason }: Settlement) {
  if (!TIE_IN_KINDS.includes(kind)) return refuse("bad-value", "kind", "Choose what it carries");
  if (reason.trim() === "") return refuse("missing-value", "reason", "Say how that was shown");
  if (propertyId !== null && !file.properties.some(({ id }) => id === propertyId))
    return refuse("not-found", "propertyId", "the property");
  if (ownerAccepted && propertyId === null)
    return refuse("missing-value", "propertyId", "Name the property whose owner accepted it");
  return null;
}

function settled(act: Act, tieIn: TieIn, settlement: Settlement): TieIn {
  const { kind, propertyId, inactive, ownerAccepted, reason } = settlement;
  const open = kind === "unknown" && propertyId === null && !inactive && !ownerAccepted;
  return {
    ...tieIn,
    kind,
    propertyId,
    inactive,
    ownerAccepted,
    settledReason: open ? "" : reason.trim(),
    settledBy: open ? "" : act.actor.name,
    settledOn: open ? null : act.today,
  };
}

function sentenceFor(file: LineFile, tieIn: TieIn, reason: string): string {
  if (tieIn.settledOn === null) return `Opened the question of ${tieIn.label} again: ${reason}`;
  const words = [
    tieIn.kind === "unknown" ? "" : tieIn.kind.replaceAll("-", " "),
    tieIn.propertyId === null ? "" : `of ${nameRow(file, "properties", tieIn.propertyId)}`,
    tieIn.inactive ? "proven inactive" : "",
    tieIn.ownerAccepted ? "accepted in writing by its owner" : "",
  ].filter((part) => part !== "");
  return `Settled ${tieIn.label}: ${words.join(", ")}. ${reason}`;
}
