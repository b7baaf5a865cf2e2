import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Hold } from "#lib/domain/facts/hold.ts";
import { isWaivable } from "#lib/domain/holds/holds.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { STOP_WORDS } from "#lib/domain/stops/stop-words.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { counted, listed } from "../names.ts";
import type { LinePart } from "../part.ts";
import { liftWaiverAction, waiveAction } from "./actions.ts";
import styles from "./reconcile.module.css";

/** So many holds stand on a page. */
const AT_ONCE = 25;

/** The page of them that the address asks for. */
type Asked = string | string[] | undefined;

/** Every hold on the line, what it stops and what lifts it; waiving one is a named person's word. */
export function Holds({ asked, ...part }: LinePart & { readonly asked: Asked }) {
  const { holds } = part.report;
  const from = pageFrom(asked, AT_ONCE);
  return (
    <Section
      title="Holds"
      id="holds"
      foldedOnPhone={counted(holds.length, "hold")}
      note="A hold blocks unsafe or unfair steps until its cause is resolved. A waiver does not resolve it: your name and reason print in the packet."
    >
      {holds.length === 0 ? (
        <p className="muted">No holds.</p>
      ) : (
        <ul className={styles["holds"]}>
          {onPage(holds, from, AT_ONCE).map((hold) => (
            <li key={hold.key} data-waived={hold.waiver !== null}>
              <HoldPart hold={hold} {...part} />
            </li>
          ))}
        </ul>
      )}
      <Pages
        from={from}
        most={AT_ONCE}
        of={holds.length}
        what="holds"
        href={(page) => `/lines/${part.lineId}/reconcile?holds=${page}#holds`}
      />
    </Section>
  );
}

function HoldPart({ hold, ...part }: LinePart & { readonly hold: Hold }) {
  const { report, mayFile } = part;
  const { waiver } = hold;
  return (
    <>
      <div>
        <h3 className={styles["hold-name"]}>
          <HoldName hold={hold} />
        </h3>
        <p className="small muted">
          {waiver === null
            ? `Stops ${listed(hold.stops.map((stop) => STOP_WORDS[stop]))}.`
            : `Waived by ${waiver.by}, ${formatDay(waiver.on, report.today)}: ${waiver.reason}`}
        </p>
      </div>
      <div>
        <p>{hold.sentence}</p>
        {waiver === null ? (
          <p>
            <span className="muted">To lift it: </span>
            {hold.closes}.
          </p>
        ) : null}
      </div>
      <div className="screen-only">
        {hold.cause === "household-need" ? (
          <Link href={`/lines/${part.lineId}/who/calls`}>Record a call</Link>
        ) : null}
        {mayFile && isWaivable(hold.cause) ? <WaiverForm hold={hold} {...part} /> : null}
      </div>
    </>
  );
}

/** Selects its mark on the strip, where it has one. */
function HoldName({ hold }: { readonly hold: Hold }) {
  const { cause, key, subjectLabel, waiver } = hold;
  const onStrip = cause !== "station-relative-only" && cause !== "household-need";
  return (
    <>
      <span className={waiver === null ? "tag tag-loud" : "tag tag-done"}>
        {waiver === null ? "Hold" : "Waived"}
      </span>{" "}
      {onStrip ? (
        <SelectOnStrip id={key}>{capital(subjectLabel)}</SelectOnStrip>
      ) : (
        capital(subjectLabel)
      )}
    </>
  );
}

function WaiverForm({ hold, lineId }: LinePart & { readonly hold: Hold }) {
  if (hold.waiver !== null) {
    return (
      <ActionForm
        action={liftWaiverAction.bind(null, lineId)}
        className="cluster"
        label={`Withdraw the waiver on ${hold.subjectLabel}`}
      >
        <input type="hidden" name="waiverId" value={hold.waiver.id} />
        <SubmitButton quiet pendingWord="Withdrawing …">
          Withdraw the waiver
        </SubmitButton>
      </ActionForm>
    );
  }
  return (
    <details>
      <summary>
        Waive<span className="hidden">: {hold.subjectLabel}</span>
      </summary>
      <ActionForm
        action={waiveAction.bind(null, lineId)}
        className={styles["decide"] ?? ""}
        label={`Waive the hold on ${hold.subjectLabel}`}
      >
        <input type="hidden" name="holdKey" value={hold.key} />
        <Field
          label="Why work can proceed"
          name="words"
          rows={2}
          required
          hint="Kept with your name and today’s date."
        />
        <div>
          <SubmitButton quiet pendingWord="Waiving …">
            Waive (signed by me)
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
