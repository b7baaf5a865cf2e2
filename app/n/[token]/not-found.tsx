import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";

/** One answer for a link that never was, ran out or was called back; in both languages. */
export default function NoSuchLink() {
  return (
    <div className="sheet sheet-narrow">
      {LANGUAGES.map((language) => (
        <section key={language} lang={language} className="stack-tight">
          <h1 className="display">{LINK_WORDS[language].goneTitle}</h1>
          <p>{LINK_WORDS[language].goneWords}</p>
        </section>
      ))}
    </div>
  );
}
