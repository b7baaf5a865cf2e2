import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { LETTER_NAMES } from "#app/_components/letter-names.ts";
import { LetterSheet } from "#app/_components/letter-sheet.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { requireUser } from "#app/session.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { HOUSE_WORDING, type Wording } from "#lib/domain/facts/wording.ts";
import { LETTER_PLANS } from "#lib/domain/paper/kinds/index.ts";
import { houseWording } from "#lib/domain/paper/worded.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { WORDING_FIELDS } from "#lib/domain/wording/parse-wording.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { saveWordingAction } from "../actions.ts";
import { Versions } from "./versions.tsx";
import { type WordingAt, wordingView } from "./view.ts";

export const metadata: Metadata = { title: "Letter wording" };

/** One letter's wording in one language: typed, previewed on a line's data, put into use. */
export default async function WordingPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ kind: string }>;
  readonly searchParams: Promise<{ in?: string | string[]; line?: string | string[] }>;
}) {
  const user = await requireUser();
  const search = await searchParams;
  const language = search.in === "es" ? "es" : "en";
  const found = wordingView((await params).kind, { language, lineId: search.line });
  if (found === null) return notFound();
  const { at, versions, newest, inUse, sample, preview, lines, line, zone } = found;
  const { kind } = at;
  const may = mayDo(user.role, "run-the-office");
  const other = language === "en" ? "es" : "en";
  return (
    <div className="sheet">
      <PageHead
        asked={`${LETTER_NAMES[kind]}, ${NAMES[language]}`}
        answer={inUse === HOUSE_WORDING ? "In the house wording" : `In your version ${inUse}`}
      >
        <p className="cluster">
          <Link href="/office/wording">All letters</Link>
          <Link href={`/office/wording/${kind}?in=${other}`}>
            {other === "es" ? "The Spanish wording" : "The English wording"}
          </Link>
        </p>
        {may ? null : <p className="muted">Only an office admin can change a wording.</p>}
      </PageHead>
      <Section
        title="Text"
        id="text"
        note={
          LETTER_PLANS[kind].ownProse
            ? "Your sentences replace the house’s. What the file says of this line stays, where {facts} stands."
            : "This letter’s own sentences are needed for safety, consent or payment and stay in {facts}. Yours stand before or after them."
        }
      >
        <WordingForm
          at={at}
          may={may}
          version={newest?.version ?? 0}
          text={newest?.text ?? (sample === null ? "{facts}" : houseWording(sample))}
        />
      </Section>
      <Section title="Versions" id="versions">
        <Versions at={at} versions={versions} inUse={inUse} may={may} zone={zone} />
      </Section>
      <Section
        key={newest?.version ?? 0}
        title="Preview"
        id="preview"
        folded={
          preview === null
            ? "no line has a reader for it yet"
            : `${versionWords(newest)}, on ${line?.name ?? ""}`
        }
        opened={newest !== undefined && newest.version !== inUse}
      >
        <form className="cluster screen-only" method="get">
          <input type="hidden" name="in" value={language} />
          <label className="cluster">
            <span>Line</span>
            <select className="input" name="line" defaultValue={line?.id}>
              {lines.map(({ id, name: called }) => (
                <option key={id} value={id}>
                  {called}
                </option>
              ))}
            </select>
          </label>
          <button type="submit" className="button">
            Show
          </button>
        </form>
        {preview === null ? null : (
          <>
            {preview.gaps.map((gap) => (
              <p key={gap} className="mend">
                {gap}
              </p>
            ))}
            <LetterSheet letter={preview.letter} />
          </>
        )}
      </Section>
    </div>
  );
}

const NAMES: Record<Language, string> = { en: "English", es: "Spanish" };

function versionWords(newest: Wording | undefined): string {
  return newest === undefined ? "the house wording" : `version ${newest.version}`;
}

function WordingForm({
  at,
  may,
  version,
  text,
}: {
  readonly at: WordingAt;
  readonly may: boolean;
  readonly version: number;
  readonly text: string;
}) {
  if (!may) return <p style={{ whiteSpace: "pre-wrap" }}>{text}</p>;
  const fields = WORDING_FIELDS.map((field) => `{${field}}`).join(" ");
  return (
    <ActionForm
      key={`${at.kind} ${at.language}`}
      className="stack"
      action={saveWordingAction.bind(null, at)}
      label="Save the wording"
    >
      <SeenField value={seenOf(version)} />
      <Field
        label="Wording"
        name="text"
        rows={14}
        defaultValue={text}
        hint={`A blank line begins a paragraph, # a heading, - a line of a list. Fields: ${fields}`}
      />
      <div>
        <SubmitButton pendingWord="Saving …">Save and preview</SubmitButton>
      </div>
    </ActionForm>
  );
}
