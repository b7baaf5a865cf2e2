import { NoticeBox } from "#app/_components/notice-box.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";

/** Where no one is known to be responsible: said first, with what would resolve it. */
export function Unclear({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  const unclear = report.reaches.filter((reach) => reach.holder === "unclear");
  if (unclear.length === 0) return null;
  const closes = report.holds
    .filter((hold) => hold.cause === "responsibility-unclear")
    .map((hold) => hold.closes);
  const first = unclear[0];
  const last = unclear.at(-1);
  const whole = unclear.length === report.reaches.length;
  const where = unclear
    .map((reach) => `${plainFeet(reach.from)} to ${formatFeet(reach.to)}`)
    .join(", ");
  return (
    <div className="page-head">
      <NoticeBox
        kind="hold"
        title={
          whole && first !== undefined && last !== undefined
            ? `Unclear for the whole line (${plainFeet(first.from)} to ${formatFeet(last.to)})`
            : `Unclear: ${where}`
        }
      >
        {[...new Set(unclear.map((reach) => reach.reason))].map((reason) => (
          <p key={reason}>{reason}</p>
        ))}
        {file.authority === null || file.line.ruleId === null ? null : (
          <p>
            <span className="muted">To resolve it: </span>
            {closes[0] ?? WHAT_SETTLES}
          </p>
        )}
      </NoticeBox>
    </div>
  );
}

const WHAT_SETTLES =
  "ask the authority for its written answer on this section, or enter the recorded agreement, or enter the boundary’s station where the rule turns on it.";
