import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { CertificateList } from "#app/_components/certificate.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getImport } from "#db/queries/history.ts";
import type { ChainFault } from "#lib/domain/consent/chain.ts";
import { type ConsentStanding, signedStanding } from "#lib/domain/consent/standing.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CONSENT_WORDS } from "#lib/domain/facts/notice-words.ts";
import type { Signature } from "#lib/domain/facts/signature.ts";
import { certificateOf } from "#lib/domain/paper/certificate.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { lineFileOf } from "../../../../file.ts";
import { lowered, partyName, propertyName } from "../../../../names.ts";
import { PaperLink } from "../../../paper-link.tsx";
import { signatureFaults } from "../../signature-faults.ts";

export const metadata: Metadata = { title: "Certificate of a signature" };

/** One signature that was given on screen, with everything kept of it, checked as it stands now. */
export default async function SignaturePage({
  params,
}: {
  readonly params: Promise<{ lineId: string; signatureId: string }>;
}) {
  const { lineId, signatureId } = await params;
  const { file, report } = await lineFileOf(lineId);
  const signature = file.signatures.find(({ id }) => id === signatureId);
  const consent = file.consents.find(({ id }) => id === signature?.consentId);
  if (signature === undefined || consent === undefined) notFound();
  const certificate = certificateOf(file, signature, "en");
  if (certificate === null) notFound();
  return (
    <>
      <PageHead
        asked={`Signed on screen by ${partyName(file, consent.partyId)}: consent to ${lowered(CONSENT_WORDS[consent.kind])}, ${propertyName(file, consent.propertyId)}`}
        answer={STANDING_WORDS[signedStanding(file, consent, report)]}
      >
        <p className="screen-only">
          <Link href={`/lines/${lineId}/notices/consents`}>Back to the consents</Link>
        </p>
      </PageHead>
      <Section title="Verification">
        <Checks file={file} signature={signature} />
        <BroughtIn lineId={lineId} signature={signature} />
      </Section>
      <Section title={certificate.title}>
        <CertificateList certificate={certificate} />
        <p>
          <PaperLink
            lineId={lineId}
            file={file}
            uploadId={signature.documentId}
            words="The document"
          />
        </p>
        <Drawing lineId={lineId} signature={signature} />
      </Section>
      <Section
        title="Consent to electronic records, as shown"
        note={`In the words of the day, ${signature.disclosureVersion.split(",")[0]}.`}
      >
        <p className="prewrap">{signature.disclosure}</p>
      </Section>
    </>
  );
}

const STANDING_WORDS: Record<ConsentStanding, string> = {
  current: "Valid.",
  "superseded-amount": "Signed for an earlier amount: it does not cover the newer one.",
  asked: "Asked again later.",
  refused: "Refused later.",
  withdrawn: "Withdrawn later.",
  "name-held":
    "Does not count yet: the name typed is not the one on file, and no one has checked it.",
  "name-refused": "Does not count: the office did not accept the name typed as the signer’s.",
  replaced: "Replaced by a later answer from the same person.",
};

const FAULT_WORDS: Record<ChainFault, string> = {
  changed:
    "What is stored of this signature, or of its consent, is not what was signed: something was changed afterwards.",
  "out-of-order":
    "This signature does not follow from the one before it: one was removed, added or moved.",
};

function Checks({ file, signature }: { readonly file: LineFile; readonly signature: Signature }) {
  const faults = signatureFaults(file);
  const own = faults.find((each) => each.signature.id === signature.id);
  const others = faults.filter((each) => each.signature.id !== signature.id);
  const number = file.signatures.findIndex(({ id }) => id === signature.id) + 1;
  if (faults.length > 0) {
    return (
      <NoticeBox kind="caution" title="Verification failed">
        {own?.chain ? <p>{FAULT_WORDS[own.chain]}</p> : null}
        {own === undefined || own.whole ? null : (
          <p>
            The stored document is missing, or its bytes are no longer those that were signed.
            Restore it from a backup of that time.
          </p>
        )}
        {others.length === 0 ? null : (
          <p>
            {others.length} other {others.length === 1 ? "signature" : "signatures"} on this line
            also failed verification.
          </p>
        )}
      </NoticeBox>
    );
  }
  return (
    <p>
      Valid: the document is exactly what was signed, nothing in the signature has changed since,
      and it is number {number} of {file.signatures.length} in the signature log for this line.
      Checked just now.
    </p>
  );
}

/** A signature that came with a line file was given elsewhere: what it says of itself is all there is. */
function BroughtIn({ lineId, signature }: { lineId: string; signature: Signature }) {
  const imported = getImport(db(), lineId);
  if (imported === null || imported.at <= signature.signedAt) return null;
  return (
    <p>
      It came with the line file that {imported.by} imported on{" "}
      {momentWords(imported.at, signature.zone, "en")}; this office did not see it given.
    </p>
  );
}

function Drawing({
  lineId,
  signature,
}: {
  readonly lineId: string;
  readonly signature: Signature;
}) {
  if (signature.drawingId === null) return null;
  return (
    <figure>
      {/* biome-ignore lint/performance/noImgElement: a stored picture of unknown size, as it is */}
      <img
        src={`/lines/${lineId}/uploads/${signature.drawingId}`}
        alt={`As drawn by ${signature.signedName}`}
        style={{ maxWidth: "min(100%, 24rem)", background: "#fff" }}
      />
      <figcaption className="muted small">As drawn while signing</figcaption>
    </figure>
  );
}
