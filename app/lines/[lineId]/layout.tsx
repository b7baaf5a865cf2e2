import type { ReactNode } from "react";
import styles from "#app/_components/line-layout.module.css";
import { LineNav } from "#app/_components/line-nav.client.tsx";
import { LineStrip } from "#app/_components/line-strip.client.tsx";
import { SelectionProvider } from "#app/_components/selection.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { drawStrips } from "#lib/domain/strip/draw.ts";
import { lineFileOf } from "./file.ts";
import { partsOf } from "./parts.ts";

/** Kept as long as the report is. */
const drawn = new WeakMap<Report, ReturnType<typeof drawStrips>>();

function drawingsOf(file: LineFile, report: Report) {
  const known = drawn.get(report) ?? drawStrips(file, report);
  drawn.set(report, known);
  return known;
}

export default async function LineLayout({
  children,
  params,
}: {
  readonly children: ReactNode;
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, answers } = await lineFileOf(lineId);
  const drawings = drawingsOf(file, report);
  const questions = answers.map(({ question, asked, pressing }) => ({
    question,
    asked,
    open: pressing > 0,
    parts: partsOf(question, file, report),
  }));
  return (
    <SelectionProvider>
      <div className={styles["title"]}>
        <p className={styles["name"]}>
          {file.line.name}
          {file.line.town === "" ? null : <span className="muted">, {file.line.town}</span>}
        </p>
        {file.line.closedOn === null ? null : <span className="tag">closed</span>}
      </div>
      <LineStrip drawings={drawings} />
      <div className={styles["columns"]}>
        <LineNav lineId={lineId} answers={questions} />
        <div className={styles["page"]}>{children}</div>
      </div>
    </SelectionProvider>
  );
}
