import type { LineFile } from "../facts/line-file.ts";
import type { PermitKind } from "../facts/permit.ts";
import type { Cents } from "../money/cents.ts";
import { mustChooseOption, scopeInForce, scopeTotal } from "../sharing/scope-in-force.ts";
import { applicationOf } from "./application-of.ts";

type ValuedFile = Pick<LineFile, "applications"> & Parameters<typeof scopeTotal>[0];

/** What the work under a permit is valued at and by what, or what has to be entered to know it. */
type Valuation =
  | { readonly amount: Cents; readonly by: "application" | "work" }
  | { readonly amount: null; readonly lacks: string };

/**
 * The value of the work under one kind of permit: as its application says, else that for the side sewer, else
 * what the work in force is priced at. Work without any price, and work that hangs on an option nobody chose, has none.
 */
export function valuationOf(file: ValuedFile, kind: PermitKind): Valuation {
  const entered =
    applicationOf(file, kind)?.valuation ?? applicationOf(file, "side-sewer")?.valuation ?? null;
  if (entered !== null) return { amount: entered, by: "application" };
  if (mustChooseOption(file)) return { amount: null, lacks: "no repair option is selected" };
  const total = scopeTotal(file);
  return scopeInForce(file).length === 0 || total === 0
    ? { amount: null, lacks: "no valuation and no priced work is entered" }
    : { amount: total, by: "work" };
}
