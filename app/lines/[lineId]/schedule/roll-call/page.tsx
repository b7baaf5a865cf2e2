import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { db } from "#app/db.ts";
import { openDoors, type RollCall, rollCallsOf } from "#lib/domain/rollcall/roll-call.ts";
import { rollCallLine } from "#lib/domain/rollcall/sentence.ts";
import { capital } from "#lib/domain/say/capital.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { officeZone } from "#lib/operations/office-day.ts";
import { lineFileOf } from "../../file.ts";
import { CallPart } from "./call-part.tsx";

export const metadata: Metadata = { title: "Roll-call" };

export default async function RollCallPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may, user } = await lineFileOf(lineId);
  const calls = rollCallsOf(file, report);
  const part = {
    ...{ lineId, file, today: report.today },
    zone: officeZone(db()),
    caller: may("record-the-field") ? user.name : null,
    mayWaive: may("work-the-file"),
  };
  return (
    <>
      <PageHead
        asked="Does everyone know when to stop using drains?"
        answer={answerOf(calls, report.today)}
      />
      {calls.length === 0 ? (
        <Empty
          title="No drain shutdown is planned."
          example="Wednesday, December 2, 8 am to noon: 3 of 7 not reached."
        >
          <p>
            Enter the event “drain shutdown” with its day and hours under{" "}
            <Link href={`/lines/${lineId}/schedule#events`}>Dates</Link>. Everyone whose flow passes
            the work is then listed here, door by door.
          </p>
        </Empty>
      ) : (
        calls.map((call) => (
          <CallPart key={`${call.pause.id} ${call.matter}`} call={call} {...part} />
        ))
      )}
    </>
  );
}

/** The first call that is open, or else the first one. */
function answerOf(calls: readonly RollCall[], today: Day): string {
  const [first] = calls;
  if (first === undefined) return "Nothing to call about";
  const open = calls.find((call) => call.pressing && openDoors(call).length > 0);
  return capital(rollCallLine(open ?? first, today));
}
