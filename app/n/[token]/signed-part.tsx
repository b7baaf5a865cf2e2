import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { CertificateList } from "#app/_components/certificate.tsx";
import { Section } from "#app/_components/section.tsx";
import type { SignedWord } from "#lib/domain/consent/link-view.ts";
import { momentWords } from "#lib/domain/consent/moment.ts";
import { SCREEN_KINDS } from "#lib/domain/consent/signable.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { PartProps } from "./_part.ts";
import { withdrawAction } from "./actions.ts";

/** What this reader signed, what it is worth today, the copy, and how to take it back. */
export function SignedPart(props: PartProps) {
  const { view, words } = props;
  if (view.signed.length === 0) return null;
  const copied = view.signed.some(({ signature }) => signature.copyMessageId !== "");
  return (
    <Section title={words.signedTitle} id="signed">
      {view.signed.map((signed) => (
        <Signed key={signed.signature.id} {...props} signed={signed} />
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
  const holds = standing === "current" || standing === "superseded-amount";
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
      {holds ? (
        <ActionForm
          className="stack-tight screen-only"
          action={withdrawAction.bind(null, { token, language, consentId: consent.id })}
          label={words.withdraw}
          confirm={words.withdrawConfirm}
        >
          <p className="muted small">
            {words.withdrawNote}
            {kind === "pay" ? null : ` ${words.withdrawDug}`}
          </p>
          <div>
            <SubmitButton pendingWord={words.withdrawing} quiet>
              {words.withdraw}
            </SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </article>
  );
}
