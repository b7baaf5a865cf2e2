import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";

/** Said in both languages: nobody knows yet who is asking. */
export function TooMany() {
  return (
    <div className="sheet sheet-narrow">
      {LANGUAGES.map((language) => (
        <section key={language} lang={language} className="stack-tight">
          <h1 className="display">{LINK_WORDS[language].tooManyTitle}</h1>
          <p>{LINK_WORDS[language].stops["too-many"]}</p>
        </section>
      ))}
    </div>
  );
}
