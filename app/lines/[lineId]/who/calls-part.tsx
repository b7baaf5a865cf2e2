import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import type { CallPurpose, HouseholdCall } from "#lib/domain/facts/household-call.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  type HouseholdNeed,
  hasAgreed,
  householdNeeds,
} from "#lib/domain/party/household-needs.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { propertyName, stakeAt } from "../names.ts";
import { CALL_OUTCOME_WORDS, CALL_PURPOSE_WORDS, optionsOf } from "../terms.ts";
import { recordCallAction } from "./call-actions.ts";

interface CallsProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  /** Who is at the screen, if they may record a call; null: they may not. */
  readonly caller: string | null;
  /** Only what is planned: this purpose and day, at these places. */
  readonly about?: {
    readonly purpose: CallPurpose;
    readonly day: string;
    readonly places: readonly string[];
  };
}

/**
 * Households that cannot simply be without drains: what they need, what was agreed with them, and the
 * form for one more call. For the office and the crew; it stands in no letter and no packet.
 */
export function CallFirst({ about, ...part }: CallsProps) {
  const needs = householdNeeds(part.file).filter(
    ({ propertyId }) => about === undefined || about.places.includes(propertyId),
  );
  if (needs.length === 0) return null;
  return (
    <Section
      title="Call these households first"
      id="calls"
      note="No drain shutdown and no test visit until they have been called and agreed to the day. For the office and crew only: never in a letter or packet."
    >
      <div className="pair">
        {needs.map((need) => (
          <Household
            key={`${need.party.id} ${need.propertyId}`}
            need={need}
            {...(about === undefined ? {} : { about })}
            {...part}
          />
        ))}
      </div>
    </Section>
  );
}

function Household({ need, about, ...part }: CallsProps & { readonly need: HouseholdNeed }) {
  const { file, today, caller } = part;
  const { party, propertyId } = need;
  const calls = file.householdCalls.filter(
    (call) =>
      call.partyId === party.id &&
      call.propertyId === propertyId &&
      (about === undefined || (call.purpose === about.purpose && call.forDay === about.day)),
  );
  const agreed = about !== undefined && hasAgreed(file, need, about);
  return (
    <article className="stack-tight">
      <h3>
        {party.name}, {stakeAt(file, party.id, propertyId) || propertyName(file, propertyId)}
      </h3>
      <p>
        <span className="strong">{party.needs}</span>
        {party.needsSaidBy === "" ? null : (
          <span className="muted"> (said by {party.needsSaidBy})</span>
        )}
        {party.phone === "" ? (
          <span className="muted"> (no phone on file)</span>
        ) : (
          <>
            {" · "}
            <a className="nowrap" href={`tel:${party.phone.replaceAll(/[^+\d]/g, "")}`}>
              {formatPhone(party.phone)}
            </a>
          </>
        )}
      </p>
      {about === undefined ? null : (
        <p>
          <span className={agreed ? "tag tag-done" : "tag strong"}>
            {agreed ? "agreed" : "call first"}
          </span>{" "}
          {CALL_PURPOSE_WORDS[about.purpose]}, {formatDay(about.day, today)}
        </p>
      )}
      {calls.length === 0 ? (
        <p className="muted">No calls yet.</p>
      ) : (
        <ul>
          {calls.toReversed().map((call) => (
            <li key={call.id}>{callWords(call, { need, today, short: about !== undefined })}</li>
          ))}
        </ul>
      )}
      {caller === null ? null : (
        <CallForm need={need} {...(about === undefined ? {} : { about })} {...part} />
      )}
    </article>
  );
}

function callWords(
  call: HouseholdCall,
  { need, today, short }: { need: HouseholdNeed; today: string; short: boolean },
): string {
  const { purpose, forDay, outcome, words, calledBy, calledOn, needs } = call;
  const about = short
    ? ""
    : ` about ${CALL_PURPOSE_WORDS[purpose].toLowerCase()} ${formatDay(forDay, today)}`;
  const said = words === "" ? "" : `; ${words}`;
  const other =
    needs === need.party.needs
      ? ""
      : ` (their need has changed since, from “${needs}”: call again)`;
  return `${calledBy} called ${formatDay(calledOn, today)}${about}: ${CALL_OUTCOME_WORDS[outcome]}${said}${other}`;
}

function CallForm({
  lineId,
  today,
  caller,
  need,
  about,
}: CallsProps & { readonly need: HouseholdNeed }) {
  const { party, propertyId } = need;
  return (
    <details className="screen-only">
      <summary>
        Record a call<span className="hidden"> to {party.name}</span>
      </summary>
      <ActionForm
        action={recordCallAction.bind(null, { lineId, partyId: party.id, propertyId })}
        label={`Record a call to ${party.name}`}
        reset
      >
        <div className="form-grid">
          <Choice
            label="About"
            name="purpose"
            required
            options={[{ value: "", label: "select" }, ...optionsOf(CALL_PURPOSE_WORDS)]}
            {...(about === undefined ? {} : { defaultValue: about.purpose })}
          />
          <Field
            label="Planned date"
            name="forDay"
            type="date"
            required
            min={today}
            {...(about === undefined ? {} : { defaultValue: about.day })}
          />
          <Choice
            label="Result"
            name="outcome"
            required
            options={[{ value: "", label: "select" }, ...optionsOf(CALL_OUTCOME_WORDS)]}
          />
          <Field label="Called by" name="calledBy" required defaultValue={caller ?? ""} />
          <Field
            label="Date of the call"
            name="calledOn"
            type="date"
            required
            max={today}
            defaultValue={today}
          />
        </div>
        <Field
          label="What was agreed"
          name="words"
          rows={2}
          example="Treatment ends at 8; drains may be off from 9 to 12."
        />
        <div>
          <SubmitButton pendingWord="Recording …" quiet>
            Record the call
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
