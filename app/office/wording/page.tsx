import type { Metadata } from "next";
import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { LETTER_NAMES } from "#app/_components/letter-names.ts";
import { PageHead } from "#app/_components/page-head.tsx";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { listUses } from "#db/queries/wording.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { HOUSE_WORDING } from "#lib/domain/facts/wording.ts";
import type { Language } from "#lib/domain/say/language.ts";

export const metadata: Metadata = { title: "Letter wording" };

/** Which letters the office words itself, in which language. */
export default async function WordingsPage() {
  await requireUser();
  const uses = listUses(db());
  const said = (kind: LetterKind, language: Language) => {
    const use = uses.find((each) => each.kind === kind && each.language === language);
    const version = use?.version ?? HOUSE_WORDING;
    return version === HOUSE_WORDING ? "house wording" : `your version ${version}`;
  };
  return (
    <div className="sheet">
      <PageHead asked="Letter wording" answer="Say it in your own words">
        <p>
          Days, figures, tables and drawings come from each file. Cautions, the reply slip and the
          signature always print; they are not part of a wording.
        </p>
        <p>
          <Link href="/office">Back to Office</Link>
        </p>
      </PageHead>
      <div className="scroll">
        <table className="plain">
          <Heads of={["Letter", "English", "Spanish"]} />
          <tbody>
            {LETTER_KINDS.map((kind) => (
              <tr key={kind}>
                <th scope="row">{LETTER_NAMES[kind]}</th>
                <td>
                  <Link
                    href={`/office/wording/${kind}`}
                    aria-label={`${LETTER_NAMES[kind]}, English: ${said(kind, "en")}`}
                  >
                    {said(kind, "en")}
                  </Link>
                </td>
                <td>
                  <Link
                    href={`/office/wording/${kind}?in=es`}
                    aria-label={`${LETTER_NAMES[kind]}, Spanish: ${said(kind, "es")}`}
                  >
                    {said(kind, "es")}
                  </Link>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
