import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import {
  HOLIDAY_STATES,
  type OfferedHoliday,
  offeredHolidays,
} from "#lib/domain/calendar/holiday-sets.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { formatFullDay } from "#lib/domain/time/format-day.ts";
import { bringInHolidaysAction } from "./actions.ts";

/** Which holidays the office wants to look at. */
export interface HolidaysAsked {
  readonly state?: string | string[];
  readonly year?: string | string[];
}

/** First which state and year, then the days to choose from, each with where it is from. */
export function BringInHolidays({
  authority,
  asked,
  thisYear,
}: {
  readonly authority: Authority;
  readonly asked: HolidaysAsked;
  readonly thisYear: number;
}) {
  const year = Number(asked.year);
  const isAsked = typeof asked.state === "string" && Number.isInteger(year);
  const state = typeof asked.state === "string" ? asked.state : authority.address.state;
  const shown = isAsked && year >= 2000 && year <= 2100;
  return (
    <div className="stack screen-only" id="bring-in-holidays">
      <form className="cluster cluster-end" action="#bring-in-holidays">
        <Choice
          label="State"
          name="state"
          defaultValue={state}
          options={[
            { value: "", label: "Federal only" },
            ...HOLIDAY_STATES.map(({ code, name }) => ({ value: code, label: name })),
          ]}
        />
        <Field
          label="Year"
          name="year"
          type="number"
          defaultValue={shown ? year : thisYear}
          width={6}
          min={2000}
          max={2100}
        />
        <SubmitButton pendingWord="Loading …" quiet>
          Show the holidays
        </SubmitButton>
      </form>
      {shown ? (
        <Offered
          key={`${state}-${year}`}
          authority={authority}
          set={{ state, year }}
          offered={offeredHolidays(state, year)}
        />
      ) : null}
    </div>
  );
}

function Offered({
  authority,
  set,
  offered,
}: {
  readonly authority: Authority;
  readonly set: { readonly state: string; readonly year: number };
  readonly offered: readonly OfferedHoliday[];
}) {
  const known = new Set(authority.holidays.map(({ day }) => day));
  return (
    <ActionForm
      action={bringInHolidaysAction.bind(null, { authorityId: authority.id, ...set })}
      label={`Holidays of ${set.year} to import`}
    >
      <table className="plain">
        <caption>
          Uncheck what this authority does not keep. Days on a Saturday or Sunday are left out: they
          are not business days anyway.
        </caption>
        <Heads of={["Date", "Holiday", "Source", "Check first"]} />
        <tbody>
          {offered.map(({ day, name, source, usual, note }) => (
            <tr key={day}>
              <td>
                <label className="check">
                  <input type="checkbox" name="days" value={day} defaultChecked={usual} />
                  <span>{formatFullDay(day)}</span>
                </label>
              </td>
              <td>{name}</td>
              <td>{source}</td>
              <td>{[known.has(day) ? "Already in the table." : "", note].join(" ").trim()}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div>
        <SubmitButton pendingWord="Importing …">Import the checked days</SubmitButton>
      </div>
    </ActionForm>
  );
}
