import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { disclosureText } from "#lib/domain/consent/words.ts";
import { intentSentence } from "#lib/domain/paper/intent.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import type { SigningAsk } from "#lib/domain/paper/link-view.ts";
import { paperAction, signAction } from "./actions.ts";
import { DrawName } from "./draw-name.client.tsx";
import type { PartProps } from "./part.ts";
import styles from "./private-page.module.css";

/** Signing on screen, where the letter asks for it and this reader may; else why not. */
export function SignPart(props: PartProps) {
  const { view, words } = props;
  const open = view.asks.filter(({ stop }) => stop === null);
  if (view.onPaper) {
    return (
      <Section title={words.onPaper} id="sign">
        <p>{words.onPaperNote}</p>
      </Section>
    );
  }
  if (open.length > 0 && view.letter !== null) {
    return (
      <Section
        title={words.sign}
        id="sign"
        note={words.signNote}
        folded={words.signFolded}
        opened={view.isOpened || props.isPosted}
      >
        <SignForm {...props} open={open} letter={view.letter} />
        <AskForPaper {...props} />
      </Section>
    );
  }
  const [first] = view.asks;
  if (first === undefined || first.stop === null || view.signed.length > 0) return null;
  return (
    <Section title={words.cannotSign} id="sign">
      <p>{words.stops[first.stop]}</p>
    </Section>
  );
}

function SignForm({
  token,
  view,
  language,
  words,
  open,
  letter,
}: PartProps & { readonly open: readonly SigningAsk[]; readonly letter: Letter }) {
  const splitId = open.find(({ terms }) => terms.splitId !== null)?.terms.splitId ?? "";
  return (
    <ActionForm
      className="stack screen-only"
      action={signAction.bind(null, { token, language })}
      label={words.sign}
      comesBackTo={`/n/${token}?lang=${language}#sign`}
    >
      <OpenFirst token={token} view={view} words={words} />
      <p className="strong">{words.signAs(open[0]?.name ?? "")}</p>
      <input type="hidden" name="splitId" value={splitId} />
      <fieldset className={styles["choices"]}>
        <legend>{words.agreeTo}</legend>
        {open.map(({ kind, terms }) => (
          <label key={kind} className={styles["choice"]}>
            <input type="checkbox" name="kind" value={kind} />
            <span>
              {intentSentence(words, {
                kind,
                terms,
                office: view.office.name,
                place: view.place,
                letter,
                date: view.dates[language],
              })}
            </span>
          </label>
        ))}
      </fieldset>
      <div className={styles["terms"]}>
        <h3>{words.recordsTitle}</h3>
        {disclosureText(language, view.office)
          .split("\n\n")
          .map((text) => (
            <p key={text}>{text}</p>
          ))}
        <label className={styles["choice"]}>
          <input type="checkbox" name="records" value="yes" />
          <span>{words.records}</span>
        </label>
      </div>
      {open.some(({ capacityMissing }) => capacityMissing) ? (
        <Field label={words.capacity} name="capacity" hint={words.capacityHint} />
      ) : null}
      <Names people={open[0]?.people ?? []} words={words} />
      <div className={styles["byScript"]}>
        <DrawName
          name="drawing"
          words={{
            draw: words.draw,
            note: words.drawNote,
            place: words.drawPlace,
            clear: words.drawClear,
          }}
        />
      </div>
      <div>
        <SubmitButton pendingWord={words.signing}>{words.signNow}</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** What has to be done before anything below is taken, and the way to it. */
function OpenFirst({ token, view, words }: Pick<PartProps, "token" | "view" | "words">) {
  if (view.isOpened) return <p className="muted">{words.openedFirst}</p>;
  if (view.documentId === null) return <p className="muted">{words.letterMade}</p>;
  return (
    <NoticeBox kind="caution" title={words.openLetter}>
      <p>{words.openFirst}</p>
      <p>
        <a href={`/n/${token}/letter`} target="_blank" rel="noreferrer">
          {words.openLetter}
        </a>
      </p>
    </NoticeBox>
  );
}

/** One name, or one of each where several people are one party. */
function Names({
  people,
  words,
}: Pick<PartProps, "words"> & { readonly people: readonly string[] }) {
  if (people.length === 0) {
    return <Field label={words.name} name="signedName" hint={words.nameHint} autoComplete="name" />;
  }
  return (
    <>
      <p>{words.nameEach}</p>
      {people.map((person, at) => (
        <Field
          key={person}
          label={words.nameOf(person)}
          name={`signedName-${at}`}
          hint={words.nameHint}
          autoComplete="off"
        />
      ))}
    </>
  );
}

function AskForPaper({ token, language, words, form }: PartProps) {
  return (
    <ActionForm
      className="stack-tight screen-only"
      action={paperAction.bind(null, { token, language })}
      label={words.paper}
      comesBackTo={`/n/${token}?lang=${language}#sign`}
    >
      <input type="hidden" name="form" value={form} />
      <div>
        <SubmitButton pendingWord={words.sending} quiet>
          {words.paper}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
