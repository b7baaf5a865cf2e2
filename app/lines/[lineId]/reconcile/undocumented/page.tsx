import { ButtonLink } from "#app/_components/button.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { isOwnerOpen } from "#lib/domain/tiein/open-question.ts";
import { linePartOf } from "../../line-part.ts";
import { Levels } from "./levels.tsx";
import type { TieInQuery } from "./opened.tsx";
import { undocumentedWords } from "./questions.ts";
import { OtherTests, SettledTieIns, Undocumented } from "./tie-in.tsx";

export const metadata = { title: "Undocumented tie-ins" };

export default async function UndocumentedPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<TieInQuery>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const part = await linePartOf(lineId);
  const open = part.report.tieIns.filter(isOwnerOpen);
  return (
    <>
      <PageHead
        asked="Which property does each undocumented tie-in serve?"
        answer={undocumentedWords(part.report.tieIns)}
      >
        {open.length === 0 || !part.mayRecord ? null : (
          <p className="screen-only">
            <ButtonLink href={`/lines/${lineId}/reconcile/test-day`}>
              Plan a dye test day
            </ButtonLink>
          </p>
        )}
      </PageHead>
      <Undocumented asked={asked} {...part} />
      <SettledTieIns asked={asked} {...part} />
      <OtherTests asked={asked} {...part} />
      <Levels />
    </>
  );
}
