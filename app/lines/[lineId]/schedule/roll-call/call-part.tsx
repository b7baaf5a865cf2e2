import Link from "next/link";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RollCallMatter } from "#lib/domain/facts/roll-call.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { type Door, isSettled, type RollCall } from "#lib/domain/rollcall/roll-call.ts";
import { rollCallSentence } from "#lib/domain/rollcall/sentence.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { listed, propertyName } from "../../names.ts";
import { DoorForm, WaiveForm } from "./door-form.tsx";
import { DOOR_STATE_WORDS, doorName, saidAtDoor } from "./door-words.ts";
import styles from "./roll-call.module.css";

interface CallPartProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly call: RollCall;
  readonly today: Day;
  readonly zone: string;
  /** Who is at the screen, if they may record; null: they may not. */
  readonly caller: string | null;
  readonly mayWaive: boolean;
}

const TITLES: Record<RollCallMatter, string> = {
  "drains-off": "Before drains are shut down",
  "drains-on": "Drains are back on",
};

/** One roll-call, door by door: those that are open first, each with its buttons for a thumb. */
export function CallPart(props: CallPartProps) {
  const { call, file, today } = props;
  const open = call.doors.filter((door) => !isSettled(door));
  const settled = call.doors.filter(isSettled);
  return (
    <Section
      title={`${TITLES[call.matter]}: ${rollCallSentence(call).toLowerCase()}`}
      id={call.matter}
      note={`${pauseWords(call, today)} ${whoWords(call, file)}`}
    >
      {props.mayWaive && call.matter === "drains-on" ? (
        <p className="screen-only">
          <Link href={`/lines/${props.lineId}/notices/write?kind=drains-back`}>
            Write the letter “You may use your drains again”
          </Link>
        </p>
      ) : null}
      <ul className={styles["doors"]}>
        {[...open, ...settled].map((door) => (
          <DoorRow key={`${door.propertyId} ${door.unitId ?? ""}`} door={door} {...props} />
        ))}
      </ul>
    </Section>
  );
}

function pauseWords({ pause }: RollCall, today: Day): string {
  const until =
    pause.lastOn === null || pause.lastOn <= pause.on
      ? ""
      : ` to ${formatDay(pause.lastOn, today)}`;
  const hours =
    pause.at === "" || pause.until === ""
      ? "; the hours are not set yet, so no one can be told them"
      : `, ${formatTime(pause.at)} to ${formatTime(pause.until)}`;
  return `Drains are shut down ${formatDay(pause.on, today)}${until}${hours}.`;
}

/** From whose flow passes the work; whoever joins below is named, so that nobody calls them in vain. */
function whoWords({ mustStop, matter }: RollCall, file: LineFile): string {
  if (matter === "drains-on") return "Everyone who was asked to stop hears that it is over.";
  const { lowest, below } = mustStop;
  if (lowest === null)
    return "Everyone on the line is asked: some of the work has no place yet, so no one can be left out.";
  const spared =
    below.length === 0
      ? ""
      : ` Not asked: ${listed(below.map((id) => propertyName(file, id)))}, whose drains join below it.`;
  return `Asked is everyone whose flow passes, or may pass, the work from ${formatFeet(lowest)} up.${spared}`;
}

function DoorRow({ door, ...part }: CallPartProps & { readonly door: Door }) {
  const { file, caller, lineId } = part;
  const settled = isSettled(door);
  const name = doorName(file, door);
  return (
    <li className={styles["door"]} data-settled={settled}>
      <div className={styles["head"]}>
        <h3>{name}</h3>
        <span className={settled ? "tag tag-done" : "tag tag-loud"}>{stateWords(door)}</span>
      </div>
      <People door={door} />
      <LastWord door={door} {...part} />
      {door.state === "call-first" ? (
        <p>
          Someone here cannot simply be without drains.{" "}
          <a href={`/lines/${lineId}/who/calls`}>Call, agree on the day, and record it</a>; then
          check them off here.
        </p>
      ) : null}
      {caller === null || door.state === "call-first" ? null : (
        <Presses door={door} name={name} settled={settled} {...part} />
      )}
    </li>
  );
}

interface PressesProps extends CallPartProps {
  readonly door: Door;
  readonly name: string;
  readonly settled: boolean;
}

function Presses({ settled, ...part }: PressesProps) {
  const form = <DoorForm {...part} />;
  if (!settled)
    return (
      <>
        {form}
        {part.mayWaive ? <WaiveForm {...part} /> : null}
      </>
    );
  return (
    <details className="screen-only">
      <summary>
        Change<span className="hidden"> {part.name}</span>
      </summary>
      {form}
    </details>
  );
}

function stateWords({ state, word }: Door): string {
  return state === "reached" && word?.answer === "agreed" ? "Agreed" : DOOR_STATE_WORDS[state];
}

function People({ door: { people, passes } }: { readonly door: Door }) {
  const perhaps = passes === "perhaps" ? " May be on the line." : "";
  if (people.length === 0)
    return <p className="muted">No one is on file here: knock, or leave a note.{perhaps}</p>;
  return (
    <p>
      {people.map(({ id, name, phone, language }, at) => (
        <span key={id}>
          {at === 0 ? null : ", "}
          {name}
          {language === "es" ? " (Spanish)" : null}
          {phone === "" ? null : (
            <>
              {" "}
              <a className="nowrap" href={`tel:${phone.replaceAll(/[^+\d]/g, "")}`}>
                {formatPhone(phone)}
              </a>
            </>
          )}
        </span>
      ))}
      <span className="muted">{perhaps}</span>
    </p>
  );
}

function LastWord({ door: { word }, zone }: CallPartProps & { readonly door: Door }) {
  if (word === null) return null;
  return (
    <p className="small muted">
      {saidAtDoor(word)} {word.answer === "waived" ? "Waived by" : "Recorded by"} {word.by},{" "}
      {momentWords(word.at, zone, "en")}
    </p>
  );
}
