import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { capacityAnswer } from "#lib/domain/capacity/answer.ts";
import { USUAL_UNCERTAINTY } from "#lib/domain/capacity/levels.ts";
import { METHOD_WORDS } from "#lib/domain/capacity/words.ts";
import { LEVEL_METHODS } from "#lib/domain/facts/capacity.ts";
import { NOT_A_DESIGN } from "#lib/domain/findings/capacity.ts";
import { LineGrid } from "../../line-grid.tsx";
import { linePartOf } from "../../line-part.ts";
import { counted } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import styles from "./capacity.module.css";
import { fixtureColumns, LEVEL_COLUMNS } from "./columns.ts";
import { FlowResults, LoadResults, ObstructionResults, SlopeResults } from "./results.tsx";
import { TablesForm } from "./tables-form.tsx";

export const metadata: Metadata = { title: "Slope and load" };

export default async function CapacityPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const part = await linePartOf(lineId);
  const { file, report } = part;
  const { capacity } = report;
  const { head, rest } = capacityAnswer(capacity);
  const begun = file.levels.length + file.fixtures.length > 0;
  return (
    <>
      <PageHead
        asked="Is it steep enough and big enough?"
        answer={head}
        closes={begun ? (capacity.wanting[0] ?? null) : null}
      >
        {rest.length === 0 ? null : <p>{rest.join(" ")}</p>}
      </PageHead>
      <div className={`stack ${styles["first"]}`}>
        {begun ? null : <First />}
        <NoticeBox kind="caution" title="Not a design">
          <p>{NOT_A_DESIGN}</p>
        </NoticeBox>
      </div>
      <Levels {...part} />
      <Fixtures {...part} />
      <TablesForm {...part} />
      <SlopeResults capacity={capacity} />
      <LoadResults capacity={capacity} />
      <ObstructionResults capacity={capacity} />
      <Wanting sentences={begun ? capacity.wanting.slice(1) : []} />
      <FlowResults capacity={capacity} />
    </>
  );
}

function First() {
  return (
    <Empty
      title="Start with two levels, or with the fixtures of one house."
      example="At station 2.0 the ground is 100.0 and the pipe is 7.2 deep; at 92.0 the ground is 101.1 and the pipe is 6.4 deep: the invert (inside bottom of the pipe) rises 1.9 ft over 90 ft, 2.11%, within the locator’s uncertainty."
    >
      <p>
        <a href="#levels">Levels</a> give the slope, <a href="#fixtures">fixtures</a> give the load.
        Either one is useful alone; anything not measured stays unknown.
      </p>
    </Empty>
  );
}

function Wanting({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <Section title="Still needed">
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Section>
  );
}

function Levels({ lineId, file }: LinePart) {
  return (
    <Section
      title="Levels"
      folded={file.levels.length === 0 ? "none yet" : counted(file.levels.length, "level")}
      note="One row for each place where the pipe’s depth or height was measured. Use any one fixed reference, e.g. 100.0 at the alley cleanout, in all rows. Invert means the inside bottom of the pipe."
      id="levels"
    >
      <LineGrid
        lineId={lineId}
        table="levels"
        columns={LEVEL_COLUMNS}
        addWord="level"
        emptyWords="No levels yet. A locator’s depth at each cleanout, with the ground level there, is a start."
        label="Levels"
      />
      <details>
        <summary>Accuracy of each method</summary>
        <ul>
          {LEVEL_METHODS.map((method) => (
            <li key={method}>
              {METHOD_WORDS[method]}: ± {USUAL_UNCERTAINTY[method].words}
            </li>
          ))}
        </ul>
        <p className="muted">
          Assumed here, from common practice; there is no published figure. If you have a better
          figure, enter it under “Uncertainty ±”.
        </p>
      </details>
    </Section>
  );
}

function Fixtures({ lineId, file }: LinePart) {
  return (
    <Section
      title="Plumbing fixtures"
      folded={file.fixtures.length === 0 ? "none yet" : counted(file.fixtures.length, "row")}
      note="What drains into the pipe, house by house. A house with no row is unknown, not zero. The same counts can be used as weights on the cost page."
      id="fixtures"
    >
      {file.properties.length === 0 ? (
        <p>
          Enter the properties first, under <Link href={`/lines/${lineId}/who`}>who is on it</Link>.
        </p>
      ) : (
        <LineGrid
          lineId={lineId}
          table="fixtures"
          columns={fixtureColumns(file)}
          addWord="fixture"
          emptyWords="Nothing counted yet. A house with one bathroom, a kitchen and a washer has three rows."
          label="Plumbing fixtures"
        />
      )}
    </Section>
  );
}
