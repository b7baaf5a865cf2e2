import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { itemAmount } from "#lib/domain/sharing/item-amount.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { counted, propertyName, tieInName } from "../names.ts";
import styles from "./cost.module.css";

/** What each saved item comes to, and the total. */
export function ScopeSums({ file }: { readonly file: LineFile }) {
  const items = scopeInForce(file);
  if (items.length === 0) return null;
  const left = file.scope.length - items.length;
  const total = items.reduce((sum, item) => sum + itemAmount(item), 0);
  return (
    <Scroll>
      <table className={`plain ${styles["sums"]}`}>
        <caption>
          Work total
          {left === 0
            ? ""
            : `, without ${counted(left, "item")} of another option or a change order that does not count`}
        </caption>
        <Heads of={["Item", "Where", { num: "Calculation" }, { num: "Amount" }]} />
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <th scope="row">{item.title}</th>
              <td>{whereWords(file, item)}</td>
              <td className="num">{sumWords(item)}</td>
              <td className="num">{formatCents(itemAmount(item))}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              Total of {items.length}
            </th>
            <td className="num">{formatCents(total)}</td>
          </tr>
        </tfoot>
      </table>
    </Scroll>
  );
}

function whereWords(file: LineFile, item: ScopeItem): string {
  const alone = item.payerId === null ? "" : `, paid by ${propertyName(file, item.payerId)} only`;
  return placeWords(file, item) + alone;
}

function placeWords(file: LineFile, item: ScopeItem): string {
  switch (item.place) {
    case "point":
      return item.from === null ? "at a point (no station)" : `at ${formatFeet(item.from)}`;
    case "stretch":
      return item.from === null || item.to === null
        ? "over a section (no stations)"
        : `${plainFeet(item.from)} to ${formatFeet(item.to)}`;
    case "branch":
      return item.tieInId === null
        ? "on a branch (not specified)"
        : `on the branch of ${tieInName(file, item.tieInId)}`;
    case "general":
      return item.spread === "equally" ? "general, spread equally" : "general, prorated by cost";
  }
}

function sumWords(item: ScopeItem): string {
  const quantity = `${item.quantity / 100} ${item.unit} × ${formatCents(item.rate)}`;
  const markup = item.markup === 0 ? "" : ` + ${item.markup / 100} % markup`;
  const tax = item.tax === 0 ? "" : ` + ${item.tax / 100} % tax`;
  return quantity + markup + tax;
}
