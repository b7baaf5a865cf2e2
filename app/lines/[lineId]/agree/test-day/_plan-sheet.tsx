import Link from "next/link";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import { formatDay } from "#lib/domain/calendar/format-day.ts";
import { laterBy } from "#lib/domain/calendar/time-of-day.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";
import type { TestDay } from "#lib/domain/tiein/test-day.ts";
import { testDayPeople } from "#lib/domain/tiein/test-day-people.ts";
import { resultOf, stopKey } from "#lib/domain/tiein/test-day-results.ts";
import { listed, partyName, propertyName, tieInName } from "../../_names.ts";
import { RESULT_WORDS } from "./_words.ts";

interface SheetPart {
  readonly file: LineFile;
  readonly report: Report;
  readonly day: TestDay;
}

/** The stops in their order, to print and to write on. */
export function PlanTable({ file, day }: Omit<SheetPart, "report">) {
  return (
    <Scroll>
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">Dosed</th>
            <th scope="col">At</th>
            <th scope="col">Fixture</th>
            <th scope="col">Colour</th>
            <th scope="col">Watched</th>
            <th scope="col">Until</th>
            <th scope="col">Result</th>
          </tr>
        </thead>
        <tbody>
          {day.stops.map((stop) => (
            <tr key={stopKey(stop)}>
              <td className="nowrap">{stop.startsAt}</td>
              <td>
                {propertyName(file, stop.propertyId)}
                {stop.propertyId === day.controlPropertyId ? " (control)" : ""}
              </td>
              <td>{stop.fixture || "not said"}</td>
              <td>{stop.colour || "not said"}</td>
              <td>{listed(stop.tieInIds.map((id) => tieInName(file, id)))}</td>
              <td className="nowrap">{laterBy(stop.startsAt, stop.waitMinutes)}</td>
              <td>
                {stop.tieInIds
                  .flatMap((tieInId) => {
                    const test = resultOf(file, day, { stop, tieInId });
                    if (test === null) return [];
                    const label = stop.tieInIds.length === 1 ? "" : `${tieInName(file, tieInId)} `;
                    return [`${label}${RESULT_WORDS[test.result]}`];
                  })
                  .join(", ") || "…"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** Who has to keep water off, and from when to when. */
export function WaterOff({ file, report, day }: SheetPart) {
  const { waterOff, from, to } = testDayPeople(file, report, day);
  if (waterOff.length === 0) return null;
  return (
    <Section
      title="Who keeps water off"
      note={`From ${from} to ${to}, every fixture but the one that is dosed: other water thins the dye or is taken for it.`}
    >
      <ul>
        {waterOff.map(({ propertyId, unitIds, passes }) => (
          <li key={propertyId}>
            {propertyName(file, propertyId)}
            {unitsWords(file, unitIds)}
            {passes === "surely" ? "" : besideWords(report, propertyId)}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** Why somebody keeps water off whose flow is not known to pass the watched place. */
function besideWords({ tieIns }: Report, propertyId: string): string {
  return tieIns.some((each) => each.live && each.propertyId === propertyId)
    ? ", which joins below but is tested too"
    : ", perhaps on the line";
}

function unitsWords(file: LineFile, unitIds: readonly string[]): string {
  if (unitIds.length < 2) return "";
  const names = unitIds.flatMap((id) => file.units.find((unit) => unit.id === id)?.name || []);
  return names.length === unitIds.length ? `: ${listed(names)}` : `, all ${unitIds.length} units`;
}

/** Who has to let the crew in, whether they said so, and by when they must be told. */
export function LetIn({ lineId, file, report, day }: SheetPart & { readonly lineId: string }) {
  const { letIn } = testDayPeople(file, report, day);
  return (
    <Section
      title="Who lets you in"
      actions={
        <Link href={`/lines/${lineId}/told/write?kind=test-visit`}>Write to them of the visit</Link>
      }
    >
      <ul>
        {letIn.map(({ propertyId, partyIds, consented, noticeBy, citation }) => (
          <li key={propertyId}>
            {propertyName(file, propertyId)}:{" "}
            {partyIds.length === 0
              ? "nobody is on file there"
              : listed(partyIds.map((id) => partyName(file, id)))}
            . {consented ? "Consent to enter is in hand." : "No consent to enter yet."}
            {noticeBy === null ? null : (
              <>
                {" "}
                Tell them by {formatDay(noticeBy, report.today)}
                {citation === "" ? "" : ` (${citation})`}
                {noticeBy < report.today && day.on >= report.today
                  ? "; that day is over, so they have to agree to less"
                  : ""}
                .
              </>
            )}
          </li>
        ))}
      </ul>
      {file.events.some(({ event, on }) => event === "tenant-entry" && on === day.on) ? null : (
        <p className="screen-only">
          The letter takes the day and the hours from the event “a dwelling is entered”: enter it
          under <Link href={`/lines/${lineId}/next`}>“What happens next?”</Link>
        </p>
      )}
    </Section>
  );
}
