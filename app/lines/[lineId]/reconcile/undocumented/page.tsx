import { ButtonLink } from "#app/_components/button.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { isOwnerOpen, isUnsettled } from "#lib/domain/tiein/open-question.ts";
import { linePartOf } from "../../line-part.ts";
import { counted, listed } from "../../names.ts";
import type { LinePart } from "../../part.ts";
import { Levels } from "./levels.tsx";
import type { TieInQuery } from "./opened.tsx";
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
      <PageHead asked="Which property does each undocumented tie-in serve?" answer={answerOf(part)}>
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

/** `T2 and T6 have no proven owner; tests show the owner of T4`. */
function answerOf({ report: { tieIns } }: LinePart): string {
  const labels = (of: LinePart["report"]["tieIns"]) => listed(of.map(({ tieIn }) => tieIn.label));
  const open = tieIns.filter(isOwnerOpen);
  const shown = tieIns.filter(isUnsettled);
  const words = [
    open.length === 0
      ? ""
      : `${labels(open)} ${open.length === 1 ? "has" : "have"} no proven owner`,
    shown.length === 0 ? "" : `tests show the owner of ${labels(shown)}; settle it below`,
  ].filter((each) => each !== "");
  if (words.length > 0) return words.join("; ");
  const settled = tieIns.filter(({ standing }) => standing === "undocumented").length;
  return settled === 0
    ? "Every tie-in is on record"
    : `${counted(settled, "tie-in")} not on record, all settled`;
}
