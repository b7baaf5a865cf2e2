import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Hold } from "#lib/domain/facts/hold.ts";
import { isWaivable } from "#lib/domain/holds/holds.ts";
import { STOP_WORDS } from "#lib/domain/stops/stop-words.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { listed } from "../names.ts";
import type { LinePart } from "../part.ts";
import { liftWaiverAction, waiveAction } from "./actions.ts";
import styles from "./reconcile.module.css";

/** Every hold on the line, what it stops and what lifts it; waiving one is a named person's word. */
export function Holds(part: LinePart) {
  const { holds } = part.report;
  return (
    <Section
      title="Holds"
      id="holds"
      note="A hold stops what would be unsafe or unfair until its cause is settled. Waiving one does not settle it: your name and your reason print in the packet."
    >
      {holds.length === 0 ? (
        <p className="muted">Nothing is held.</p>
      ) : (
        <ul className={`stack ${styles["plain"]}`}>
          {holds.map((hold) => (
            <li key={hold.key}>
              <HoldPart hold={hold} {...part} />
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function HoldPart({ hold, ...part }: LinePart & { readonly hold: Hold }) {
  const { report, mayFile } = part;
  const stopped = listed(hold.stops.map((stop) => STOP_WORDS[stop]));
  const onStrip = hold.cause !== "station-relative-only" && hold.cause !== "household-need";
  const { waiver } = hold;
  return (
    <NoticeBox
      kind={waiver === null ? "hold" : "note"}
      title={
        waiver === null
          ? `Hold: ${hold.subjectLabel}. Stops ${stopped}.`
          : `Waived: ${hold.subjectLabel}`
      }
    >
      <p>{hold.sentence}</p>
      {waiver === null ? (
        <p>
          <span className="muted">To lift it: </span>
          {hold.closes}
        </p>
      ) : (
        <p className="muted">
          {waiver.by} waived it, {formatDay(waiver.on, report.today)}: {waiver.reason}
        </p>
      )}
      <div className="cluster screen-only">
        {onStrip ? <SelectOnStrip id={hold.key}>Show on the strip</SelectOnStrip> : null}
        {hold.cause === "household-need" ? (
          <Link href={`/lines/${part.lineId}/who#calls`}>Record a call to them</Link>
        ) : null}
        {mayFile && isWaivable(hold.cause) ? <WaiverForm hold={hold} {...part} /> : null}
      </div>
    </NoticeBox>
  );
}

function WaiverForm({ hold, lineId }: LinePart & { readonly hold: Hold }) {
  if (hold.waiver !== null) {
    return (
      <ActionForm
        action={liftWaiverAction.bind(null, lineId)}
        className="cluster"
        label={`Take back the waiver on ${hold.subjectLabel}`}
      >
        <input type="hidden" name="waiverId" value={hold.waiver.id} />
        <SubmitButton quiet pendingWord="Taking back …">
          Take the waiver back
        </SubmitButton>
      </ActionForm>
    );
  }
  return (
    <details>
      <summary>
        Waive it<span className="hidden">: {hold.subjectLabel}</span>
      </summary>
      <ActionForm
        action={waiveAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label={`Waive the hold on ${hold.subjectLabel}`}
      >
        <input type="hidden" name="holdKey" value={hold.key} />
        <Field
          label="Why work may go on all the same"
          name="words"
          rows={2}
          required
          hint="In your own words; it is kept with your name and the day."
        />
        <div>
          <SubmitButton quiet pendingWord="Waiving …">
            Waive in my name
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
