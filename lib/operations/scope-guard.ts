import type { ChangeOrder } from "#lib/domain/facts/change-order.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { hasWorkBegun } from "#lib/domain/permit/steps.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { deedsOf } from "#lib/domain/split/work-deeds.ts";
import { type Deed, heldWords, holdsAgainst } from "#lib/domain/stops/stopped-by.ts";
import type { Day } from "#lib/domain/time/day.ts";

interface Save {
  readonly table: RowTable;
  readonly before: LineFile;
  readonly after: LineFile;
}

/**
 * Why a row may not be taken out, in words that say what to do; null where it may. Work that was put
 * to the neighbors is dropped by a change order; a decided change order stays; so does the chosen
 * option.
 */
export function removalWords({ table, before, after }: Save): string | null {
  if (table === "scope") return scopeRemoval(before, after);
  if (table === "changeOrders") return orderRemoval(before, after);
  if (table !== "options") return null;
  const chosen = goneFrom(before.options, after.options).find(
    ({ id }) => id === before.line.optionId,
  );
  return chosen === undefined
    ? null
    : `“${chosen.title}” is the way of doing the work that was chosen. Choose another one first`;
}

function scopeRemoval(before: LineFile, after: LineFile): string | null {
  if (before.splits.every(({ sentAt }) => sentAt === null)) return null;
  const inForce = new Set(scopeInForce(before).map(({ id }) => id));
  const [gone] = goneFrom(before.scope, after.scope).filter(({ id }) => inForce.has(id));
  return gone === undefined
    ? null
    : `“${gone.title}” is part of amounts already sent to neighbors, so it can’t be deleted. Restore the row, add a change order under “Changes”, and select it in the row’s “Dropped by” column`;
}

function orderRemoval(before: LineFile, after: LineFile): string | null {
  const [gone] = goneFrom(before.changeOrders, after.changeOrders).filter(isDecided);
  return gone === undefined
    ? null
    : `Change order ${gone.number} is ${gone.state === "agreed" ? "approved" : "rejected"} and stays in the file. Add another one instead`;
}

function goneFrom<T extends { readonly id: string }>(before: readonly T[], after: readonly T[]) {
  const left = new Set(after.map(({ id }) => id));
  return before.filter(({ id }) => !left.has(id));
}

interface Cell {
  readonly row: number;
  readonly column: string;
  readonly message: string;
}

/**
 * Cells that would change what a decided change order added or dropped, or would move work whose
 * amounts were sent into another option.
 */
export function orderCells(save: Save): Cell[] {
  return save.table === "scope" ? [...decidedCells(save), ...movedCells(save)] : [];
}

function movedCells({ before, after }: Save): Cell[] {
  if (before.splits.every(({ sentAt }) => sentAt === null)) return [];
  const inForce = new Map(scopeInForce(before).map((item) => [item.id, item]));
  return after.scope.flatMap((item, row) => {
    const was = inForce.get(item.id);
    if (was === undefined || was.optionId === item.optionId) return [];
    const message =
      "It is part of amounts already sent. Leave it in its option and drop it with a change order; enter it again in the other one";
    return [{ row, column: "optionId", message }];
  });
}

function decidedCells({ before, after }: Save): Cell[] {
  const orders = new Map(before.changeOrders.map((order) => [order.id, order]));
  const old = new Map(before.scope.map((item) => [item.id, item]));
  return after.scope.flatMap((item, row) =>
    (["addedById", "droppedById"] as const).flatMap((column) => {
      const was = old.get(item.id)?.[column] ?? null;
      const is = item[column];
      if (was === is) return [];
      const decided = [was, is]
        .map((id) => orders.get(id ?? ""))
        .find((order) => order !== undefined && isDecided(order));
      if (decided === undefined) return [];
      const message = `Change order ${decided.number} is already ${decided.state === "agreed" ? "approved" : "rejected"} and stays as it is; add another one and select that`;
      return [{ row, column, message }];
    }),
  );
}

/**
 * Work that comes into force while the work is under way, or changes its kind or place, and that a
 * hold stops. Before the work begins anything may be priced: the permit's steps ask then.
 */
export function heldCells({ table, before, after }: Save, today: Day): Cell[] {
  if (table !== "scope" || !hasWorkBegun(before)) return [];
  const report = reportOn(after, today);
  const deedsIn = (item: ScopeItem, { options }: LineFile) =>
    deedsOf(item, { options, tieIns: report.tieIns });
  const old = new Map(
    scopeInForce(before).map((item) => [item.id, sayDeeds(deedsIn(item, before))]),
  );
  const inForce = new Set(scopeInForce(after).map(({ id }) => id));
  return after.scope.flatMap((item, row) => {
    const deeds = deedsIn(item, after);
    if (!inForce.has(item.id) || old.get(item.id) === sayDeeds(deeds)) return [];
    const held = holdsAgainst(report.holds, deeds);
    return held.length === 0 ? [] : [{ row, column: "kind", message: heldWords(held, deeds) }];
  });
}

function sayDeeds(deeds: readonly Deed[]): string {
  return JSON.stringify(deeds.map(({ stop, stretch }) => [stop, stretch]));
}

function isDecided({ state }: ChangeOrder): boolean {
  return state !== "proposed";
}
