import { Empty } from "#app/_components/empty.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
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
import { lowered, propertyName, tieInName } from "../names.ts";
import { UNKNOWN_SHARE_WORDS } from "../terms.ts";
import styles from "./cost.module.css";

/** Every version that was chosen, the newest first; a stale one says what changed, and for whom. */
export function Versions({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  const inForce = latestSplit(file);
  if (inForce === null) {
    return (
      <Empty
        title="No rule is chosen yet."
        example="By portion used, because each foot is then paid by those whose flow passes it"
      >
        <p>
          Price the work, look at what each rule does to each neighbour, then choose one and say
          why.
        </p>
      </Empty>
    );
  }
  const earlier = file.splits
    .filter((version) => version !== inForce)
    .toSorted((one, other) => other.number - one.number);
  return (
    <div className="stack">
      <Version file={file} report={report} version={inForce} />
      {earlier.length === 0 ? null : (
        <details>
          <summary>
            {earlier.length === 1 ? "The earlier version" : `${earlier.length} earlier versions`}
          </summary>
          <div className="stack">
            {earlier.map((version) => (
              <Version key={version.id} file={file} report={null} version={version} />
            ))}
          </div>
        </details>
      )}
    </div>
  );
}

function Version({
  file,
  report,
  version,
}: {
  readonly file: LineFile;
  /** Null for a version that another one has replaced: whether it is stale no longer matters. */
  readonly report: Report | null;
  readonly version: SplitVersion;
}) {
  const today = report?.today ?? version.chosenOn;
  const sent = version.sentAt === null ? "not sent to anybody yet" : "sent, so it stays as it was";
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
          <thead>
            <tr>
              <th scope="col">Property</th>
              <th scope="col" className="num">
                Amount
              </th>
              <th scope="col" className="num">
                Of which recoverable
              </th>
            </tr>
          </thead>
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
              <th scope="row">In all</th>
              <td className="num">{formatCents(version.total)}</td>
              <td />
            </tr>
          </tfoot>
        </table>
      </Scroll>
    </article>
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
    <NoticeBox kind="caution" title="These amounts are stale">
      <p>{standing.sentence}</p>
      {standing.changes.length === 0 ? null : (
        <ul>
          {standing.changes.map((change) => (
            <li key={change.label}>
              {change.label}: {amountWords(change.was)} then, {amountWords(change.now)} now
            </li>
          ))}
        </ul>
      )}
      <p>Choose again below, and put the new amounts to everybody who signed the old ones.</p>
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

/** Only where there is more than one way of doing the work. */
function optionWords(file: LineFile, version: SplitVersion): string {
  const option = file.options.find((each) => each.id === version.optionId);
  return option === undefined || file.options.length < 2 ? "" : ` for “${option.title}”`;
}
