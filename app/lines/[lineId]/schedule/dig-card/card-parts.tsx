import Link from "next/link";
import { Fold } from "#app/_components/fold.client.tsx";
import type { DigCard } from "#lib/domain/crew/dig-card.ts";
import type { GasCrossing } from "#lib/domain/crew/gas-crossing.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { isSettled, openDoors } from "#lib/domain/rollcall/roll-call.ts";
import { rollCallLine } from "#lib/domain/rollcall/sentence.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { propertyName } from "../../names.ts";
import { DOOR_STATE_WORDS, doorName } from "../roll-call/door-words.ts";
import styles from "./dig-card.module.css";

export interface CardPart {
  readonly lineId: string;
  readonly file: LineFile;
  readonly card: DigCard;
  readonly today: Day;
}

/** Who was reached before drains are paused; the open doors by name. */
export function Doors({ lineId, file, card: { rollCall }, today }: CardPart) {
  if (rollCall === null)
    return (
      <section aria-label="Roll-call">
        <h2>Roll-call</h2>
        <p>No drain shutdown is entered for this day.</p>
      </section>
    );
  const { pause, doors } = rollCall;
  const open = openDoors(rollCall);
  return (
    <section aria-label="Roll-call">
      <h2>Roll-call</h2>
      <p className={open.length === 0 ? undefined : styles["loud"]}>
        {rollCallLine(rollCall, today)}
        {pause.at === "" || pause.until === ""
          ? ""
          : ` (${formatTime(pause.at)} to ${formatTime(pause.until)})`}
      </p>
      <ul className={styles["doors"]}>
        {[...open, ...doors.filter(isSettled)].map((door) => (
          <li key={`${door.propertyId} ${door.unitId ?? ""}`}>
            <span aria-hidden="true">{isSettled(door) ? "☑" : "☐"}</span> {doorName(file, door)}:{" "}
            {DOOR_STATE_WORDS[door.state].toLowerCase()}
            {door.people
              .slice(0, isSettled(door) ? 0 : 1)
              .filter(({ phone }) => phone !== "")
              .map(({ id, phone }) => (
                <span key={id} className="nowrap">
                  , {formatPhone(phone)}
                </span>
              ))}
          </li>
        ))}
      </ul>
      <p className="screen-only small">
        <Link href={`/lines/${lineId}/schedule/roll-call`}>Call the rest</Link>
      </p>
    </section>
  );
}

const GAS_WORDS: Record<GasCrossing["state"], string> = {
  seen: "Something crosses the pipe: it may be a gas line",
  "cannot-tell": "Cannot tell: treat it as there",
  clear: "No run saw anything cross the pipe",
};

export function Gas({ card: { gas } }: { readonly card: DigCard }) {
  return (
    <section aria-label="Gas line through the pipe">
      <h2>Gas line through the pipe</h2>
      <p className={gas.state === "clear" ? undefined : styles["loud"]}>{GAS_WORDS[gas.state]}.</p>
      {gas.sentences.map((sentence) => (
        <p key={sentence} className="small">
          {sentence}
        </p>
      ))}
    </section>
  );
}

export function Trench({ card: { trench } }: { readonly card: DigCard }) {
  if (trench === null) return null;
  return (
    <section aria-label="Depth" className={styles["rules"]}>
      <h2>Depth, and what it demands</h2>
      <p>{trench.why}</p>
      <Fold onPhone bare summary={`${trench.rules.length} rules at this depth`}>
        <ul className={styles["tight"]}>
          {trench.rules.map(({ key, words }) => (
            <li key={key}>{words}</li>
          ))}
        </ul>
      </Fold>
    </section>
  );
}

/** What households need, for the crew alone: it is in no letter and no packet. */
export function Needs({ lineId, file, card: { needs } }: CardPart) {
  if (needs.length === 0) return null;
  return (
    <section aria-label="Households with a need">
      <h2>Households with a need (crew only)</h2>
      <ul className={styles["tight"]}>
        {needs.map(({ party, propertyId, agreed }) => (
          <li key={`${party.id} ${propertyId}`}>
            <span className="strong">
              {party.name}, {propertyName(file, propertyId)}
            </span>
            : {party.needs}.{" "}
            {agreed === null ? (
              <span className={styles["loud"]}>
                Not agreed to this day: call first
                {party.phone === "" ? null : (
                  <>
                    , <span className="nowrap">{formatPhone(party.phone)}</span>
                  </>
                )}
                .
              </span>
            ) : (
              `Agreed: ${agreed}`
            )}
          </li>
        ))}
      </ul>
      <p className="screen-only small">
        <Link href={`/lines/${lineId}/who/calls`}>Record a call</Link>
      </p>
    </section>
  );
}
