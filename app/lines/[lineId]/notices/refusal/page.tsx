import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { RefusalPath } from "#lib/domain/desk/refusal-path.ts";
import { refusalPaths } from "#lib/domain/desk/refusal-path.ts";
import { lineFileOf } from "../../file.ts";
import { PathView } from "./path-view.tsx";

export const metadata: Metadata = { title: "If an owner does not agree" };

const HOW_WORDS = {
  refused: "refused",
  objected: "objects",
  silent: "did not answer in time",
} as const;

export default async function RefusalPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report } = await lineFileOf(lineId);
  const paths = refusalPaths(file, report);
  return (
    <>
      <PageHead asked="If an owner does not agree" answer={answerWords(paths)}>
        <p className="screen-only">
          <Link href={`/lines/${lineId}/notices/consents`}>Back to consents</Link>
        </p>
      </PageHead>
      {paths.length === 0 ? (
        <Empty title="No refusals and no overdue answers.">
          <p>
            When someone refuses, or does not answer in time, this page says which work can proceed
            without them, which cannot, and what the authority’s rules allow next.
          </p>
        </Empty>
      ) : null}
      {paths.map((path, at) => (
        <Section
          key={path.withheld.propertyId}
          title={path.withheld.place}
          id={path.withheld.propertyId}
          foldedOnPhone={HOW_WORDS[path.withheld.how]}
          opened={at === 0}
        >
          <PathView lineId={lineId} file={file} path={path} today={report.today} />
        </Section>
      ))}
      <NoticeBox kind="caution" title="This is not legal advice">
        <p>
          Anyone may refuse, and may have good reasons. The steps come from the rules entered under
          Office, with the date last checked; verify them and consult counsel before taking one.
        </p>
      </NoticeBox>
    </>
  );
}

function answerWords(paths: readonly RefusalPath[]): string {
  const no = paths.filter(({ withheld }) => withheld.how === "refused").length;
  const objecting = paths.filter(({ withheld }) => withheld.how === "objected").length;
  const late = paths.length - no - objecting;
  if (paths.length === 0) return "None right now.";
  const parts = [
    ...(no === 0 ? [] : [`${no} ${no === 1 ? "property" : "properties"} refused`]),
    ...(objecting === 0
      ? []
      : [`${objecting} ${objecting === 1 ? "objects" : "object"}, not dealt with yet`]),
    ...(late === 0 ? [] : [`${late} did not answer in time`]),
  ];
  return `${parts.join(", ")}.`;
}
