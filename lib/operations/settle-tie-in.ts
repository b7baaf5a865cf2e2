import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import { TIE_IN_KINDS, type TieIn, type TieInKind } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { placeOfTieIn } from "#lib/domain/stops/stopped-by.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";
import { changedOnLine, fieldsSeen } from "./seen.ts";

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
  /** `seenOf(settledSeen(tieIn))` as the form was filled in from; not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

const SETTLED = [
  ...(["kind", "propertyId", "inactive", "ownerAccepted"] as const),
  ...(["settledReason", "settledBy", "settledOn"] as const),
] as const;

/** What the form that settles a tie-in is filled in from. */
export function settledSeen(tieIn: TieIn) {
  return fieldsSeen(tieIn, SETTLED);
}

/**
 * A person's word on what a tie-in is and whose, with the reason. Saying that it is unknown after
 * all opens the question again. Refuses what somebody settled since the form was filled in, an owner's acceptance where no property is named, and a cap
 * that a hold stops: what is not proven dead stays open.
 */
export function settleTieIn(act: Act, settlement: Settlement): Result<null, Refusal> {
  const { lineId, tieInId } = settlement;
  const deal = { lineId, deed: "work-the-file", action: "settle-tie-in" } as const;
  return changeLine(act, deal, (file) => {
    const tieIn = find(file.tieIns, tieInId, { path: "tieInId", what: "the tie-in" });
    if (!tieIn.ok) return tieIn;
    const { seen } = settlement;
    const now = settledSeen(tieIn.value);
    const changed = changedOnLine(file, seen, { now, about: [tieInId] });
    if (changed !== null) return changed;
    const wrong = wrongIn(file, settlement);
    if (wrong !== null) return wrong;
    const after = settled(act, tieIn.value, settlement);
    const held = heldCap(act, file, { before: tieIn.value, after });
    if (held !== null) return held;
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
  if (!TIE_IN_KINDS.includes(kind)) return refuse("bad-value", "kind", "Select what it carries");
  if (reason.trim() === "") return refuse("missing-value", "reason", "Say how that was shown");
  if (propertyId !== null && !file.properties.some(({ id }) => id === propertyId))
    return refuse("not-found", "propertyId", "the property");
  if (ownerAccepted && propertyId === null)
    return refuse("missing-value", "propertyId", "Name the property whose owner accepted it");
  return null;
}

/** A cap or a disconnection that is taken down now, looked at with what is proven now. */
function heldCap(act: Act, file: LineFile, { before, after }: { before: TieIn; after: TieIn }) {
  if (after.kind !== "capped-stub" || before.kind === "capped-stub") return null;
  const shown = { ...after, kind: before.kind };
  const tieIns = file.tieIns.map((each) => (each.id === before.id ? shown : each));
  const report = reportOn({ ...file, tieIns }, act.today);
  const finding = report.tieIns.find(({ tieIn }) => tieIn.id === before.id);
  const stretch = finding === undefined ? null : placeOfTieIn(finding, report.tieIns);
  const held = refuseHeld(report, [{ stop: "capping", stretch }], "kind");
  if (held !== null || finding?.live !== true) return held;
  const words = `${after.label} carries sewage as far as is known, and nothing is capped that is not proven inactive. Check “Proven inactive” and say how that was shown`;
  return refuse("missing-value", "inactive", words);
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
