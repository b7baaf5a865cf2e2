import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitVersion } from "#lib/domain/facts/split.ts";
import type { Share } from "#lib/domain/findings/outcome.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type FoundOwner, foundOwner, unknownIn } from "#lib/domain/ledger/found-owner.ts";
import { proposedEntries } from "#lib/domain/ledger/propose.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";
import { propertyName, tieInName } from "../../names.ts";
import styles from "./money.module.css";

interface PartProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}

/** What unknown owners mean for everyone: covered or set aside; and what a found one gives back. */
export function UnknownPart({ lineId, file, report }: PartProps) {
  const version = latestSplit(file);
  if (version === null) return null;
  const found = foundOwner(file);
  const unknown = unknownIn(version) > 0;
  if (found === null && !unknown) return null;
  return (
    <>
      {unknown ? <Unknown file={file} report={report} version={version} /> : null}
      {found === null ? null : <Found lineId={lineId} file={file} report={report} found={found} />}
    </>
  );
}

function Unknown({
  file,
  report,
  version,
}: Omit<PartProps, "lineId"> & { readonly version: SplitVersion }) {
  const { rule, faultStation, payerId, unknownShares } = version;
  const outcomeFor = (way: SplitVersion["unknownShares"]) =>
    splitOutcome(file, report, { rule, faultStation, payerId, unknownShares: way });
  const carried = outcomeFor("carried").shares;
  const apart = outcomeFor("held-apart").shares;
  const way = unknownShares === "carried" ? "covered by the others" : "set aside";
  return (
    <Section
      title="Unknown owners"
      folded={`${way} in version ${version.number}`}
      note="Both ways side by side, on the facts as they are now. What others cover can be claimed back once the owner is found."
    >
      <Scroll>
        <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
          <Heads of={["Property", ...HEADS.map((num) => ({ num }))]} />
          <tbody>
            {apart.map((share) => {
              const own = carried.find((each) => keyOf(each) === keyOf(share));
              return (
                <tr key={keyOf(share)}>
                  <th scope="row">{shareName(file, share)}</th>
                  <Cell label={HEADS[0]} cents={own?.amount ?? 0} />
                  <Cell label={HEADS[1]} cents={own?.recoverable ?? 0} />
                  <Cell label={HEADS[2]} cents={share.amount} />
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

const HEADS = ["If covered by others: pays", "including for others", "If set aside: pays"] as const;

function Cell({ label, cents }: { readonly label: string; readonly cents: Cents }) {
  return (
    <td className="num" data-label={label} data-nil={cents === 0 ? "" : undefined}>
      {cents === 0 ? "–" : formatCents(cents)}
    </td>
  );
}

function keyOf({ propertyId, tieInId }: Share): string {
  return propertyId ?? tieInId ?? "";
}

function shareName(file: LineFile, { propertyId, tieInId }: Share): string {
  if (propertyId !== null) return propertyName(file, propertyId);
  return tieInId === null ? "unknown owner" : `unknown owner at ${tieInName(file, tieInId)}`;
}

function Found({ lineId, file, report, found }: PartProps & { readonly found: FoundOwner }) {
  const proposals = proposedEntries(file, report, "one-invoice")?.proposals ?? [];
  const places = new Set([
    ...found.found.map(({ propertyId }) => propertyId),
    ...found.back.map(({ propertyId }) => propertyId),
  ]);
  const waits = proposals.some(({ propertyId }) => places.has(propertyId));
  return (
    <Section title="An owner was found" note={found.sentence}>
      <Scroll>
        <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
          <Heads of={["Property", ...FOUND_HEADS.map((num) => ({ num }))]} />
          <tbody>
            {found.back.map(({ propertyId, was, carried, now, back }) => (
              <tr key={propertyId}>
                <th scope="row">{propertyName(file, propertyId)}</th>
                <Cell label={FOUND_HEADS[0]} cents={was} />
                <Cell label={FOUND_HEADS[1]} cents={carried} />
                <Cell label={FOUND_HEADS[2]} cents={now} />
                <td className="num" data-label={FOUND_HEADS[3]}>
                  {back < 0 ? `pays ${formatCents(-back)} more` : formatCents(back)}
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            {found.found.map(({ propertyId, owes }) => (
              <tr key={propertyId}>
                <th scope="row">{propertyName(file, propertyId)} owes</th>
                <td />
                <td />
                <td />
                <td className="num" data-label="Owes">
                  {formatCents(owes)}
                </td>
              </tr>
            ))}
          </tfoot>
        </table>
      </Scroll>
      <p className="screen-only">
        {waits ? (
          <Link href={`/lines/${lineId}/cost/money#invoice`} className="button">
            Post the credits and the invoice
          </Link>
        ) : (
          "Nothing left to invoice or credit."
        )}
      </p>
    </Section>
  );
}

const FOUND_HEADS = ["Share before", "including for others", "Share now", "Gets back"] as const;
