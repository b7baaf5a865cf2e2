import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { HOLD_STOPS, type Hold, type HoldStop } from "#lib/domain/facts/hold.ts";
import { STOP_WORDS } from "#lib/domain/stops/stop-words.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import styles from "./holds.module.css";
import { counted, listed } from "./names.ts";

/**
 * The holds that stop one of `stops`, in one loud box, each with what would lift it; those that
 * somebody waived in a quiet one. Nothing where there are none.
 */
export function HoldBoxes({
  lineId,
  holds,
  stops,
  today,
}: {
  readonly lineId: string;
  readonly holds: readonly Hold[];
  readonly stops: readonly HoldStop[];
  readonly today: string;
}) {
  const mine = holds.filter((hold) => hold.stops.some((stop) => stops.includes(stop)));
  const open = mine.filter((hold) => hold.waiver === null);
  const waived = mine.filter((hold) => hold.waiver !== null);
  if (mine.length === 0) return null;
  return (
    <div className={`stack ${styles["holds"]}`}>
      {open.length === 0 ? null : (
        <NoticeBox kind="hold" title={titleOf(open, stops)}>
          <ul className={styles["list"]}>
            {open.map((hold) => (
              <li key={hold.key}>
                {hold.cause === "household-need" ? null : (
                  <span className="screen-only">
                    <SelectOnStrip id={hold.key}>{hold.subjectLabel}</SelectOnStrip>:{" "}
                  </span>
                )}
                {hold.sentence} <span className="muted">To lift it:</span> {hold.closes}.
              </li>
            ))}
          </ul>
          <p className="screen-only">
            {open.every(({ cause }) => cause === "household-need") ? (
              <Link href={`/lines/${lineId}/who#calls`}>Call them, and record what was agreed</Link>
            ) : (
              <Link href={`/lines/${lineId}/reconcile#holds`}>Settle or waive them</Link>
            )}
          </p>
        </NoticeBox>
      )}
      {waived.map((hold) => (
        <NoticeBox key={hold.key} title={`Waived: ${hold.subjectLabel}`}>
          <p>{hold.sentence}</p>
          {hold.waiver === null ? null : (
            <p className="muted">
              {hold.waiver.by} waived this hold {formatDay(hold.waiver.on, today)}:{" "}
              {hold.waiver.reason}
            </p>
          )}
        </NoticeBox>
      ))}
    </div>
  );
}

/** `2 holds stop the final split and a demand for money`: only what this page is about. */
function titleOf(holds: readonly Hold[], stops: readonly HoldStop[]): string {
  const stopped = HOLD_STOPS.filter(
    (stop) => stops.includes(stop) && holds.some((hold) => hold.stops.includes(stop)),
  );
  const words = listed(stopped.map((stop) => STOP_WORDS[stop]));
  return `${counted(holds.length, "hold stops", "holds stop")} ${words}`;
}
