import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { HOLD_STOPS, type Hold, type HoldStop } from "#lib/domain/facts/hold.ts";
import { CAUSE_WORDS } from "#lib/domain/stops/cause-words.ts";
import { STOP_WORDS } from "#lib/domain/stops/stop-words.ts";
import styles from "./holds.module.css";
import { counted, listed } from "./names.ts";

/**
 * The holds that stop one of `stops`, by name and cause in one loud box, with the way to where they are
 * told in full; those that were waived in a quiet line. Nothing where there are none.
 */
export function HoldBoxes({
  lineId,
  holds,
  stops,
}: {
  readonly lineId: string;
  readonly holds: readonly Hold[];
  readonly stops: readonly HoldStop[];
}) {
  const mine = holds.filter((hold) => hold.stops.some((stop) => stops.includes(stop)));
  const open = mine.filter((hold) => hold.waiver === null);
  const waived = mine.filter((hold) => hold.waiver !== null);
  if (mine.length === 0) return null;
  return (
    <div className={`stack-tight ${styles["holds"]}`}>
      {open.length === 0 ? null : (
        <NoticeBox kind="hold" title={titleOf(open, stops)}>
          <p>
            {byCause(open).map((group) => (
              <span key={group[0].cause}>
                <Names holds={group} /> ({CAUSE_WORDS[group[0].cause]}).{" "}
              </span>
            ))}
            <Way lineId={lineId} holds={open} />
          </p>
        </NoticeBox>
      )}
      {waived.length === 0 ? null : (
        <p className="muted">
          Waived: {listed(shortList(waived.map(waivedWords)))}.{" "}
          <Link href={`/lines/${lineId}/reconcile#holds`} className="screen-only">
            See why
          </Link>
        </p>
      )}
    </div>
  );
}

/** So many are named; of more, the first and how many there are. */
const NAMED = 12;

/** Each name selects its mark on the strip; a household’s need has none. */
function Names({ holds }: { readonly holds: readonly Hold[] }) {
  const named = holds.length > NAMED ? holds.slice(0, NAMED - 1) : holds;
  const count = named.length + (named.length < holds.length ? 1 : 0);
  return (
    <>
      {named.map((hold, at) => (
        <span key={hold.key}>
          {at === 0 ? "" : joint(at, count)}
          {hold.cause === "household-need" ? (
            hold.subjectLabel
          ) : (
            <SelectOnStrip id={hold.key}>{hold.subjectLabel}</SelectOnStrip>
          )}
        </span>
      ))}
      {named.length === holds.length ? null : ` and ${holds.length - named.length} more`}
    </>
  );
}

/** What stands before the next name of a list. */
function joint(at: number, count: number): string {
  return at === count - 1 ? " and " : ", ";
}

function Way({ lineId, holds }: { readonly lineId: string; readonly holds: readonly Hold[] }) {
  return holds.every(({ cause }) => cause === "household-need") ? (
    <Link href={`/lines/${lineId}/who/calls`} className="screen-only">
      Call them and record what was agreed
    </Link>
  ) : (
    <Link href={`/lines/${lineId}/reconcile#holds`} className="screen-only">
      What lifts them
    </Link>
  );
}

type Group = readonly [Hold, ...Hold[]];

/** Holds of one cause together, in the order of their first. */
function byCause(holds: readonly Hold[]): Group[] {
  const groups = new Map<string, Group>();
  for (const hold of holds) {
    const group = groups.get(hold.cause);
    groups.set(hold.cause, group === undefined ? [hold] : [...group, hold]);
  }
  return [...groups.values()];
}

function shortList(words: readonly string[]): readonly string[] {
  if (words.length <= NAMED) return words;
  return [...words.slice(0, NAMED - 1), `${words.length - NAMED + 1} more`];
}

function waivedWords({ subjectLabel, waiver }: Hold): string {
  return waiver === null ? subjectLabel : `${subjectLabel} (${waiver.by})`;
}

/** `2 holds stop the final split and a demand for money`: only what this page is about. */
function titleOf(holds: readonly Hold[], stops: readonly HoldStop[]): string {
  const stopped = HOLD_STOPS.filter(
    (stop) => stops.includes(stop) && holds.some((hold) => hold.stops.includes(stop)),
  );
  const words = listed(stopped.map((stop) => STOP_WORDS[stop]));
  return `${counted(holds.length, "hold stops", "holds stop")} ${words}`;
}
