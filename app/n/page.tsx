import type { Metadata } from "next";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { openByCodeAction } from "./actions.ts";

export const metadata: Metadata = {
  title: { absolute: "Open your letter · Abra su carta" },
  robots: { index: false, follow: false, noarchive: true },
  // Told to no other site. Told to none at all, a form sent without scripts would come from nowhere
  // for the server, and be refused.
  referrer: "same-origin",
};

/** Where the code of a letter on paper is typed; in both languages, as nobody knows yet who reads it. */
export default function CodePage() {
  return (
    <div className="sheet sheet-narrow">
      {LANGUAGES.map((language) => {
        const { door } = LINK_WORDS[language];
        return (
          <section key={language} id={language} lang={language} className="stack-tight">
            {language === "en" ? (
              <h1 className="display">{door.title}</h1>
            ) : (
              <h2 className="display">{door.title}</h2>
            )}
            <p>{door.note}</p>
            <ActionForm
              className="stack"
              action={openByCodeAction.bind(null, language)}
              label={door.title}
              comesBackTo={`/n#${language}`}
            >
              <Field
                label={door.code}
                name="code"
                required
                requiredWord={door.required}
                hint={door.hint}
                width={24}
              />
              <div>
                <SubmitButton pendingWord={door.opening}>{door.open}</SubmitButton>
              </div>
            </ActionForm>
            <p className="muted">{door.help}</p>
          </section>
        );
      })}
    </div>
  );
}
