import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { tallyOf, tallySentence } from "#lib/domain/reconnection/tally.ts";
import { workInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { startTallyAction } from "./actions.ts";
import { RECONNECTION_BLANK, reconnectionColumns } from "./columns.ts";
import { accessWords, TallyTable } from "./tally-table.tsx";

export const metadata: Metadata = { title: "Branches to reconnect" };

export default async function ReconnectionsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const tally = tallyOf(file, workInForce(file), report.tieIns);
  const mayRecord = may("record-the-field");
  const isStarted = tally.every(({ row }) => row !== null);
  return (
    <>
      <PageHead
        asked="Which branches does the work close, and are they open again?"
        answer={tallySentence(tally)}
        closes={null}
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/schedule`}>Back to the schedule</Link>
        </p>
      </PageHead>
      {tally.length === 0 ? (
        <Empty
          title="No planned work closes an active branch."
          example="T1: 20.4 ft up from the pit at the main, 75.4 ft down from the cleanout at 96.0 ft. The two put it at 20.4 and 20.6 ft: 0.2 ft apart."
        >
          <p>
            A liner, bursting or open replacement over an active branch lists it here. Spot repairs
            and cleaning do not.
          </p>
        </Empty>
      ) : (
        <Section
          title="For the crew"
          note={`${[...new Set(tally.flatMap(({ items }) => items.map(({ title }) => title)))].join("; ")}. Ways in: ${accessWords(file)}. Stations are feet from the main connection, as each end puts them.`}
        >
          <TallyTable tally={tally} file={file} />
          {mayRecord && !isStarted ? (
            <ActionForm
              action={startTallyAction.bind(null, lineId)}
              label="Start the tally"
              className="screen-only"
            >
              <SubmitButton pendingWord="Adding…">Add them to the tally</SubmitButton>
            </ActionForm>
          ) : null}
        </Section>
      )}
      <div className="screen-only">
        <Section
          title="Measured and checked off"
          id="tally"
          note="Before: where each branch is by the lower and by the upper access. Runs of the camera from both ends count by themselves; what is measured here overrides them. After: the run of the second video, and the time at which the branch is seen open."
        >
          <LineGrid
            lineId={lineId}
            table="reconnections"
            columns={reconnectionColumns(file)}
            blank={RECONNECTION_BLANK}
            addWord="branch"
            emptyWords="Nothing measured yet."
          />
        </Section>
      </div>
    </>
  );
}
