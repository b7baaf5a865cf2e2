import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { type HeldName, heldNames } from "#lib/domain/consent/held-names.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { propertyName } from "../../names.ts";
import { CONSENT_WORDS } from "../../terms.ts";
import { decideNameAction } from "./actions.ts";

interface HeldNamesProps {
  readonly lineId: string;
  readonly file: LineFile;
  /** May decide. */
  readonly work: boolean;
}

/** Signatures in a name that is not the party's: none of them counts before somebody has looked. */
export function HeldNames({ lineId, file, work }: HeldNamesProps) {
  const held = heldNames(file);
  if (held.length === 0) return null;
  return (
    <div className="page-head" id="names">
      <NoticeBox kind="caution" title="Signed in another name">
        <p>
          None of these counts until somebody of the office has looked at the name. Call the person,
          or compare it with what is on title.
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
        Consent {CONSENT_WORDS[consent.kind]}, {propertyName(file, consent.propertyId)}
      </h3>
      <p>
        Typed: <strong>“{signature.signedName}”</strong>. In the file: {signature.forName}. Signed{" "}
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
              { value: "", label: "choose" },
              { value: "accepted", label: "yes: accept this name" },
              { value: "refused", label: "no, or it can’t be told: do not accept it" },
            ]}
          />
          <Field
            label="How you know"
            name="reason"
            required
            example="Called her; Bea Stone is Beatrice Stone on title"
            hint="Stands with your name in the certificate, and in the packet where the signature is enclosed."
          />
          <div>
            <SubmitButton pendingWord="Recording …">Record it</SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </article>
  );
}
