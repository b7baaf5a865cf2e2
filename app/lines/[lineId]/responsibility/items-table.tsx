import { Heads } from "#app/_components/heads.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import type { Holder } from "#lib/domain/findings/reach-finding.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { type ItemMender, itemMenders } from "#lib/domain/responsibility/item-menders.ts";
import { itemAmount } from "#lib/domain/sharing/item-amount.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { tieInName } from "../names.ts";
import { HOLDER_WORDS, WORK_WORDS } from "../terms.ts";

/** So many items stand on a page. */
const AT_ONCE = 60;

/** Every priced work item with who does it, by its kind and its place. */
export function ItemsTable({
  file,
  report,
  asked,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly asked: string | string[] | undefined;
}) {
  const items = scopeInForce(file);
  const from = pageFrom(asked, AT_ONCE);
  return (
    <>
      <Scroll>
        <table className={`plain ${stacks["stacks"]}`}>
          <Heads of={["Work", "Kind", { num: "Amount" }, "Responsible"]} />
          <tbody>
            {onPage(items, from, AT_ONCE).map((item) => (
              <tr key={item.id}>
                <th scope="row">{item.title}</th>
                <td data-label="Kind">{WORK_WORDS[item.work]}</td>
                <td data-label="Amount" className="num">
                  {formatCents(itemAmount(item))}
                </td>
                <td data-label="Responsible">
                  <WhoseWork file={file} item={item} menders={itemMenders(item, report.reaches)} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Pages
        from={from}
        most={AT_ONCE}
        of={items.length}
        what="items"
        href={(page) => `/lines/${file.line.id}/responsibility?page=${page}#work`}
      />
    </>
  );
}

function WhoseWork({
  file,
  item,
  menders,
}: {
  readonly file: LineFile;
  readonly item: ScopeItem;
  readonly menders: readonly ItemMender[];
}) {
  if (item.place === "branch" && item.tieInId !== null)
    return <>the owners upstream of {tieInName(file, item.tieInId)} (on their own branch)</>;
  if (item.place === "general") return <>goes with the rest of the work</>;
  const [only] = menders;
  if (only === undefined) return <>no section known there</>;
  if (menders.length === 1) return <HolderTag holder={only.mender} />;
  return menders.map(({ from, to, mender }) => (
    <div key={from}>
      <HolderTag holder={mender} /> {plainFeet(from)} to {formatFeet(to)}
    </div>
  ));
}

function HolderTag({ holder }: { readonly holder: Holder }) {
  if (holder === "unclear") return <span className="tag tag-loud">unclear</span>;
  return HOLDER_WORDS[holder];
}
