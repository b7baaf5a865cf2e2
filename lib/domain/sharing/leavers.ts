import type { LineFile } from "../facts/line-file.ts";
import type { RulingKind } from "../facts/ruling.ts";
import { rulingInForce } from "../tiein/ruling-in-force.ts";
import { optionInForce, scopeInForce } from "./scope-in-force.ts";
import type { Sharer } from "./sharers.ts";

/** Somebody who gets a line of their own and shares the common pipe no longer. */
export interface Leaver {
  /** As a sharer's: the property's id, or the tie-in's where the owner is unknown. */
  readonly key: string;
  readonly label: string;
  /** `it alone pays for “New line for 12 Fennel Row”`. */
  readonly because: string;
}

type LeaversFile = Pick<LineFile, "line" | "options" | "changeOrders" | "scope" | "rulings">;

const LEAVING: readonly RulingKind[] = ["own-connection", "disconnect"];

/**
 * Who leaves the shared pipe under the option in force. Only an option of separate lines lets
 * anybody leave: whoever alone pays for an item of that option, and whose every tie-in has to get a
 * connection of its own or come off by the last ruling on it. Everybody else stays and shares.
 */
export function leaversOf(file: LeaversFile, sharers: readonly Sharer[]): Leaver[] {
  const option = optionInForce(file);
  if (file.options.find((each) => each.id === option)?.kind !== "separate-lines") return [];
  return sharers.flatMap(({ key, label, tieIns }): Leaver[] => {
    const own = scopeInForce(file).find(
      (item) => item.optionId === option && item.payerId === key && item.payerId !== null,
    );
    if (own !== undefined) return [{ key, label, because: `it alone pays for “${own.title}”` }];
    return ruledOff(file, tieIns)
      ? [{ key, label, because: "it has to leave by the ruling on its tie-in" }]
      : [];
  });
}

function ruledOff({ rulings }: Pick<LineFile, "rulings">, tieIns: readonly string[]): boolean {
  const last = tieIns.map((id) => rulingInForce(rulings, id));
  return last.length > 0 && last.every((ruling) => ruling && LEAVING.includes(ruling.kind));
}
