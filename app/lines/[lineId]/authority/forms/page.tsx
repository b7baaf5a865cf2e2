import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { emptyFields } from "#lib/domain/form/plan-form.ts";
import { planOf } from "#lib/domain/packet/sheets-form.ts";
import { PERMIT_KIND_WORDS } from "#lib/domain/permit/state-words.ts";
import { formsOf } from "#lib/operations/forms-of.ts";
import { lineFileOf } from "../../file.ts";
import { QuestionHead } from "../../question-head.tsx";

export const metadata: Metadata = { title: "Forms" };

/** The authority's own forms as they come out on this line. */
export default async function FormsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, office } = await lineFileOf(lineId);
  const forms = office === null ? [] : formsOf(db(), file);
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      <Section
        title="Forms"
        note="The authority’s own forms, filled in from this file. Those of the side sewer and the connection permit come first in the packet."
      >
        {forms.length === 0 || office === null ? (
          <Empty title="The authority has no forms here yet.">
            <p>
              {file.authority === null ? (
                "No authority is selected for this line."
              ) : (
                <>
                  An admin adds the PDF that it hands out under{" "}
                  <Link href={`/office/authorities/${file.authority.id}#forms`}>
                    {file.authority.name}
                  </Link>
                  .
                </>
              )}
            </p>
          </Empty>
        ) : (
          <Scroll>
            <table className="plain">
              <Heads of={["Form", "Permit", { num: "Filled in" }, { num: "Empty" }]} />
              <tbody>
                {forms.map((form) => {
                  const plan = planOf(form, { file, report, office });
                  return (
                    <tr key={form.id}>
                      <th scope="row">
                        <Link href={`/lines/${lineId}/authority/forms/${form.id}`}>
                          {form.title}
                        </Link>
                      </th>
                      <td>{PERMIT_KIND_WORDS[form.permitKind]}</td>
                      <td className="num">
                        {plan.answers.filter(({ state }) => state === "filled").length}
                      </td>
                      <td className="num">{emptyFields(plan).length}</td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </Scroll>
        )}
      </Section>
    </>
  );
}
