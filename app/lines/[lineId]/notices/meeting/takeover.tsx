import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { MEETING_WISHES, type Meeting, type MeetingWish } from "#lib/domain/facts/meeting.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { lettersOfMeeting, wordsOfMeeting } from "#lib/domain/paper/meeting-letters.ts";
import { type MeetingGuest, meetingGuests } from "#lib/domain/paper/meeting-sheet.ts";
import { counted, partyName, propertyName } from "../../names.ts";
import { LETTER_WORDS } from "../../terms.ts";
import { draftMeetingAction, recordMeetingAction } from "./actions.ts";
import styles from "./meeting.module.css";

const WISH_WORDS: Record<MeetingWish, string> = {
  findings: "what was found",
  "own-figure": "their own share",
  "test-here": "a test at their place",
  "let-in": "consent to enter",
  "sign-agreement": "the agreement",
};

interface TakeoverProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly meeting: Meeting;
  readonly work: boolean;
}

/** After the meeting: what stands on the sheet is taken over, and the letters follow from it. */
export function MeetingTakeover(props: TakeoverProps) {
  const { lineId, file, report, meeting, work } = props;
  const { letters, waiting } = lettersOfMeeting(file, report, meeting);
  const words = wordsOfMeeting(file, meeting.id);
  const count = letters.reduce((sum, { recipients }) => sum + recipients.length, 0);
  return (
    <div className="screen-only stack">
      <Section
        title="From the sheet"
        id="takeover"
        note="Who came and what they marked, one person at a time. The last entry for a person counts."
      >
        <ul className={styles["people"]}>
          {meetingGuests(file).map((guest) => (
            <Person key={`${guest.party.id} ${guest.propertyId}`} guest={guest} {...props} />
          ))}
        </ul>
      </Section>
      <Section
        title="Letters that follow"
        id="letters"
        note={`${counted(words.filter(({ came }) => came).length, "person", "people")} came. An objection or a question is recorded with their letter, as a reply.`}
      >
        {count === 0 ? <p>No letter is left to draft.</p> : null}
        <ul>
          {letters.map(({ kind, recipients }) => (
            <li key={kind}>
              {LETTER_WORDS[kind]}:{" "}
              {recipients.map(({ partyId }) => partyName(file, partyId)).join(", ")}
            </li>
          ))}
          {waiting.map(({ word, wish, because }) => (
            <li key={`${word.id} ${wish}`} className="muted">
              {partyName(file, word.partyId)} asked for {WISH_WORDS[wish]}, which cannot be written
              yet: {because}.
            </li>
          ))}
        </ul>
        {count === 0 || !work ? null : (
          <ActionForm
            action={draftMeetingAction.bind(null, { lineId, meetingId: meeting.id })}
            label="Draft the letters"
          >
            <div>
              <SubmitButton pendingWord="Drafting …">Draft {counted(count, "letter")}</SubmitButton>
            </div>
          </ActionForm>
        )}
        <p>
          <Link href={`/lines/${lineId}/notices`}>Drafts and replies</Link>
        </p>
      </Section>
    </div>
  );
}

function Person({ guest, lineId, file, meeting, work }: TakeoverProps & { guest: MeetingGuest }) {
  const { party, propertyId } = guest;
  const word = wordsOfMeeting(file, meeting.id).find(
    (each) => each.partyId === party.id && each.propertyId === propertyId,
  );
  const name = `${party.name}, ${propertyName(file, propertyId)}`;
  const asked = (word?.wishes ?? []).map(({ wish }) => wish);
  const came = word?.came === true ? "came" : "did not come";
  return (
    <li>
      <details>
        <summary>
          {name}: {word === undefined ? "not entered yet" : came}
          {asked.length === 0
            ? ""
            : `; asked for ${asked.map((wish) => WISH_WORDS[wish]).join(", ")}`}
        </summary>
        {word === undefined || word.words === "" ? null : <p>“{word.words}”</p>}
        {work ? (
          <ActionForm
            action={recordMeetingAction.bind(null, {
              lineId,
              meetingId: meeting.id,
              partyId: party.id,
              propertyId,
              seen: word?.id ?? "",
            })}
            label={`${name}: from the sheet`}
          >
            <Tick label="Came" name="came" defaultChecked={word?.came ?? true} />
            {MEETING_WISHES.map((wish) => (
              <Tick
                key={wish}
                label={`Asked for ${WISH_WORDS[wish]}`}
                name="wishes"
                value={wish}
                defaultChecked={asked.includes(wish)}
              />
            ))}
            <Field label="What they said" name="words" rows={2} defaultValue={word?.words} />
            <div>
              <SubmitButton pendingWord="Recording …" quiet>
                Enter
              </SubmitButton>
            </div>
          </ActionForm>
        ) : null}
      </details>
    </li>
  );
}
