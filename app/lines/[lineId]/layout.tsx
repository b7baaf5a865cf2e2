import { headers } from "next/headers";
import type { ReactNode } from "react";
import styles from "#app/_components/line-layout.module.css";
import { LineNav } from "#app/_components/line-nav.client.tsx";
import { LineStrip } from "#app/_components/line-strip.client.tsx";
import { SelectionProvider } from "#app/_components/selection.client.tsx";
import { lineFileOf } from "./file.ts";
import { partsOf } from "./parts.ts";
import { stripSent } from "./strips.ts";

export default async function LineLayout({
  children,
  params,
}: {
  readonly children: ReactNode;
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, answers } = await lineFileOf(lineId);
  const asked = (await headers()).get("x-asked-page");
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
      <LineStrip sent={stripSent(file, report, asked)} />
      <div className={styles["columns"]}>
        <LineNav lineId={lineId} answers={questions} />
        <div className={styles["page"]}>{children}</div>
      </div>
    </SelectionProvider>
  );
}
