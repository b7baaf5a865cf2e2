import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LetterSheet } from "#app/_components/letter-sheet.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { dayOf } from "#lib/domain/time/moment.ts";
import { openLink } from "#lib/operations/open-link.ts";
import { AnswerForm } from "./answer-form.tsx";
import { doorOf, isAfterDeed, isAfterPost, languageOf, stopOf } from "./door.ts";
import type { PartProps } from "./part.ts";
import styles from "./private-page.module.css";
import { Said } from "./said.tsx";
import { SignPart } from "./sign-part.tsx";
import { SignedPart } from "./signed-part.tsx";
import { TooMany } from "./too-many.tsx";

export const metadata: Metadata = {
  title: { absolute: "Your letter · Su carta" },
  robots: { index: false, follow: false, noarchive: true },
  // Told to no other site. Told to none at all, a form sent without scripts would come from nowhere
  // for the server, and be refused.
  referrer: "same-origin",
};

/** What a neighbor sees of their own letter, and where they answer and sign. */
export default async function PrivatePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ token: string }>;
  readonly searchParams: Promise<{ lang?: string | string[] }>;
}) {
  const { token } = await params;
  const door = await doorOf();
  const opened = openLink(door, token, { noted: !(await isAfterDeed()) });
  if (!opened.ok) {
    if (stopOf(opened.error) === "too-many") return <TooMany />;
    notFound();
  }
  const view = opened.value;
  const language = languageOf((await searchParams).lang, view.language);
  const words = LINK_WORDS[language];
  const letter = view.letter === null ? null : inLanguage(view.letter, language);
  const isPosted = await isAfterPost();
  const part = { token, view, language, words, isPosted, form: door.newId() };
  return (
    <div className={styles["page"]} lang={language}>
      {door.officeUser === "" ? null : (
        <NoticeBox kind="caution" title={words.cannotSign}>
          <p>{words.officeSession(door.officeUser)}</p>
        </NoticeBox>
      )}
      <Head {...part} />
      <PdfLink {...part} />
      <Share {...part} />
      <Section
        title={words.letter}
        id="letter"
        {...(letter === null ? {} : { folded: words.readHere })}
      >
        <div className={styles["letter"]}>
          {letter === null ? (
            <NoticeBox kind="caution" title={words.letterUnreadable}>
              <p>{words.letterUnreadableNote(view.office.name)}</p>
            </NoticeBox>
          ) : (
            <LetterPart {...part} letter={letter} />
          )}
        </div>
      </Section>
      <SignedPart {...part} />
      <Said {...part} />
      <Section
        title={words.say}
        id="say"
        folded={words.sayFolded}
        opened={isPosted}
        note={words.sayNote}
      >
        <AnswerForm {...part} />
      </Section>
      <SignPart {...part} />
      <Foot {...part} />
    </div>
  );
}

/** The letter alone in the language in which its page is read; as it was sent where it has only one. */
function inLanguage({ also, ...letter }: Letter, language: Language): Letter {
  return also?.language === language ? also : letter;
}

function LetterPart({ token, language, words, letter }: PartProps & { readonly letter: Letter }) {
  return (
    <>
      {letter.language === language ? null : (
        <p className="muted small screen-only">{words.letterIn}</p>
      )}
      <LetterSheet
        letter={letter}
        pictureHref={(id) => `/n/${token}/letter?file=${encodeURIComponent(id)}`}
      />
    </>
  );
}

function Head({ token, view, language, words }: PartProps) {
  const other = language === "en" ? "es" : "en";
  const until = LETTER_WORDS[language].day(dayOf(view.expiresAt, view.office.zone));
  return (
    <header className={styles["head"]}>
      <div className={styles["line"]}>
        <p className={styles["office"]}>{view.office.name}</p>
        <a
          className={`screen-only ${styles["switch"]}`}
          href={`/n/${token}?lang=${other}`}
          lang={other}
        >
          {words.otherLanguage}
        </a>
      </div>
      <h1 className="display">{words.heading(view.office.name)}</h1>
      <p className="lead">{words.about(view.partyName, view.place)}</p>
      <p className="muted">{words.until(until)}</p>
      <nav aria-label={words.jump} className={`screen-only ${styles["jump"]}`}>
        <a href="#letter">{words.letter}</a>
        <a href="#say">{words.say}</a>
        {view.asks.some(({ stop }) => stop === null) ? <a href="#sign">{words.sign}</a> : null}
        {view.signed.length === 0 ? null : <a href="#signed">{words.signedTitle}</a>}
      </nav>
    </header>
  );
}

function Share({ view, words }: PartProps) {
  if (view.superseded !== null) {
    const { amount } = view.superseded;
    return (
      <NoticeBox kind="caution" title={words.superseded}>
        <p>
          {amount === null ? words.noNewAmount : words.newAmount(formatCents(amount), view.place)}
        </p>
      </NoticeBox>
    );
  }
  const amount = view.share?.amount ?? null;
  if (amount === null) return null;
  return (
    <div className={styles["share"]}>
      <p>{words.share(view.place)}</p>
      <p className={styles["amount"]}>{formatCents(amount)}</p>
      <p className="muted">{words.shareNote}</p>
    </div>
  );
}

function PdfLink({ token, view, words }: PartProps) {
  if (view.documentId === null) return <p className="muted">{words.letterMade}</p>;
  return (
    <p className="screen-only">
      <a
        className={`button button-main ${styles["wide"]}`}
        href={`/n/${token}/letter`}
        target="_blank"
        rel="noreferrer"
      >
        {words.openLetter}
      </a>
    </p>
  );
}

function Foot({ view, words }: PartProps) {
  const { office } = view;
  return (
    <footer className={styles["foot"]}>
      <section aria-label={words.contact}>
        <h2>{words.contact}</h2>
        <p>{office.name}</p>
        {office.phone === "" ? null : (
          <p>
            {words.telephone}{" "}
            <a href={`tel:${office.phone.replace(/[^\d+]/g, "")}`}>{formatPhone(office.phone)}</a>
          </p>
        )}
        {office.email === "" ? null : (
          <p>
            {words.email} <a href={`mailto:${office.email}`}>{office.email}</a>
          </p>
        )}
      </section>
      <section aria-label={words.kept}>
        <h2>{words.kept}</h2>
        <p className="muted">{words.keptNote}</p>
      </section>
      <p className={styles["gas"]}>{words.gas}</p>
    </footer>
  );
}
