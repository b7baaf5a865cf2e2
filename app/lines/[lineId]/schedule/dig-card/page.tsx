import type { Metadata } from "next";
import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import { PrintButton } from "#app/_components/print-button.client.tsx";
import { digCard, nextDigDay } from "#lib/domain/crew/dig-card.ts";
import { isDay } from "#lib/domain/time/days.ts";
import { formatDay, formatFullDay } from "#lib/domain/time/format-day.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { Doors, Gas, Needs, Trench } from "./card-parts.tsx";
import { Branches, Inspections, Permits, Utilities } from "./card-tables.tsx";
import styles from "./dig-card.module.css";

export const metadata: Metadata = { title: "Dig card" };

/** The card of one morning for the crew: on a phone, and on one sheet of paper. */
export default async function DigCardPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ on?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report, office } = await lineFileOf(lineId);
  const asked = (await searchParams).on;
  const on = typeof asked === "string" && isDay(asked) ? asked : nextDigDay(file, report.today);
  const card = digCard(file, report, on);
  const part = { lineId, file, card, today: report.today };
  const stops = card.stops.length;
  return (
    <div className={`one-page ${styles["card"]}`}>
      <PageHead
        asked={`Morning of ${formatFullDay(on)}: may we dig?`}
        answer={
          stops === 0
            ? "Nothing on file is against digging"
            : `Do not dig: ${counted(stops, "thing")} ${stops === 1 ? "is" : "are"} open`
        }
      >
        <p className="muted small">
          {file.line.name}
          {file.line.town === "" ? "" : `, ${file.line.town}`}
          {office === null || office.phone === "" ? "" : `. Office: ${office.phone}`}
        </p>
        <form className="cluster cluster-end screen-only" method="get">
          <div className="field">
            <label htmlFor="card-on">Day</label>
            <input id="card-on" className="input" type="date" name="on" defaultValue={on} />
          </div>
          <button type="submit" className="button">
            Show this day
          </button>
          <PrintButton />
        </form>
      </PageHead>
      {stops === 0 ? null : (
        <ul className={styles["stops"]} aria-label="Stop-work reasons">
          {card.stops.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
      <p className={styles["always"]}>
        Stop at any time if: the ground moves, gas is smelled, a line shows up that is not marked,
        sewage rises, or someone is unsure. The competent person on site decides.
      </p>
      <div className={styles["parts"]}>
        <Utilities {...part} />
        <div className={styles["flow"]}>
          <Doors {...part} />
          <Gas card={card} />
          <Permits {...part} />
          <Inspections {...part} />
          <Needs {...part} />
        </div>
        <Trench card={card} />
        <Branches {...part} />
      </div>
      <p className={styles["read"]}>
        As on file {formatDay(report.today, report.today)}. Read to the crew by{" "}
        <span className="nowrap">
          <span className={styles["line"]} /> at <span className={styles["line"]} />
        </span>
      </p>
      <p className="screen-only small">
        <Link href={`/lines/${lineId}/authority/permits#locates`}>Record a utility’s response</Link>
        {" · "}
        <Link href={`/lines/${lineId}/schedule/roll-call`}>Roll-call</Link>
        {" · "}
        <Link href={`/lines/${lineId}/schedule#crew-safety`}>All safety rules</Link>
      </p>
    </div>
  );
}
