import type { Ruling, RulingKind } from "../facts/ruling.ts";
import { formatDate } from "../time/format-day.ts";

/** Rulings that stand for a record entry: the tie-in is documented by them. */
const DOCUMENTS: readonly RulingKind[] = ["accepted-as-legacy", "record-corrected"];

const RULED_WORDS: Record<RulingKind, string> = {
  legalise: "may remain, with a permit, fees and an agreement",
  disconnect: "must be disconnected until compliant",
  "own-connection": "must get its own connection",
  "accepted-as-legacy": "is accepted as is (grandfathered)",
  cap: "is to be capped (proven inactive)",
  "record-corrected": "is right; the record is corrected by the as-built",
  "evidence-asked": "needs more evidence for the authority",
};

/** The ruling that holds on a tie-in: the one decided last; null where nobody has ruled. */
export function rulingInForce(rulings: readonly Ruling[], tieInId: string): Ruling | null {
  return (
    rulings
      .filter((ruling) => ruling.tieInId === tieInId)
      .toSorted((one, other) => one.decidedOn.localeCompare(other.decidedOn))
      .at(-1) ?? null
  );
}

/** The ruling in force that stands for a record entry; null where none does. */
export function documentingRuling(rulings: readonly Ruling[], tieInId: string): Ruling | null {
  const ruling = rulingInForce(rulings, tieInId);
  return ruling !== null && DOCUMENTS.includes(ruling.kind) ? ruling : null;
}

/** `may stay, with …, says City of Quillhaven, November 20, 2026 (case 26-114)`. */
export function ruledWords({ kind, decidedBy, decidedOn, reference }: Ruling): string {
  const where = reference.trim() === "" ? "" : ` (${reference.trim()})`;
  return `${RULED_WORDS[kind]}, per ${decidedBy.trim() || "the authority"}, ${formatDate(decidedOn)}${where}`;
}
