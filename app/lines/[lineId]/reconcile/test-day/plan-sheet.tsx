import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { hasAgreed, householdNeeds } from "#lib/domain/party/household-needs.ts";
import { plantNotice, testDayPeople } from "#lib/domain/testing/test-day-people.ts";
import {
  refusedStops,
  resultOf,
  stopKey,
  stopsInForce,
} from "#lib/domain/testing/test-day-results.ts";
import type { TimeSpan } from "#lib/domain/testing/water-off.ts";
import { dosedWords, drainWords } from "#lib/domain/tiein/stop-words.ts";
import { TEST_RESULT_WORDS } from "#lib/domain/tiein/test-words.ts";
import { formatDate, formatDay } from "#lib/domain/time/format-day.ts";
import { formatTime, laterBy } from "#lib/domain/time/time-of-day.ts";
import { counted, listed, partyName, propertyName, tieInName } from "../../names.ts";
import { isControl, stopPlace } from "./stop-names.ts";

interface SheetPart {
  readonly file: LineFile;
  readonly report: Report;
  readonly day: TestDay;
}

/** The stops in their order, to print and to write on. */
export function PlanTable({ file, day }: Omit<SheetPart, "report">) {
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${stacks["paired"]}`}>
        <Heads of={["Dye added", "At", "Dye", "Watched", "Until", "Clear by", "Result"]} />
        <tbody>
          {stopsInForce(file, day).map((stop) => (
            <StopRow key={stopKey(stop)} file={file} day={day} stop={stop} />
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function StopRow({ file, day, stop }: Omit<SheetPart, "report"> & { readonly stop: TestStop }) {
  const drains = drainWords(stop);
  const over = laterBy(stop.startsAt, stop.waitMinutes);
  return (
    <tr>
      <th scope="row" className="nowrap">
        {formatTime(stop.startsAt)}
      </th>
      <td data-label="At">
        {stopPlace(file, stop)}
        {isControl(day, stop) ? " (control)" : ""}
        {drains === "" ? null : <div className="small muted">{drains}</div>}
      </td>
      <td data-label="Dye">
        {stop.colour || "not specified"}
        <div className="small muted">{dosedWords(stop)}</div>
      </td>
      <td data-label="Watched">
        {listed(stop.tieInIds.map((id) => tieInName(file, id)))}
        {stop.propertyId === null ? <div className="small muted">that dye passes</div> : null}
      </td>
      <td data-label="Until" className="nowrap">
        {formatTime(over)}
      </td>
      <td data-label="Clear by" className="nowrap">
        {formatTime(laterBy(over, stop.rinseMinutes))}
      </td>
      <td data-label="Result">{resultWords(file, day, stop) || "…"}</td>
    </tr>
  );
}

function resultWords(file: LineFile, day: TestDay, stop: TestStop): string {
  if (stop.passed !== null) return TEST_RESULT_WORDS[stop.passed];
  return stop.tieInIds
    .flatMap((tieInId) => {
      const test = resultOf(file, day, { stop, tieInId });
      if (test === null) return [];
      const label = stop.tieInIds.length === 1 ? "" : `${tieInName(file, tieInId)} `;
      return [`${label}${TEST_RESULT_WORDS[test.result]}`];
    })
    .join(", ");
}

/** Stops that nobody goes to any more, and dosings of the pipe whose dye did not pass. */
export function PlanCautions({ file, day }: Omit<SheetPart, "report">) {
  const refused = refusedStops(file, day);
  // One address may have been several stops.
  const outWords = ({ stop, refusal }: (typeof refused)[number]) =>
    `${stopPlace(file, stop)}: ${partyName(file, refusal.partyId)} refused entry on ${formatDate(refusal.on)}.`;
  const blind = day.stops.filter(({ passed }) => passed !== null && passed !== "positive");
  return (
    <>
      {refused.length === 0 ? null : (
        <NoticeBox kind="caution" title="Out of the plan">
          <ul>
            {[...new Set(refused.map(outWords))].map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </NoticeBox>
      )}
      {blind.length === 0 ? null : (
        <NoticeBox kind="caution" title="Dye was not seen to pass the camera">
          <p>
            While dye from above is not seen at{" "}
            {listed(blind.flatMap((stop) => stop.tieInIds.map((id) => tieInName(file, id))))}, not
            seeing it from an address shows nothing. Move or clean the camera and dose the pipe
            again.
          </p>
        </NoticeBox>
      )}
    </>
  );
}

function spanWords({ from, to }: TimeSpan): string {
  return `${formatTime(from)} to ${formatTime(to)}`;
}

/** Who has to keep water off, and from when to when. */
export function WaterOff({ file, report, day }: SheetPart) {
  const { waterOff } = testDayPeople(file, report, day);
  if (waterOff.length === 0) return null;
  return (
    <Section
      title="Keep water off"
      foldedOnPhone={counted(waterOff.length, "address", "addresses")}
      note="All fixtures except the one being dyed, while their water passes the place being watched: other water dilutes or hides the dye. Anyone who joins below goes on as usual."
    >
      <ul>
        {waterOff.map(({ propertyId, unitIds, passes, spans }) => (
          <li key={propertyId}>
            {propertyName(file, propertyId)}
            {unitsWords(file, unitIds)}: {listed(spans.map(spanWords))}
            {passes === "surely" ? "" : besideWords(report, propertyId)}.
            <NeedsWords file={file} propertyId={propertyId} day={day.on} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** What a household there needs: it is called before anybody is sent away from water. */
function NeedsWords({
  file,
  propertyId,
  day,
}: {
  readonly file: LineFile;
  readonly propertyId: string;
  readonly day: string;
}) {
  const needs = householdNeeds(file).filter((need) => need.propertyId === propertyId);
  return needs.map((need) => (
    <span key={need.party.id}>
      {" "}
      {hasAgreed(file, need, { purpose: "test-visit", day }) ? (
        "Agreed, as above"
      ) : (
        <strong>Call first</strong>
      )}
      : {need.party.name}, {need.party.needs}.
    </span>
  ));
}

/** Why somebody keeps water off whose flow is not known to pass the watched place. */
function besideWords({ tieIns }: Report, propertyId: string): string {
  return tieIns.some((each) => each.live && each.propertyId === propertyId)
    ? ", joins below but is tested too"
    : ", possibly on the line";
}

function unitsWords(file: LineFile, unitIds: readonly string[]): string {
  if (unitIds.length < 2) return "";
  const names = unitIds.flatMap((id) => file.units.find((unit) => unit.id === id)?.name || []);
  return names.length === unitIds.length ? ` (${listed(names)})` : `, all ${unitIds.length} units`;
}

/** Who has to let the crew in, whether they said so, and by when they must be told. */
export function LetIn({ lineId, file, report, day }: SheetPart & { readonly lineId: string }) {
  const { letIn } = testDayPeople(file, report, day);
  return (
    <Section
      title="Access contacts"
      foldedOnPhone={`${letIn.filter(({ consented }) => consented).length} of ${letIn.length} agreed`}
      actions={
        <Link href={`/lines/${lineId}/notices/write?kind=test-visit`}>Send visit notices</Link>
      }
      note="The letters take day and hours of each address from this plan, also for those who only keep water off."
    >
      <ul>
        {letIn.map(({ propertyId, unitId, partyIds, consented, noticeBy, citation }) => (
          <li key={`${propertyId} ${unitId ?? ""}`}>
            {stopPlace(file, { propertyId, unitId, pointId: null })}:{" "}
            {partyIds.length === 0
              ? "no one on file"
              : listed(partyIds.map((id) => partyName(file, id)))}
            . {consented ? "Consent to enter is on file." : "No consent to enter yet."}
            {noticeBy === null ? null : (
              <>
                {" "}
                Tell them by {formatDay(noticeBy, report.today)}
                {citation === "" ? "" : ` (${citation})`}
                {noticeBy < report.today && day.on >= report.today
                  ? "; that deadline has passed, so they must agree to shorter notice"
                  : ""}
                .
              </>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** Letters that name another time than the plan does now. */
export function OutdatedLetters({
  lineId,
  file,
  outdated,
}: Pick<SheetPart, "file"> & { readonly lineId: string; readonly outdated: readonly Notice[] }) {
  if (outdated.length === 0) return null;
  return (
    <NoticeBox kind="caution" title="Told another time">
      <p>
        The plan has changed since letters went to{" "}
        {listed(outdated.map(({ partyId }) => partyName(file, partyId)))}.{" "}
        <Link href={`/lines/${lineId}/notices/write?kind=test-visit`} className="screen-only">
          Write to them again
        </Link>
      </p>
    </NoticeBox>
  );
}

/** Whether whoever runs the sewer and the plant was told of the dye. */
export function PlantPart(part: SheetPart) {
  return (
    <Section
      title="Tell whoever runs the sewer"
      foldedOnPhone={part.day.plantToldOn === null ? "not noted yet" : "told"}
    >
      <p>{plantWords(part)}</p>
    </Section>
  );
}

function plantWords({ file, report, day }: SheetPart): string {
  const { asked, by, citation, toldOn } = plantNotice(file, day);
  const who = file.authority?.name ?? "the sewer authority";
  if (toldOn !== null) {
    const how = day.plantTold === "" ? "" : `: ${day.plantTold}`;
    return `${who} was told on ${formatDate(toldOn)}${how}.`;
  }
  if (!asked)
    return `No rule of ${who} on dye is on file: ask whether it wants to be told, since dye shows at the treatment plant. Then enter it with the plan.`;
  const until = by === null ? "" : ` by ${formatDay(by, report.today)}`;
  const source = citation === "" ? "" : ` (${citation})`;
  return `${who} asks to be told of dye${until}${source}. Not told yet: enter it with the plan.`;
}
