import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Fold } from "#app/_components/fold.client.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { TestDay } from "#lib/domain/facts/test-day.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { outdatedVisits } from "#lib/domain/paper/outdated-visits.ts";
import {
  proposeTestDay,
  STOP_ORDERS,
  type StopOrder,
  tieInsToTest,
} from "#lib/domain/testing/plan-test-day.ts";
import { resultOf, stopsInForce } from "#lib/domain/testing/test-day-results.ts";
import { placesOfDay } from "#lib/domain/testing/water-off.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { lineFileOf } from "../../file.ts";
import { counted, listed } from "../../names.ts";
import { CallFirst } from "../../who/calls-part.tsx";
import { DropDay, PlanForm } from "./plan-form.tsx";
import {
  LetIn,
  OutdatedLetters,
  PlanCautions,
  PlanTable,
  PlantPart,
  WaterOff,
} from "./plan-sheet.tsx";
import { Results } from "./results.tsx";
import styles from "./test-day.module.css";

export const metadata: Metadata = { title: "Test day" };

interface DayPart {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly mayRecord: boolean;
  /** Who is at the screen. */
  readonly userName: string;
}

export default async function TestDayPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ day?: string | string[]; order?: string | string[] }>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const { file, report, office, may, user } = await lineFileOf(lineId);
  const part = { lineId, file, report, mayRecord: may("record-the-field"), userName: user.name };
  const day = file.testDays.find(({ id }) => id === asked.day);
  const outdated = office === null ? [] : outdatedVisits({ file, report, office });
  if (day) return <OneDay {...part} day={day} outdated={outdated} />;
  return <NewDay {...part} order={STOP_ORDERS.find((each) => each === asked.order)} />;
}

function OneDay({
  day,
  outdated,
  ...part
}: DayPart & { readonly day: TestDay; readonly outdated: readonly Notice[] }) {
  const { lineId, file, report, mayRecord } = part;
  const stops = stopsInForce(file, day);
  const watched = stops.flatMap((stop) =>
    stop.propertyId === null
      ? [{ stop, tieInId: "" }]
      : stop.tieInIds.map((tieInId) => ({ stop, tieInId })),
  );
  const told = watched.filter(
    (each) => each.stop.passed !== null || resultOf(file, day, each) !== null,
  ).length;
  // On the day the results name each stop again; on a phone they come first.
  const isOn = mayRecord && day.on <= report.today;
  return (
    <>
      <PageHead
        asked={`Dye tests on ${formatDay(day.on, report.today)}`}
        answer={`${counted(stops.length, "stop")}, ${told} of ${counted(watched.length, "result")} in.`}
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/reconcile/undocumented`}>
            Back to the tie-ins on no record
          </Link>
        </p>
      </PageHead>
      <Section title="The plan" {...(isOn ? { foldedOnPhone: counted(stops.length, "stop") } : {})}>
        <PlanTable file={file} day={day} />
        <PlanCautions file={file} day={day} />
        <OutdatedLetters lineId={lineId} file={file} outdated={outdated} />
        {day.note === "" ? null : <p>{day.note}</p>}
        {mayRecord ? (
          <details className="screen-only">
            <summary>Change the plan</summary>
            <div className="stack">
              <PlanForm lineId={lineId} file={file} report={report} plan={day} day={day} />
              {told === 0 ? <DropDay lineId={lineId} day={day} /> : null}
            </div>
          </details>
        ) : null}
      </Section>
      {isOn ? <Results lineId={lineId} file={file} day={day} /> : null}
      <CallFirst
        lineId={lineId}
        file={file}
        today={report.today}
        caller={mayRecord ? part.userName : null}
        about={{ purpose: "test-visit", day: day.on, places: placesOfDay(file, report, day) }}
      />
      <WaterOff file={file} report={report} day={day} />
      <LetIn lineId={lineId} file={file} report={report} day={day} />
      <PlantPart file={file} report={report} day={day} />
    </>
  );
}

function NewDay({
  order = "likeliest-first",
  ...part
}: DayPart & { readonly order?: StopOrder | undefined }) {
  const { lineId, report } = part;
  const open = tieInsToTest(report);
  return (
    <>
      <PageHead
        asked="Dye test day"
        answer={
          open.length === 0
            ? "No tie-ins need a test."
            : `To identify the ${open.length === 1 ? "owner" : "owners"} of ${listed(open.map(({ tieIn }) => tieIn.label))}.`
        }
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/reconcile/undocumented`}>
            Back to the tie-ins on no record
          </Link>
        </p>
      </PageHead>
      <Planned {...part} />
      {open.length === 0 ? null : <Proposal order={order} {...part} />}
    </>
  );
}

function Proposal({ order, ...part }: DayPart & { readonly order: StopOrder }) {
  const { lineId, file, report, mayRecord } = part;
  const proposed = proposeTestDay(file, report, { order });
  if (proposed.stops.length === 0) return <NoAddress lineId={lineId} reasons={proposed.reasons} />;
  const other = order === "upstream-first" ? "likeliest-first" : "upstream-first";
  return (
    <Section
      title="Proposed"
      note="One camera at one place, one color and one address at a time. Change what you like before you save it."
    >
      <Fold onPhone bare summary="Why these stops, in this order">
        <ul className={`small ${styles["reasons"]}`}>
          {proposed.reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      </Fold>
      <p className="screen-only">
        <Link href={`/lines/${lineId}/reconcile/test-day?order=${other}`}>
          {order === "upstream-first" ? "Sort by likelihood" : "Sort from upstream down"}
        </Link>
      </p>
      <CallFirst
        lineId={lineId}
        file={file}
        today={report.today}
        caller={mayRecord ? part.userName : null}
      />
      {mayRecord ? (
        <PlanForm
          key={order}
          lineId={lineId}
          file={file}
          report={report}
          plan={{ on: report.today, plantToldOn: null, plantTold: "", note: "", ...proposed }}
          day={null}
        />
      ) : null}
    </Section>
  );
}

function NoAddress({
  lineId,
  reasons,
}: Pick<DayPart, "lineId"> & { readonly reasons: readonly string[] }) {
  return (
    <Empty title="No addresses to test yet.">
      {reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      <p>
        Enter neighboring addresses as “possibly connected” under{" "}
        <Link href={`/lines/${lineId}/who`}>“Who is on it?”</Link>, then come back.
      </p>
    </Empty>
  );
}

function Planned({ lineId, file, report }: DayPart) {
  if (file.testDays.length === 0) return null;
  return (
    <Section title="Planned days">
      <ul>
        {file.testDays.map((day) => (
          <li key={day.id}>
            <Link href={`/lines/${lineId}/reconcile/test-day?day=${encodeURIComponent(day.id)}`}>
              {formatDay(day.on, report.today)}
            </Link>
            : {counted(stopsInForce(file, day).length, "stop")}, planned by {day.plannedBy}
          </li>
        ))}
      </ul>
    </Section>
  );
}
