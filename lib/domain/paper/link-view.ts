import { type Binding, bindingOf } from "../consent/binding.ts";
import type { LinkVisit, PrivateLink } from "../consent/private-link.ts";
import { openRelease } from "../consent/release.ts";
import {
  askedOnScreen,
  type ScreenKind,
  type SigningName,
  signingName,
  signStop,
  type Terms,
  termsOf,
} from "../consent/signable.ts";
import { personsOf } from "../consent/signer-name.ts";
import { type ConsentStanding, signedStanding } from "../consent/standing.ts";
import type { LinkStop } from "../consent/stops.ts";
import type { Consent } from "../facts/consent.ts";
import { LETTERS } from "../facts/letter-kind.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import type { Notice, Reply } from "../facts/notice.ts";
import type { Signature } from "../facts/signature.ts";
import type { Report } from "../findings/report.ts";
import type { Cents } from "../money/cents.ts";
import type { Language } from "../say/language.ts";
import { latestSplit } from "../split/latest-split.ts";
import { nameless } from "../strip/nameless.ts";
import type { Day } from "../time/day.ts";
import { type Certificate, certificateOf } from "./certificate.ts";
import { placeOf } from "./facts.ts";
import { frozenLetter } from "./frozen-letter.ts";
import type { Letter } from "./letter.ts";
import { letterDate } from "./letter-date.ts";

/** One consent that the letter asks for, and why it can't be signed where it can't. */
export interface SigningAsk {
  readonly kind: ScreenKind;
  readonly terms: Terms;
  /** As whom; empty where this reader may not. */
  readonly name: string;
  readonly capacityMissing: boolean;
  /** Those who each type their own name, where several people are one party; else empty. */
  readonly people: readonly string[];
  readonly stop: LinkStop | null;
}

/** One signature that was given by a link to this letter. */
export interface SignedWord {
  readonly signature: Signature;
  readonly consent: Consent;
  readonly standing: ConsentStanding;
  readonly certificate: Certificate | null;
  /** What makes it binding; null while it can be taken back at will. */
  readonly binding: Binding | null;
  /** On which day its signer asked to be let go from it, and nobody has answered yet; null: they did not. */
  readonly releaseAskedOn: Day | null;
}

/** What the holder of a private link may see: their own letter, share and words, nobody else's. */
export interface LinkView {
  readonly language: Language;
  readonly partyName: string;
  readonly email: string;
  readonly place: string;
  readonly office: Pick<Office, "name" | "phone" | "email" | "zone">;
  /** As sent, without the slip to cut off; null where what is kept of it can't be read. */
  readonly letter: Letter | null;
  /** The letter's date in each language: on the page it may be read in another than it was sent in. */
  readonly dates: Readonly<Record<Language, string>>;
  /** The letter's PDF was opened by this link: without that nothing is signed. */
  readonly isOpened: boolean;
  /** The letter's stored PDF; null while it is being made. */
  readonly documentId: string | null;
  readonly expiresAt: string;
  /** The reader's share in the letter; null where the letter asks for no money. */
  readonly share: Terms | null;
  /** The letter's amount no longer holds; with the one that does, where a newer version says it. */
  readonly superseded: { readonly amount: Cents | null } | null;
  readonly replies: readonly Reply[];
  readonly asks: readonly SigningAsk[];
  /** The letter is an agreement to be recorded: never signed on screen. */
  readonly onPaper: boolean;
  readonly signed: readonly SignedWord[];
}

interface Shown {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly link: PrivateLink;
  readonly notice: Notice;
  /** What was done by the link so far. */
  readonly visits: readonly Pick<LinkVisit, "what">[];
}

/** The page behind a link as data; null where the letter was never sent. */
export function linkView(shown: Shown): LinkView | null {
  const { file, report, office, link, notice, visits } = shown;
  const party = file.parties.find(({ id }) => id === notice.partyId);
  if (notice.frozen === null || party === undefined) return null;
  const kept = frozenLetter(notice.frozen);
  const letter = kept && forReader(kept);
  const property = file.properties.find(({ id }) => id === notice.propertyId);
  // What can't be read can't be signed.
  const asks =
    letter === null
      ? []
      : askedOnScreen(notice).map((kind) => askOf({ file, report }, notice, kind));
  return {
    language: notice.language,
    partyName: party.name,
    email: party.email,
    place: property === undefined ? file.line.name : placeOf(property.address),
    office: { name: office.name, phone: office.phone, email: office.email, zone: office.zone },
    letter,
    dates: {
      en: letter === null ? "" : letterDate(file, { notice, letter }, "en"),
      es: letter === null ? "" : letterDate(file, { notice, letter }, "es"),
    },
    isOpened: visits.some(({ what }) => what === "opened-letter"),
    documentId: notice.uploadId,
    expiresAt: link.expiresAt,
    share: asks.find(({ kind }) => kind === "pay")?.terms ?? null,
    superseded: supersededIn(file, notice, asks),
    replies: file.replies.filter(({ noticeId }) => noticeId === notice.id),
    asks,
    onPaper: LETTERS[notice.kind].onPaper === true,
    signed: signedBy(file, report, notice),
  };
}

/**
 * The slip is to be cut off and mailed; on screen the answer stands below the letter. Ids of the file
 * are the office's own: the reader's browser is given none.
 */
function forReader(letter: Letter): Letter {
  const { also } = letter;
  return {
    ...letter,
    blocks: letter.blocks
      .filter(({ kind }) => kind !== "answer-slip")
      .map((block) =>
        block.kind === "strip" ? { ...block, drawing: nameless(block.drawing) } : block,
      ),
    ...(also === undefined ? {} : { also: forReader(also) }),
  };
}

function askOf(
  facts: { file: LineFile; report: Report },
  notice: Notice,
  kind: ScreenKind,
): SigningAsk {
  const name = signingName(facts.file, notice, kind);
  return {
    kind,
    terms: termsOf(facts.file, notice, kind),
    name: name?.name ?? "",
    capacityMissing: name?.capacityMissing ?? false,
    people: peopleIn(name),
    stop: signStop(facts, notice, kind),
  };
}

function peopleIn(name: SigningName | null): string[] {
  const people = name === null ? [] : personsOf(name.party);
  return people.length > 1 ? people : [];
}

function supersededIn(
  file: LineFile,
  notice: Notice,
  asks: readonly SigningAsk[],
): LinkView["superseded"] {
  if (!asks.some(({ stop }) => stop === "superseded")) return null;
  const latest = latestSplit(file);
  if (latest === null || latest.id === notice.splitId) return { amount: null };
  const share = latest.shares.find(({ propertyId }) => propertyId === notice.propertyId);
  return { amount: share?.amount ?? 0 };
}

/** Signatures of this letter's reader on its property by which this very letter was signed. */
function signedBy(file: LineFile, report: Report, notice: Notice): SignedWord[] {
  return file.signatures.flatMap((signature) => {
    const consent = file.consents.find(({ id }) => id === signature.consentId);
    if (consent === undefined || signature.documentId !== notice.uploadId) return [];
    if (consent.partyId !== notice.partyId) return [];
    return [
      {
        signature,
        consent,
        standing: standingOf(file, consent, report),
        certificate: certificateOf(file, signature),
        binding: bindingOf(file, consent, report),
        releaseAskedOn: openRelease(file, notice)?.receivedOn ?? null,
      },
    ];
  });
}

/** A consent that was taken back is shown as that, though a later word stands for it. */
function standingOf(file: LineFile, consent: Consent, report: Report): ConsentStanding {
  const standing = signedStanding(file, consent, report);
  if (standing !== "replaced") return standing;
  const later = file.consents.findLast(
    (each) =>
      each.kind === consent.kind &&
      each.partyId === consent.partyId &&
      each.propertyId === consent.propertyId,
  );
  return later?.state === "withdrawn" ? "withdrawn" : "replaced";
}
