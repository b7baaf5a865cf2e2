import type { LineFile, Office } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Address, Party, PartyRole, Property } from "../facts/party.ts";
import type { FrozenShare, SplitVersion } from "../facts/split.ts";
import type { SplitOutcome } from "../findings/outcome.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import type { Language } from "../say/language.ts";
import { latestSplit } from "../split/latest-split.ts";
import { isUnproven } from "../tiein/open-question.ts";
import { EN, type LetterWords } from "./words-en.ts";
import { ES } from "./words-es.ts";

/** The standing words of letters, by the language of their reader. */
export const LETTER_WORDS: Record<Language, LetterWords> = { en: EN, es: ES };

/** What a letter is composed from: the whole file, and who its reader is in it. */
export interface LetterFacts {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly notice: Notice;
  readonly words: LetterWords;
  readonly party: Party;
  readonly property: Property | null;
  /** The reader's address in the text of the letter; the line's name where there is none. */
  readonly place: string;
  readonly roles: readonly PartyRole[];
  /** Live tie-ins of the reader's property. */
  readonly own: readonly TieInFinding[];
  /** The tie-in that the letter is about. */
  readonly asked: TieInFinding | null;
  readonly split: SplitVersion | null;
  /** The worked sums of `split`, while they still give its amounts. */
  readonly outcome: SplitOutcome | null;
  /** The reader's own share, and nobody else's. */
  readonly share: FrozenShare | null;
}

export interface LetterInput {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly notice: Notice;
}

/** Gathers what one letter needs. Throws where the notice names a party that the file has not. */
export function letterFacts({ file, report, office, notice }: LetterInput): LetterFacts {
  const party = file.parties.find((each) => each.id === notice.partyId);
  if (!party) throw new Error(`Notice ${notice.id} is to an unknown party ${notice.partyId}`);
  const property = file.properties.find((each) => each.id === notice.propertyId) ?? null;
  const split = splitOf(file, notice);
  return {
    file,
    report,
    office,
    notice,
    words: LETTER_WORDS[notice.language],
    party,
    property,
    place: property ? placeOf(property.address) : file.line.name,
    roles: file.roles
      .filter((role) => role.partyId === party.id && role.propertyId === notice.propertyId)
      .map((role) => role.role),
    own: report.tieIns.filter(
      (finding) => property !== null && finding.live && knownOwner(finding) === property.id,
    ),
    asked: report.tieIns.find((finding) => finding.tieIn.id === notice.tieInId) ?? null,
    split,
    outcome: outcomeOf(report, split),
    share: split?.shares.find((share) => share.propertyId === notice.propertyId) ?? null,
  };
}

function splitOf(file: LineFile, notice: Notice): SplitVersion | null {
  const named = file.splits.find((split) => split.id === notice.splitId);
  return named ?? latestSplit(file);
}

function outcomeOf(report: Report, split: SplitVersion | null): SplitOutcome | null {
  if (split === null) return null;
  const outcome = report.splits.find(({ choice }) => choice.rule === split.rule);
  return outcome?.basis === split.basis && outcome.refusal === null ? outcome : null;
}

/**
 * The shared pipe by what is known of it and the reader's place: it serves the place, may serve it,
 * crosses its lot or lies near.
 */
export function pipeOf({ words, own, property, place }: LetterFacts): string {
  if (own.length > 0 || property === null) return words.pipe.serves(place);
  if (property.stake === "crossed") return words.pipe.crosses(place);
  return property.stake === "neighbour" ? words.pipe.near(place) : words.pipe["may-serve"](place);
}

/** `14 Fennel Row, Unit 2`: an address as it is spoken of. */
export function placeOf(address: Address): string {
  return address.unit === "" ? address.street : `${address.street}, ${address.unit}`;
}

/**
 * The property that a tie-in may be said to serve in a letter to neighbors. An undocumented one
 * is nobody's there until tests or its owner have settled it (level 5, or accepted).
 */
export function knownOwner(finding: TieInFinding): string | null {
  return isUnproven(finding) ? null : finding.propertyId;
}

/** Where a tie-in's owner may be named: the address, else null. */
function knownPlace(finding: TieInFinding, file: LineFile): string | null {
  const property = file.properties.find((each) => each.id === knownOwner(finding));
  return property ? placeOf(property.address) : null;
}

/** Whose a tie-in is, as far as it may be said: an address, nobody's, or not yet known. */
export function whoOf({ file, words }: LetterFacts, finding: TieInFinding): string {
  const known = knownPlace(finding, file);
  if (known !== null) return known;
  return finding.live ? words.strip.notKnown : words.strip.nobody;
}

/** Addresses of all others that share, without a word on their amounts. */
export function otherSharers({ file, split, property }: LetterFacts): string[] {
  const ids = split?.shares.map((share) => share.propertyId) ?? [];
  return file.properties
    .filter(({ id }) => ids.includes(id) && id !== property?.id)
    .map(({ address }) => placeOf(address));
}
