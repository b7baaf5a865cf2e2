import type { ChangeOrderState } from "../facts/change-order.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import { itemAmount } from "./item-amount.ts";

/** What decides which priced work counts. */
export type ScopeFile = Pick<LineFile, "scope" | "options" | "changeOrders"> & {
  readonly line: Pick<LineFile["line"], "optionId">;
};

/**
 * The option whose work is done: the one that was chosen, or the only one that there is. Null where
 * there is none, and while several stand side by side.
 */
export function optionInForce({
  options,
  line,
}: Pick<ScopeFile, "options" | "line">): string | null {
  const chosen = options.find((option) => option.id === line.optionId);
  if (chosen !== undefined) return chosen.id;
  const [only] = options;
  return options.length === 1 && only !== undefined ? only.id : null;
}

/**
 * The priced work that counts now: the items of every option and those of the option in force, as
 * the agreed change orders leave them. While several options stand side by side and none is chosen,
 * only what all of them have in common. Everybody who speaks of “the work” asks here.
 */
export function scopeInForce(file: ScopeFile): ScopeItem[] {
  const option = optionInForce(file);
  return agreedScope(file).filter((item) => item.optionId === null || item.optionId === option);
}

/** The priced work of all options together, as the agreed change orders leave it. */
export function agreedScope({
  scope,
  changeOrders,
}: Pick<ScopeFile, "scope" | "changeOrders">): ScopeItem[] {
  const agreed = new Set(
    changeOrders.filter((order) => order.state === "agreed").map((order) => order.id),
  );
  return scope.filter(
    ({ addedById, droppedById }) =>
      (addedById === null || agreed.has(addedById)) &&
      (droppedById === null || !agreed.has(droppedById)),
  );
}

/** All work that may still come: of every option, with what proposed change orders would add and drop. */
export function scopeToCome({
  scope,
  changeOrders,
}: Pick<ScopeFile, "scope" | "changeOrders">): ScopeItem[] {
  const are = (state: ChangeOrderState) =>
    new Set(changeOrders.filter((order) => order.state === state).map(({ id }) => id));
  const [agreed, refused] = [are("agreed"), are("refused")];
  return scope.filter(
    ({ addedById, droppedById }) => !refused.has(addedById ?? "") && !agreed.has(droppedById ?? ""),
  );
}

/** True while the amounts hang on which of several options is chosen, and none is. */
export function mustChooseOption(file: ScopeFile): boolean {
  return (
    file.options.length > 1 &&
    optionInForce(file) === null &&
    agreedScope(file).some((item) => item.optionId !== null)
  );
}

/** The work that may begin: what is in force, or all options’ while none of them is chosen. */
export function workInForce(file: ScopeFile): ScopeItem[] {
  return mustChooseOption(file) ? agreedScope(file) : scopeInForce(file);
}

/** The file as it would be with this option chosen. */
export function underOption<F extends Pick<LineFile, "line">>(file: F, optionId: string): F {
  return { ...file, line: { ...file.line, optionId } };
}

/** What the work in force comes to. */
export function scopeTotal(file: ScopeFile): number {
  return scopeInForce(file).reduce((sum, item) => sum + itemAmount(item), 0);
}
