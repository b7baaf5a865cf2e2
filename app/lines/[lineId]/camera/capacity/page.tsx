import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { capacityAnswer } from "#lib/domain/capacity/answer.ts";
import { USUAL_UNCERTAINTY } from "#lib/domain/capacity/levels.ts";
import { METHOD_WORDS } from "#lib/domain/capacity/words.ts";
import { LEVEL_METHODS } from "#lib/domain/facts/capacity.ts";
import { NOT_A_DESIGN } from "#lib/domain/findings/capacity.ts";
import { lineFileOf } from "../../file.ts";
import type { LinePart } from "../../part.ts";
import styles from "./capacity.module.css";
import { FIXTURE_BLANK, fixtureColumns, LEVEL_BLANK, LEVEL_COLUMNS } from "./columns.ts";
import { FlowResults, LoadResults, ObstructionResults, SlopeResults } from "./results.tsx";
import { TablesForm } from "./tables-form.tsx";

export const metadata: Metadata = { title: "Slope and load" };

export default async function CapacityPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const { capacity } = report;
  const part: LinePart = {
    lineId,
    file,
    report,
    revisions: getRevisions(db(), lineId),
    mayRecord: may("record-the-field"),
    mayFile: may("work-the-file"),
  };
  const begun = file.levels.length + file.fixtures.length > 0;
  return (
    <>
      <PageHead
        asked="Is it steep enough, and large enough for all?"
        answer={capacityAnswer(capacity)}
        closes={begun ? (capacity.wanting[0] ?? null) : null}
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/camera`}>Back to what the camera saw</Link>
        </p>
      </PageHead>
      <div className={`stack ${styles["first"]}`}>
        <NoticeBox kind="caution" title="Not a design">
          <p>{NOT_A_DESIGN}</p>
        </NoticeBox>
        {begun ? null : <First />}
      </div>
      <SlopeResults capacity={capacity} />
      <LoadResults capacity={capacity} />
      <FlowResults capacity={capacity} />
      <ObstructionResults capacity={capacity} />
      <Wanting sentences={begun ? capacity.wanting.slice(1) : []} />
      <Levels {...part} />
      <Fixtures {...part} />
      <TablesForm {...part} />
    </>
  );
}

function First() {
  return (
    <Empty
      title="Start with two levels, or with the fixtures of one house."
      example="At station 2.0 the ground is 100.0 and the pipe lies 7.2 deep; at 92.0 the ground is 101.1 and the pipe lies 6.4 deep: the invert rises 1.9 ft over 90 ft, 2.11%, give or take what the locator is off."
    >
      <p>
        Levels give the slope, fixtures give the load. Either is of use without the other, and what
        nobody measured stays unknown.
      </p>
    </Empty>
  );
}

function Wanting({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <Section title="Still wanting">
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Section>
  );
}

function Levels({ lineId, file, revisions, mayFile }: LinePart) {
  return (
    <Section
      title="Levels"
      note="One row for each place where somebody measured how deep or how high the pipe lies. Any one datum will do, such as 100.0 at the alley cleanout, if all rows use it."
      id="levels"
    >
      <RowsGrid
        lineId={lineId}
        table="levels"
        base={revisions.levels}
        rows={file.levels}
        columns={LEVEL_COLUMNS}
        blank={LEVEL_BLANK}
        addWord="level"
        emptyWords="No level yet. A locator’s depth at each cleanout, with the ground there, is a start."
        label="Levels"
        readOnly={!mayFile}
      />
      <details>
        <summary>What each way of measuring may be off</summary>
        <ul>
          {LEVEL_METHODS.map((method) => (
            <li key={method}>
              {METHOD_WORDS[method]}: ± {USUAL_UNCERTAINTY[method].words}
            </li>
          ))}
        </ul>
        <p className="muted">
          Assumed here, from common practice: no published figure stands behind them. Where you know
          better, type it under “Off by”.
        </p>
      </details>
    </Section>
  );
}

function Fixtures({ lineId, file, revisions, mayFile }: LinePart) {
  return (
    <Section
      title="Plumbing fixtures"
      note="What drains into the pipe, house by house. A house without a row is unknown, not empty. The same counts can serve as weights on the cost page."
      id="fixtures"
    >
      {file.properties.length === 0 ? (
        <p>
          Enter the properties first, under <Link href={`/lines/${lineId}/who`}>who is on it</Link>.
        </p>
      ) : (
        <RowsGrid
          lineId={lineId}
          table="fixtures"
          base={revisions.fixtures}
          rows={file.fixtures}
          columns={fixtureColumns(file)}
          blank={FIXTURE_BLANK}
          addWord="fixture"
          emptyWords="Nothing is counted yet. A house with one bathroom, a kitchen and a washer has three rows."
          label="Plumbing fixtures"
          readOnly={!mayFile}
        />
      )}
    </Section>
  );
}
