import type { LineFile } from "../facts/line-file.ts";
import { isSeenOnRecord } from "../facts/pairing.ts";
import type { Ruling, RulingKind } from "../facts/ruling.ts";
import type { TieInFinding } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { formatCents } from "../money/format-cents.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";
import { bearsDemand } from "./evidence.ts";
import { ruledWords, rulingInForce } from "./ruling-in-force.ts";

/** What follows from the ruling in force on one tie-in. */
export interface RulingEffect {
  readonly ruling: Ruling;
  readonly label: string;
  /** What was ruled is carried out, as the facts show. */
  readonly done: boolean;
  /** Until it is done, no lining across the tie-in and no final split. */
  readonly holds: boolean;
  /** What has to be done still; null where nothing has. */
  readonly asks: string | null;
  /** Who has to move: the contractor's office, or the owner. */
  readonly mover: "office" | "owner";
  /** What the packet says of it. */
  readonly printed: string;
}

type RulingFile = Pick<LineFile, "rulings" | "authority" | "agreements">;

/**
 * What follows from each ruling in force. To legalise asks a permit, the authority's fees and a
 * recorded agreement, and is done once the tie-in is on record; to disconnect, to cap or to convert
 * is done once the branch is settled as capped or proven dead, and only then leaves served-by and
 * split; accepted as it is, or a corrected record, is done at once and stands for the missing entry;
 * asked evidence is there from level 5 on (outcomes of authorities: trade practice).
 */
export function rulingEffects(file: RulingFile, tieIns: readonly TieInFinding[]): RulingEffect[] {
  return tieIns.flatMap((finding) => {
    const ruling = rulingInForce(file.rulings, finding.tieIn.id);
    return ruling === null ? [] : [effectOf(ruling, finding, file)];
  });
}

function effectOf(ruling: Ruling, finding: TieInFinding, file: RulingFile): RulingEffect {
  const done = isDone(ruling.kind, finding);
  const label = finding.tieIn.label.trim() || "Unlabeled tie-in";
  const asks = done ? null : asksOf(ruling, { finding, label, file });
  return {
    ruling,
    label,
    done,
    holds: !done && (ruling.kind === "disconnect" || ruling.kind === "cap"),
    asks,
    mover: ruling.kind === "evidence-asked" || ruling.kind === "cap" ? "office" : "owner",
    printed: [`${label} ${ruledWords(ruling)}.`, ...asBuiltWords(ruling, finding), state(asks)]
      .filter((part) => part !== "")
      .join(" "),
  };
}

function isDone(kind: RulingKind, { tieIn, standing, level }: TieInFinding): boolean {
  switch (kind) {
    case "legalise":
      return isSeenOnRecord(standing);
    case "disconnect":
    case "own-connection":
      return tieIn.inactive || tieIn.kind === "capped-stub";
    case "cap":
      return tieIn.kind === "capped-stub";
    case "evidence-asked":
      return bearsDemand(level, tieIn.ownerAccepted);
    default:
      return true;
  }
}

interface Asked {
  readonly finding: TieInFinding;
  readonly label: string;
  readonly file: RulingFile;
}

function asksOf({ kind, dueOn }: Ruling, { finding, label, file }: Asked): string {
  const by = byWords(dueOn);
  switch (kind) {
    case "legalise":
      return `${label} needs ${papersFor(file)}${by}`;
    case "disconnect":
      return `${label} must be disconnected${by}`;
    case "own-connection":
      return `${label} must get its own connection and leave the shared pipe${by}`;
    case "cap":
      return `${label} must be capped${by}; it is proven inactive`;
    default:
      return `The authority requires evidence of who owns ${label}${by}; confidence is level ${finding.level} of 6`;
  }
}

function byWords(dueOn: Day | null): string {
  return dueOn === null ? "" : ` by ${formatDate(dueOn)}`;
}

/** `a permit, the fees (Side sewer permit $310.00) and a recorded agreement`. */
function papersFor({ authority, agreements }: RulingFile): string {
  const fees = (authority?.fees ?? [])
    .filter((fee) => fee.per !== "inspection")
    .map((fee) => `${fee.title} ${formatCents(fee.amount)}`);
  const money = fees.length === 0 ? "the authority’s fees" : `the fees (${fees.join(", ")})`;
  return agreements.some(({ recordingNumber }) => recordingNumber.trim() !== "")
    ? `a permit, ${money} and its part in the recorded agreement`
    : `a permit, ${money} and a recorded agreement`;
}

function asBuiltWords({ kind }: Ruling, { station, side }: TieInFinding): string[] {
  if (kind !== "record-corrected") return [];
  const where = station === null ? "at its location, once measured" : `at ${formatFeet(station)}`;
  const sided = side === "left" || side === "right" ? `, ${side} looking upstream` : "";
  return [`The as-built shows it ${where}${sided}.`];
}

function state(asks: string | null): string {
  return asks === null ? "Done." : `Still to do: ${asks}.`;
}
