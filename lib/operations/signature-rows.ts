import { lastHash, type Sha256, sealSignature } from "#lib/domain/consent/chain.ts";
import type { PrivateLink } from "#lib/domain/consent/private-link.ts";
import { type ScreenKind, signingName, termsOf } from "#lib/domain/consent/signable.ts";
import { type NameDoubt, nameDoubt } from "#lib/domain/consent/signer-name.ts";
import { DISCLOSURE_VERSION, disclosureText, LINK_WORDS } from "#lib/domain/consent/words.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Signature, SignatureView } from "#lib/domain/facts/signature.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { placeOf } from "#lib/domain/paper/facts.ts";
import { intentSentence } from "#lib/domain/paper/intent.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { letterDate } from "#lib/domain/paper/letter-date.ts";
import type { Language } from "../domain/say/language.ts";
import type { Act } from "./act.ts";

/** A consent given on screen with its signature. */
export interface Signed {
  readonly consent: Consent;
  readonly signature: Signature;
}

interface Given {
  readonly file: LineFile;
  readonly office: Office;
  readonly notice: Notice;
  /** The notice's letter as it was sent. */
  readonly letter: Letter;
  readonly document: Upload;
  readonly link: PrivateLink;
  readonly signing: {
    readonly kinds: readonly ScreenKind[];
    /** As typed: one name, or one of each where several people are one party. */
    readonly signedNames: readonly string[];
    readonly capacity: string;
    readonly language: Language;
  };
  readonly drawingId: string | null;
  readonly views: readonly SignatureView[];
  readonly copyMessageId: string;
  readonly address: string;
  readonly agent: string;
  readonly sha256: Sha256;
}

/** One consent and one signature for each kind, each chained to the one before it on the line. */
export function signaturesOf(act: Act, given: Given): Signed[] {
  const signed: Signed[] = [];
  for (const kind of new Set(given.signing.kinds)) {
    const before = [...given.file.signatures, ...signed.map(({ signature }) => signature)];
    const consent = consentOf(act, given, kind);
    const signature = sealSignature(unsealed(act, given, { kind, consent }), {
      consent,
      previousHash: lastHash(before),
      sha256: given.sha256,
    });
    signed.push({ consent, signature });
  }
  return signed;
}

function consentOf(
  act: Act,
  { file, notice, document, signing }: Given,
  kind: ScreenKind,
): Consent {
  const { splitId, amount } = termsOf(file, notice, kind);
  const capacity = capacityOf({ file, notice, signing }, kind);
  const as = capacity === "" ? "" : `, as ${capacity} by the signer’s own word`;
  return {
    id: act.newId(),
    kind,
    partyId: notice.partyId,
    propertyId: notice.propertyId ?? "",
    state: doubtOf({ file, notice, signing }, kind) === null ? "given" : "name-held",
    stateOn: act.today,
    splitId,
    amount,
    recordingNumber: "",
    uploadId: document.id,
    note: `Signed on screen by private link${as}`,
    restsOnId: null,
    enteredBy: "",
  };
}

/** Why the office has to look at the names typed; null where they are the party's own. */
function doubtOf(
  {
    file,
    notice,
    signing,
  }: Pick<Given, "file" | "notice"> & { signing: Pick<Given["signing"], "signedNames"> },
  kind: ScreenKind,
): NameDoubt | null {
  const name = signingName(file, notice, kind);
  if (name === null) return "other-name";
  return nameDoubt(name.party, { typed: signing.signedNames, capacity: name.capacity });
}

/** Only where the file does not say who signs for a trust, firm or estate. */
function capacityOf(
  { file, notice, signing }: Pick<Given, "file" | "notice" | "signing">,
  kind: ScreenKind,
): string {
  const missing = signingName(file, notice, kind)?.capacityMissing ?? false;
  return missing ? signing.capacity.trim().slice(0, 200) : "";
}

function unsealed(
  act: Act,
  given: Given,
  { kind, consent }: { kind: ScreenKind; consent: Consent },
): Omit<Signature, "hash" | "previousHash"> {
  const { office, document, link, signing } = given;
  const disclosure = disclosureText(signing.language, office);
  return {
    id: act.newId(),
    consentId: consent.id,
    linkId: link.id,
    signedName: signing.signedNames.join("; "),
    forName: signingName(given.file, given.notice, kind)?.name ?? "",
    drawingId: given.drawingId,
    intent: intentOf(given, kind),
    disclosure,
    disclosureVersion: `${DISCLOSURE_VERSION} ${signing.language}, SHA-256 ${given.sha256(disclosure)}`,
    documentId: document.id,
    documentHash: document.sha256,
    signedAt: act.now,
    zone: office.zone,
    address: given.address.slice(0, 100),
    agent: given.agent.slice(0, 400),
    views: given.views,
    copyMessageId: given.copyMessageId,
  };
}

function intentOf({ file, office, notice, letter, signing }: Given, kind: ScreenKind): string {
  const words = LINK_WORDS[signing.language];
  const property = file.properties.find(({ id }) => id === notice.propertyId);
  const intent = intentSentence(words, {
    kind,
    terms: termsOf(file, notice, kind),
    office: office.name,
    place: property === undefined ? file.line.name : placeOf(property.address),
    letter,
    date: letterDate(file, { notice, letter }, signing.language),
  });
  const capacity = capacityOf({ file, notice, signing }, kind);
  if (capacity === "") return intent;
  const name = signingName(file, notice, kind)?.name ?? "";
  return `${intent} ${words.intentCapacity(name, capacity)}`;
}
