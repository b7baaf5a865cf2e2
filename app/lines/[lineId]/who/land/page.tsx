import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { counted } from "../../names.ts";
import { crossingColumns, landColumns } from "../columns.ts";

export const metadata = { title: "Lots and land" };

export default async function LandPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report } = await lineFileOf(lineId);
  const open = report.holds.filter(({ cause }) => cause === "land-unknown").length;
  return (
    <>
      <PageHead
        asked="Whose land is over the pipe?"
        answer={
          open === 0
            ? `${counted(file.crossings.length, "lot")} crossed, ${counted(file.land.length, "section")} entered`
            : `Not on file where ${counted(open, "work item digs", "work items dig")}`
        }
      />
      <Land file={file} />
      <Crossings file={file} />
    </>
  );
}

function Crossings({ file }: { readonly file: LineFile }) {
  return (
    <Section
      title="Lots crossed"
      note="A lot the line runs through is affected even if it is not connected. Stations are feet from the main connection."
    >
      <LineGrid
        lineId={file.line.id}
        table="crossings"
        columns={crossingColumns(file)}
        addWord="crossed lot"
        emptyWords="No crossed lots. If the line stays under the street and the connected lots, leave this blank."
      />
    </Section>
  );
}

function Land({ file }: { readonly file: LineFile }) {
  return (
    <Section
      title="Whose land"
      id="land"
      note="Whose land lies over the pipe, section by section, and what shows it. Where you dig, that decides whose consent and which permit you need; until it is entered, nothing is submitted or dug there."
    >
      <LineGrid
        lineId={file.line.id}
        table="land"
        columns={landColumns(file)}
        addWord="section"
        emptyWords="Not entered yet. Enter the first section from the main, e.g. 0 to 12 ft, street."
      />
    </Section>
  );
}
