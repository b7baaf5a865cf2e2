import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { type HeldName, heldNames } from "#lib/domain/consent/held-names.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CONSENT_WORDS } from "#lib/domain/facts/notice-words.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { propertyName } from "../../names.ts";
import { decideNameAction } from "./actions.ts";

interface HeldNamesProps {
  readonly lineId: string;
  readonly file: LineFile;
  /** May decide. */
  readonly work: boolean;
}

/** Signatures in a name that is not the party's: none of them counts before someone has looked. */
export function HeldNames({ lineId, file, work }: HeldNamesProps) {
  const held = heldNames(file);
  if (held.length === 0) return null;
  return (
    <div className="page-head" id="names">
      <NoticeBox kind="caution" title="Signed under another name">
        <p>
          None of these counts until someone in the office has checked the name. Call the person, or
          compare it with the name on title.
        </p>
        {held.map((one) => (
          <Held key={one.consent.id} lineId={lineId} file={file} work={work} {...one} />
        ))}
      </NoticeBox>
    </div>
  );
}

function Held({ lineId, file, work, consent, signature }: HeldNamesProps & HeldName) {
  return (
    <article className="stack-tight">
      <h3>
        Consent to {CONSENT_WORDS[consent.kind]}, {propertyName(file, consent.propertyId)}
      </h3>
      <p>
        Typed: <strong>“{signature.signedName}”</strong>. On file: {signature.forName}. Signed{" "}
        {momentWords(signature.signedAt, signature.zone, "en")}
        {signature.address === "" ? "" : ` from ${signature.address}`},{" "}
        <Link href={`/lines/${lineId}/notices/consents/signature/${signature.id}`}>
          certificate
        </Link>
        .
      </p>
      {work ? (
        <ActionForm
          className="stack-tight screen-only"
          action={decideNameAction.bind(null, { lineId, consentId: consent.id })}
          label={`The name ${signature.signedName}`}
        >
          <Choice
            label="Was it the signer?"
            name="answer"
            required
            options={[
              { value: "", label: "select" },
              { value: "accepted", label: "yes: accept this name" },
              { value: "refused", label: "no, or not certain: do not accept it" },
            ]}
          />
          <Field
            label="How you know"
            name="reason"
            required
            example="Called her; Bea Stone is Beatrice Stone on title"
            hint="Printed with your name in the certificate, and in the packet where the signature is enclosed."
          />
          <div>
            <SubmitButton pendingWord="Recording …">Record</SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </article>
  );
}
