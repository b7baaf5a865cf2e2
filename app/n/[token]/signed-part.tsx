import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { CertificateList } from "#app/_components/certificate.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { SCREEN_KINDS } from "#lib/domain/consent/signable.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { SignedWord } from "#lib/domain/paper/link-view.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { withdrawAction } from "./actions.ts";
import type { PartProps } from "./part.ts";

/** What this reader signed, what it is worth today, the copy, and how to take it back. */
export function SignedPart(props: PartProps) {
  const { view, words } = props;
  if (view.signed.length === 0) return null;
  const copied = view.signed.some(({ signature }) => signature.copyMessageId !== "");
  return (
    <Section title={words.signedTitle} id="signed">
      {view.signed.map((signed) => (
        <Signed key={signed.signature.documentId} {...props} signed={signed} />
      ))}
      <p className="muted">
        {copied ? `${words.copySent(view.email)} ` : null}
        {words.copyHere}
      </p>
    </Section>
  );
}

function Signed({
  token,
  view,
  language,
  words,
  signed,
}: PartProps & { readonly signed: SignedWord }) {
  const { signature, consent, standing, certificate } = signed;
  const kind = SCREEN_KINDS.find((each) => each === consent.kind);
  const canGo =
    standing === "current" || standing === "superseded-amount" || standing === "name-held";
  return (
    <article className="stack-tight">
      <h3>
        {kind === undefined ? consent.kind : words.kinds[kind]}
        {consent.amount === null ? null : `, ${formatCents(consent.amount)}`}
      </h3>
      <p>
        {words.signedOn(momentWords(signature.signedAt, view.office.zone, language))}{" "}
        <strong>{words.standing[standing]}</strong>
      </p>
      <p>“{signature.intent}”</p>
      <p className="screen-only">
        <a
          href={`/n/${token}/letter?file=${signature.documentId}`}
          target="_blank"
          rel="noreferrer"
        >
          {words.openSigned}
        </a>
      </p>
      {certificate === null ? null : (
        <details>
          <summary>{certificate.title}</summary>
          <CertificateList certificate={certificate} />
        </details>
      )}
      {canGo ? <Withdraw token={token} language={language} words={words} signed={signed} /> : null}
    </article>
  );
}

/** Taking it back; once it binds, asking the office to be let go from it. */
function Withdraw({
  token,
  language,
  words,
  signed,
}: Omit<PartProps, "view" | "isPosted" | "form"> & { readonly signed: SignedWord }) {
  const { consent, binding, releaseAskedOn } = signed;
  const action = withdrawAction.bind(null, { token, language, consentId: consent.id });
  const comesBackTo = `/n/${token}?lang=${language}#signed`;
  const day = LETTER_WORDS[language].day;
  if (binding === null) {
    return (
      <ActionForm
        className="stack-tight screen-only"
        action={action}
        label={words.withdraw}
        comesBackTo={comesBackTo}
        confirm={words.withdrawConfirm}
      >
        <p className="muted small">
          {consent.kind === "pay"
            ? words.withdrawPay
            : `${words.withdrawNote} ${words.withdrawDug}`}
        </p>
        <div>
          <SubmitButton pendingWord={words.withdrawing} quiet>
            {words.withdraw}
          </SubmitButton>
        </div>
      </ActionForm>
    );
  }
  return (
    <>
      <p>{words.binding[binding.why](day(binding.since))}</p>
      {releaseAskedOn === null ? (
        <ActionForm
          className="stack-tight screen-only"
          action={action}
          label={words.release}
          comesBackTo={comesBackTo}
        >
          <p className="muted small">{words.releaseNote}</p>
          <Field label={words.releaseWhy} name="words" rows={3} />
          <div>
            <SubmitButton pendingWord={words.releasing} quiet>
              {words.release}
            </SubmitButton>
          </div>
        </ActionForm>
      ) : (
        <p className="muted">{words.releaseAsked(day(releaseAskedOn))}</p>
      )}
    </>
  );
}
