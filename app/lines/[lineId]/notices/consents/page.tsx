import type { Metadata } from "next";
import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { heldNames } from "#lib/domain/consent/held-names.ts";
import { consentStanding } from "#lib/domain/consent/standing.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { lineFileOf } from "../../file.ts";
import { counted, listed, partyName } from "../../names.ts";
import { ConsentTable } from "../consent-table.tsx";
import { ConsentForm, type ConsentQuery } from "./consent-form.tsx";
import { ConsentLog } from "./consent-log.tsx";
import { HeldNames } from "./held-names.tsx";
import { signatureFaults } from "./signature-faults.ts";
import { SignersPart } from "./signers-part.tsx";

export const metadata: Metadata = { title: "Consents" };

export default async function ConsentsPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<ConsentQuery>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  return (
    <>
      <PageHead asked="Who has agreed to what?" answer={answerWords(file)}>
        <p className="cluster">
          <Link href={`/lines/${lineId}/notices`}>Back to the letters</Link>{" "}
          <Link href={`/lines/${lineId}/notices/refusal`}>If an owner does not agree</Link>
        </p>
      </PageHead>
      <BrokenBox lineId={lineId} file={file} />
      <HeldNames lineId={lineId} file={file} work={may("work-the-file")} />
      <SupersededBox lineId={lineId} file={file} report={report} />
      <Section
        title="Six separate consents"
        note="Allowing entry is not agreeing to pay. The joint agreement is signed, notarized and recorded; a signature alone is not enough."
      >
        <ConsentTable
          lineId={lineId}
          file={file}
          report={report}
          asked={(await searchParams).page}
        />
      </Section>
      <Section
        title="Who has to sign"
        id="signers"
        foldedOnPhone="every title holder"
        note="Every title holder, including contract purchasers; one owner can’t sign for the others. A trust, company or estate signs through a person in a stated capacity."
      >
        <SignersPart
          lineId={lineId}
          file={file}
          report={report}
          asked={(await searchParams).signers}
        />
      </Section>
      {may("work-the-file") ? (
        <div className="screen-only">
          <Section
            title="Record a consent"
            id="record"
            foldedOnPhone="given, refused or withdrawn"
            note="Select a cell above, or choose here."
          >
            <ConsentForm
              lineId={lineId}
              file={file}
              today={report.today}
              query={await searchParams}
            />
          </Section>
        </div>
      ) : null}
      <Section
        title="Consent history"
        foldedOnPhone={counted(file.consents.length, "entry", "entries")}
      >
        <ConsentLog lineId={lineId} file={file} report={report} />
      </Section>
    </>
  );
}

function answerWords(file: LineFile): string {
  const given = file.consents.filter((consent) => consent.state === "given").length;
  const refused = file.consents.filter((consent) => consent.state === "refused").length;
  const held = heldNames(file).length;
  if (file.consents.length === 0) return "No one has been asked yet";
  const no = refused === 0 ? "none refused" : `${refused} refused`;
  const names = held === 0 ? "" : `, ${held} signed under another name`;
  return `${counted(given, "consent")} given, ${no}${names}`;
}

/** Signatures that are no longer what was signed: changed since, or their document is lost. */
function BrokenBox({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  const faults = signatureFaults(file);
  if (faults.length === 0) return null;
  return (
    <div className="page-head">
      <NoticeBox kind="caution" title="A signature failed verification">
        {faults.map(({ signature }) => (
          <p key={signature.id}>
            <Link href={`/lines/${lineId}/notices/consents/signature/${signature.id}`}>
              {signature.signedName}
            </Link>
            : no longer valid. Do not rely on it until you have compared it with a backup.
          </p>
        ))}
      </NoticeBox>
    </div>
  );
}

function SupersededBox({
  lineId,
  file,
  report,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}) {
  const signers = file.consents
    .filter((consent) => consentStanding(file, consent, report) === "superseded-amount")
    .map((consent) => partyName(file, consent.partyId));
  if (signers.length === 0) return null;
  return (
    <div className="page-head">
      <NoticeBox kind="caution" title="Signed for an earlier amount">
        <p>
          {listed([...new Set(signers)])} agreed to an amount that is out of date. Send them the new
          amount: what they signed does not cover it.
        </p>
        <p>
          <Link href={`/lines/${lineId}/cost/choose`}>See what changed</Link>,{" "}
          <Link href={`/lines/${lineId}/notices/write?kind=proposed-split`}>
            send them a new letter
          </Link>
        </p>
      </NoticeBox>
    </div>
  );
}
