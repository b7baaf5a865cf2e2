import type { Metadata } from "next";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { LineGrid } from "../../line-grid.tsx";
import { linePartOf } from "../../line-part.ts";
import type { LinePart } from "../../part.ts";
import { POINT_BLANK, POINT_COLUMNS } from "../columns.ts";
import { PipeForm } from "../pipe-form.tsx";

export const metadata: Metadata = { title: "Pipe and landmarks" };

/** The shared pipe itself, and the landmarks along it. */
export default async function PipePage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const part = await linePartOf(lineId);
  const { file } = part;
  const known = file.points.some(({ kind }) => kind === "right-of-way-line");
  return (
    <>
      <PageHead
        asked="What is the shared pipe?"
        answer={answerOf(part)}
        closes={known ? null : "Enter the right-of-way line: most rules of responsibility need it"}
      />
      <PipeForm {...part} />
      <Points {...part} />
    </>
  );
}

/** `6 in concrete at the main, 96.0 ft to its upper end`. */
function answerOf({ file: { line } }: LinePart): string {
  const size = line.diameter === null ? "size unknown" : `${line.diameter} in`;
  const material = line.material === "unknown" ? "material unknown" : MATERIAL_WORDS[line.material];
  const end = line.upperEnd === null ? "length unknown" : `${formatFeet(line.upperEnd)} long`;
  const pipe = line.diameter === null ? `${size}, ${material}` : `${size} ${material}`;
  return `${pipe} at the main, ${end}`;
}

function Points({ lineId }: LinePart) {
  return (
    <Section
      title="Landmarks"
      note="Right-of-way line, cleanouts and other landmarks. Responsibility and camera positions depend on these."
    >
      <LineGrid
        lineId={lineId}
        table="points"
        columns={POINT_COLUMNS}
        blank={POINT_BLANK}
        addWord="landmark"
        emptyWords="No landmarks yet. Most rules need the right-of-way line."
      />
    </Section>
  );
}
