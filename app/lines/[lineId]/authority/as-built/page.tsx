import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { asBuiltOf, asBuiltSentence, piecesToStart } from "#lib/domain/closing/built-parts.ts";
import { composeAsBuilt } from "#lib/domain/packet/as-built.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { counted } from "../../names.ts";
import { MadePapers } from "../made-papers.tsx";
import { buildAsBuiltAction, startMeasuringAction } from "./actions.ts";
import { BUILT_BLANK, builtColumns } from "./columns.ts";
import { PartTable } from "./part-table.tsx";

export const metadata: Metadata = { title: "As-built" };

/** What was built, where, on whose word; and the sheets that are handed in. */
export default async function AsBuiltPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, office, may } = await lineFileOf(lineId);
  const open = file.line.closedOn === null;
  const built = asBuiltOf(file, report);
  const mayRecord = may("record-the-field") && open;
  const toStart = piecesToStart(file, report, () => "").length;
  const sheets = office === null ? null : composeAsBuilt({ file, report, office });
  return (
    <>
      <PageHead
        asked="What was built, and where?"
        answer={asBuiltSentence(built)}
        closes={built.open.length === 0 ? null : "Record what was done, and measure where it lies"}
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/authority/permits`}>Permits and inspections</Link>: what was
          done, and whether the as-built was submitted and accepted.
        </p>
      </PageHead>
      {built.parts.length === 0 ? (
        <Empty
          title="Nothing is recorded as built."
          example="Replaced 14.0 to 22.0 ft, 6 in PVC, 7.0 to 7.2 ft to the invert, measured by Marek Łódź"
        >
          <p>
            What is priced is not drawn as built. Record work as done under Permits and inspections,
            then measure it here.
          </p>
        </Empty>
      ) : (
        <Section
          title="As built"
          id="parts"
          note="Drawn on the as-built. Branches that were seen open in the second video count as reconnected."
        >
          <PartTable parts={built.parts} file={file} today={report.today} />
          {built.parts.map(({ id, differs }) =>
            differs === "" ? null : (
              <p key={id} className="mend">
                {differs}
              </p>
            ),
          )}
        </Section>
      )}
      {built.open.length === 0 ? null : (
        <Section title="Not drawn" id="open" folded={counted(built.open.length, "item")}>
          <ul>
            {built.open.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Section>
      )}
      {sheets === null ? null : (
        <Section
          title="As-built sheets"
          id="sheets"
          note="Plan view and drawing to scale, what was measured, connections as they are now, ties and inspections, as one PDF. What is missing stands on its first page."
        >
          {sheets.missing.length === 0 ? (
            <p>Nothing missing.</p>
          ) : (
            <details>
              <summary>{counted(sheets.missing.length, "item")} missing</summary>
              <ul>
                {sheets.missing.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </details>
          )}
          {may("work-the-file") ? (
            <JobButton
              start={buildAsBuiltAction.bind(null, lineId, [])}
              working="Making the as-built"
              paper={`/lines/${lineId}/notices/paper`}
              main
            >
              Make the as-built
            </JobButton>
          ) : null}
          <MadePapers lineId={lineId} today={report.today} kind="as-built" />
        </Section>
      )}
      <div className="screen-only">
        <Section
          title="Measured"
          id="measured"
          note="One row for each piece. A row counts with a station, who measured it and when, and once its work is recorded as done."
        >
          {mayRecord && toStart > 0 ? (
            <ActionForm
              action={startMeasuringAction.bind(null, lineId)}
              label="Add rows for work recorded as done"
            >
              <SubmitButton pendingWord="Adding…">
                {`Add ${counted(toStart, "row")} for work recorded as done`}
              </SubmitButton>
            </ActionForm>
          ) : null}
          <LineGrid
            lineId={lineId}
            table="builtPieces"
            columns={builtColumns(file)}
            blank={BUILT_BLANK}
            addWord="measurement"
            emptyWords="Nothing measured yet."
          />
        </Section>
      </div>
    </>
  );
}
