import { CHAIN_START } from "../consent/chain.ts";
import { LINK_DEEDS } from "../consent/private-link.ts";
import { SCREEN_KINDS } from "../consent/signable.ts";
import { LINK_WORDS } from "../consent/words.ts";
import type { LinkWords } from "../consent/words-en.ts";
import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Signature } from "../facts/signature.ts";
import type { Upload } from "../facts/upload.ts";
import { formatCents } from "../money/format-cents.ts";
import { signersFor } from "../party/signers.ts";
import { LANGUAGES, type Language } from "../say/language.ts";
import { momentWords } from "../time/moment.ts";
import { LETTER_WORDS, placeOf } from "./facts.ts";

/** What is kept of one signature, to be read by people: on screen, on paper, in a message. */
export interface Certificate {
  readonly language: Language;
  readonly title: string;
  readonly rows: readonly { readonly label: string; readonly lines: readonly string[] }[];
  /** What the fingerprints are for. */
  readonly note: string;
}

type Facts = Pick<
  LineFile,
  "signatures" | "consents" | "parties" | "properties" | "roles" | "splits" | "uploads"
>;

/**
 * The certificate of one signature of the file, in the language that it was given in unless another
 * is wanted; null where its consent is no longer there.
 */
export function certificateOf(
  file: Facts,
  signature: Signature,
  language: Language = languageOf(signature),
): Certificate | null {
  const consent = file.consents.find(({ id }) => id === signature.consentId);
  if (consent === undefined) return null;
  const words = LINK_WORDS[language];
  const say = words.certificate;
  const rows: [string, readonly string[]][] = [
    [say.signed, [signature.signedName]],
    [say.party, [partyOf(file, consent, signature)]],
    ...nameRows(file, consent, { words, language }),
    [say.consent, [kindOf(words, consent)]],
    [say.property, [placeIn(file, consent, say.unknown)]],
    ...amountRows(file, consent, words),
    [say.intent, [signature.intent]],
    [
      say.when,
      [`${momentWords(signature.signedAt, signature.zone, language)}, ${say.zone(signature.zone)}`],
    ],
    [say.utc, [signature.signedAt]],
    [say.address, [signature.address || say.unknown]],
    [say.agent, [signature.agent || say.unknown]],
    [say.drawing, [signature.drawingId === null ? say.typedOnly : say.drawn]],
    [say.document, [documentOf(file.uploads, signature, words)]],
    [say.documentHash, [signature.documentHash]],
    [say.disclosure, [signature.disclosureVersion]],
    [say.views, signature.views.map((view) => viewLine(view, signature.zone, { words, language }))],
    [
      say.copy,
      [signature.copyMessageId === "" ? say.copyOnly : say.copySent(signature.copyMessageId)],
    ],
    [say.previous, [signature.previousHash === CHAIN_START ? say.first : signature.previousHash]],
    [say.hash, [signature.hash]],
  ];
  return {
    language,
    title: say.title,
    rows: rows.map(([label, lines]) => ({ label, lines })),
    note: say.note,
  };
}

/** The version of the consent to electronic records says in which language the page was read. */
function languageOf({ disclosureVersion }: Signature): Language {
  return LANGUAGES.find((each) => disclosureVersion.includes(` ${each},`)) ?? "en";
}

/** The certificate as the text of a message. */
export function certificateText({ title, rows, note }: Certificate): string {
  const lines = rows.map(({ label, lines: told }) => `${label}: ${told.join("\n    ")}`);
  return [title.toUpperCase(), "", ...lines, "", note].join("\n");
}

/** As the file had the name when it was signed; a later change of it says nothing about that. */
function partyOf(
  file: Facts,
  { partyId, propertyId }: Consent,
  { forName }: Pick<Signature, "forName">,
): string {
  if (forName !== "") return forName;
  const signer = signersFor(file, propertyId).find((each) => each.partyId === partyId);
  return signer?.name ?? file.parties.find(({ id }) => id === partyId)?.name ?? "";
}

/** Only where the name typed was not the party's: whether somebody of the office took it, and why. */
function nameRows(
  file: Facts,
  consent: Consent,
  { words, language }: { words: LinkWords; language: Language },
): [string, readonly string[]][] {
  if (consent.state !== "name-held") return [];
  const { certificate: say } = words;
  const decided = file.consents.find(({ restsOnId }) => restsOnId === consent.id);
  if (decided === undefined) return [[say.name, [say.nameHeld]]];
  const tell = decided.state === "given" ? say.nameAccepted : say.nameRefused;
  const day = LETTER_WORDS[language].day(decided.stateOn);
  return [[say.name, [tell(decided.enteredBy, day, decided.note)]]];
}

function kindOf(words: LinkWords, { kind }: Consent): string {
  const screen = SCREEN_KINDS.find((each) => each === kind);
  return screen === undefined ? kind.replaceAll("-", " ") : words.kinds[screen];
}

function placeIn(file: Facts, { propertyId }: Consent, unknown: string): string {
  const property = file.properties.find(({ id }) => id === propertyId);
  return property === undefined ? unknown : placeOf(property.address);
}

function amountRows(
  { splits }: Facts,
  { amount, splitId }: Consent,
  { certificate }: LinkWords,
): [string, readonly string[]][] {
  if (amount === null) return [];
  const version = splits.find(({ id }) => id === splitId);
  const of = version === undefined ? "" : `, ${certificate.version(version.number)}`;
  return [[certificate.amount, [`${formatCents(amount)}${of}`]]];
}

function documentOf(
  uploads: readonly Upload[],
  { documentId }: Signature,
  { certificate }: LinkWords,
): string {
  const upload = uploads.find(({ id }) => id === documentId);
  if (upload === undefined) return certificate.unknown;
  return `${upload.name}, ${certificate.bytes(upload.bytes)}`;
}

/** What was opened has its own word; what was ticked is kept as it read. */
function viewLine(
  { at, what }: Signature["views"][number],
  zone: string,
  { words, language }: { words: LinkWords; language: Language },
): string {
  const deed = LINK_DEEDS.find((each) => each === what);
  return `${momentWords(at, zone, language)}: ${deed === undefined ? what : words.deeds[deed]}`;
}
