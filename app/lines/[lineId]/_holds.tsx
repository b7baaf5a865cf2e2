import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { formatDay } from "#lib/domain/calendar/format-day.ts";
import { STOP_WORDS } from "#lib/domain/desk/stop-words.ts";
import type { Hold, HoldStop } from "#lib/domain/tiein/hold.ts";
import { listed } from "./_names.ts";

/** The holds that stop one of `stops`, each with what would lift it; nothing where there are none. */
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
  if (mine.length === 0) return null;
  return (
    <div className="stack">
      {mine.map((hold) => (
        <HoldBox key={hold.key} hold={hold} today={today} />
      ))}
      <p className="small">
        <Link href={`/lines/${lineId}/agree`}>Settle tie-ins, entries and holds</Link>
      </p>
    </div>
  );
}

function HoldBox({ hold, today }: { readonly hold: Hold; readonly today: string }) {
  const stopped = listed(hold.stops.map((stop) => STOP_WORDS[stop]));
  if (hold.waiver !== null) {
    return (
      <NoticeBox title={`Waived: ${hold.subjectLabel}`}>
        <p>{hold.sentence}</p>
        <p className="muted">
          {hold.waiver.by} waived this hold {formatDay(hold.waiver.on, today)}: {hold.waiver.reason}
        </p>
      </NoticeBox>
    );
  }
  return (
    <NoticeBox kind="hold" title={`Hold: ${hold.subjectLabel}. Stops ${stopped}.`}>
      <p>{hold.sentence}</p>
      <p>
        <span className="muted">To lift it: </span>
        {hold.closes}
      </p>
    </NoticeBox>
  );
}
