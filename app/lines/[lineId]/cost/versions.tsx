import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { FrozenShare, SplitVersion } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { RULE_TITLES } from "#lib/domain/split/rule-words.ts";
import { splitStanding } from "#lib/domain/split/stale.ts";
import { concernsUnknown } from "#lib/domain/split/unknown-owner.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { counted, lowered, propertyName, tieInName } from "../names.ts";
import { UNKNOWN_SHARE_WORDS } from "../terms.ts";
import { costAddress } from "./address.ts";
import styles from "./cost.module.css";

/** Every version before the one in force, the newest first; nothing where there is none. */
export function EarlierVersions({
  lineId,
  file,
}: {
  readonly lineId: string;
  readonly file: LineFile;
}) {
  const inForce = latestSplit(file);
  const earlier = file.splits
    .filter((version) => version !== inForce)
    .toSorted((one, other) => other.number - one.number);
  if (earlier.length === 0) return null;
  return (
    <Section title="Earlier versions" folded={counted(earlier.length, "version")}>
      <div className="stack">
        {earlier.map((version) => (
          <Version key={version.id} lineId={lineId} file={file} report={null} version={version} />
        ))}
      </div>
    </Section>
  );
}

/** One version with its amounts; one that is out of date says what changed, and for whom. */
export function Version({
  lineId,
  file,
  report,
  version,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  /** Null for a version that another one has replaced: whether it is out of date no longer matters. */
  readonly report: Report | null;
  readonly version: SplitVersion;
}) {
  const today = report?.today ?? version.chosenOn;
  const sent = version.sentAt === null ? "not sent to anyone yet" : "sent (locked)";
  return (
    <article className={`stack-tight ${styles["version"]}`}>
      <h3>
        Version {version.number}: {lowered(RULE_TITLES[version.rule])}
        {particulars(file, version)}
        {optionWords(file, version)}, {formatCents(version.total)}
      </h3>
      <p>{version.reason}</p>
      <p className="muted">
        {version.chosenBy}, {formatDay(version.chosenOn, today)}; {sent}.
        {concernsUnknown(version)
          ? ` The share of an unknown owner is ${UNKNOWN_SHARE_WORDS[version.unknownShares]}.`
          : ""}
      </p>
      {report === null ? null : <Stale file={file} report={report} version={version} />}
      <Scroll>
        <table className={`plain ${styles["steps"]}`}>
          <Heads of={["Property", { num: "Amount" }, { num: "Of this, recoverable" }]} />
          <tbody>
            {version.shares.map((share) => (
              <tr key={share.propertyId ?? share.tieInId}>
                <th scope="row">{payerWords(file, share)}</th>
                <td className="num">{formatCents(share.amount)}</td>
                <td className="num">
                  {share.recoverable === 0 ? "–" : formatCents(share.recoverable)}
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">Total</th>
              <td className="num">{formatCents(version.total)}</td>
              <td />
            </tr>
          </tfoot>
        </table>
      </Scroll>
      {report === null ? null : <Ways lineId={lineId} version={version} />}
    </article>
  );
}

/** What follows from a version in force. */
function Ways({ lineId, version }: { readonly lineId: string; readonly version: SplitVersion }) {
  return (
    <p className="cluster screen-only">
      <Link
        href={costAddress(lineId, `compare/${version.rule}`, version, {
          unknown: version.unknownShares,
        })}
      >
        Calculations
      </Link>
      <Link href={`/lines/${lineId}/cost/statements`}>Share statements</Link>
      <Link href={`/lines/${lineId}/notices/write?kind=proposed-split`}>
        Write the proposed split letters
      </Link>
      <Link href={`/lines/${lineId}/cost/money#invoice`}>Create invoices</Link>
    </p>
  );
}

function Stale({
  file,
  report,
  version,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly version: SplitVersion;
}) {
  const standing = splitStanding(file, report, version);
  if (!standing.stale) return null;
  return (
    <NoticeBox kind="caution" title="These amounts are out of date">
      <p>{standing.sentence}</p>
      {standing.changes.length === 0 ? null : (
        <ul>
          {standing.changes.map((change) => (
            <li key={change.label}>
              {change.label}. Before: {amountWords(change.was)}. Now: {amountWords(change.now)}.
            </li>
          ))}
        </ul>
      )}
      <p>Choose a rule again above and send the new amounts to everyone who signed the old ones.</p>
    </NoticeBox>
  );
}

function amountWords(amount: number | null): string {
  return amount === null ? "no share" : formatCents(amount);
}

function payerWords(file: LineFile, share: FrozenShare): string {
  if (share.propertyId !== null) return propertyName(file, share.propertyId);
  return share.tieInId === null
    ? "unknown owner"
    : `unknown owner at ${tieInName(file, share.tieInId)}`;
}

function particulars(file: LineFile, version: SplitVersion): string {
  if (version.rule === "upstream-of-fault" && version.faultStation !== null) {
    return ` at ${formatFeet(version.faultStation)}`;
  }
  if (version.rule === "single-payer" && version.payerId !== null) {
    return `, ${propertyName(file, version.payerId)}`;
  }
  return "";
}

/** Only where there is more than one repair option. */
function optionWords(file: LineFile, version: SplitVersion): string {
  const option = file.options.find((each) => each.id === version.optionId);
  return option === undefined || file.options.length < 2 ? "" : ` for “${option.title}”`;
}
