import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import type { Outgoing } from "#lib/domain/notices/outgoing.ts";
import { certificateOf, certificateText } from "#lib/domain/paper/certificate.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import type { Language } from "../domain/say/language.ts";
import type { Act } from "./act.ts";
import { messageIdOf, wrongAddress } from "./outgoing.ts";
import type { Signed } from "./signature-rows.ts";

interface Copied {
  readonly file: LineFile;
  readonly office: Office;
  readonly notice: Notice;
  /** The notice's letter as it was sent. */
  readonly letter: Letter;
  readonly document: Upload;
  readonly language: Language;
}

/**
 * The message that brings a signer the letter as signed and the certificate; null where there is no
 * address. Its Message-ID is known before the signature is sealed, because the signature keeps it.
 */
export function copyOutgoing(
  act: Act,
  { file, office, notice, letter, document, language }: Copied,
): {
  readonly messageId: string;
  readonly withCertificates: (signed: readonly Signed[]) => Outgoing;
} | null {
  const party = file.parties.find(({ id }) => id === notice.partyId);
  if (party === undefined || wrongAddress(party) !== null) return null;
  const id = act.newId();
  const messageId = messageIdOf(id, office);
  const { mail } = LINK_WORDS[language];
  return {
    messageId,
    withCertificates: (signed) => ({
      id,
      lineId: file.line.id,
      noticeId: null,
      deliveryId: null,
      entryId: null,
      uploadId: document.id,
      toAddress: party.email,
      toName: party.name,
      subject: mail.subject(letter.reference),
      text: textOf(file, signed, { language, name: party.name, office }),
      messageId,
      state: "waiting",
      attempts: 0,
      nextTryAt: act.now,
      problem: "",
      createdAt: act.now,
      sentAt: null,
    }),
  };
}

function textOf(
  file: LineFile,
  signed: readonly Signed[],
  { language, name, office }: { language: Language; name: string; office: Office },
): string {
  const { mail } = LINK_WORDS[language];
  const after = {
    ...file,
    consents: [...file.consents, ...signed.map(({ consent }) => consent)],
  };
  const certificates = signed.flatMap(({ signature }) => {
    const certificate = certificateOf(after, signature, language);
    return certificate === null ? [] : [certificateText(certificate)];
  });
  const reach = [office.name, formatPhone(office.phone), office.email]
    .filter((line) => line !== "")
    .join("\n");
  return `${[mail.opening(name), mail.words, mail.back, ...certificates, `-- \n${reach}`].join("\n\n")}\n`;
}
