import type { Consent, ConsentKind } from "../facts/consent.ts";
import { areaLacks } from "../facts/dig-area.ts";
import { LETTERS } from "../facts/letter-kind.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Party } from "../facts/party.ts";
import { COPY_ROLES } from "../facts/party.ts";
import type { Report } from "../findings/report.ts";
import type { Cents } from "../money/cents.ts";
import { consentsAskedBy } from "../notices/asked.ts";
import { signersFor } from "../party/signers.ts";
import { latestSplit } from "../split/latest-split.ts";
import { isStopped } from "../stops/stopped-by.ts";
import { letterDay } from "../time/letter-day.ts";
import { consentStanding } from "./standing.ts";
import type { LinkStop } from "./stops.ts";

/** Consents that may be given on screen. An agreement to be recorded needs a notary: paper only. */
export const SCREEN_KINDS = ["enter", "dig", "pay"] as const satisfies readonly ConsentKind[];
export type ScreenKind = (typeof SCREEN_KINDS)[number];

/** The consents that a letter asks for, as far as they can be signed on screen. */
export function askedOnScreen(notice: Pick<Notice, "kind" | "frozen">): readonly ScreenKind[] {
  return SCREEN_KINDS.filter((each) => consentsAskedBy(notice).includes(each));
}

/** What a signature would bind to: for paying, the version and the amount in the letter. */
export interface Terms {
  readonly splitId: string | null;
  readonly versionNumber: number | null;
  readonly amount: Cents | null;
}

const NO_TERMS: Terms = { splitId: null, versionNumber: null, amount: null };

/** The version and amount that a letter put to its reader; none but for paying. */
export function termsOf(
  { splits }: Pick<LineFile, "splits">,
  { splitId, propertyId }: Pick<Notice, "splitId" | "propertyId">,
  kind: ScreenKind,
): Terms {
  const version = splits.find((each) => each.id === splitId);
  if (kind !== "pay" || version === undefined) return NO_TERMS;
  const share = version.shares.find((each) => each.propertyId === propertyId);
  return { splitId, versionNumber: version.number, amount: share?.amount ?? null };
}

/** As whom somebody signs, and what the file says of it. */
export interface SigningName {
  /** The name over the signature. */
  readonly name: string;
  /** Nobody said yet who signs for a trust, firm or estate. */
  readonly capacityMissing: boolean;
  readonly party: Party;
  /** In what capacity, and perhaps who, as the role says it; empty where it says nothing. */
  readonly capacity: string;
}

/**
 * As whom a letter's reader may sign one kind of consent for its property; null where they may not.
 * Paying and digging bind the property and take a title holder; whoever lives there or manages it
 * may let people in.
 */
export function signingName(
  file: Pick<LineFile, "roles" | "parties">,
  { partyId, propertyId }: Pick<Notice, "partyId" | "propertyId">,
  kind: ScreenKind,
): SigningName | null {
  if (propertyId === null) return null;
  const signer = signersFor(file, propertyId).find((each) => each.partyId === partyId);
  const roles = file.roles.filter(
    (role) => role.partyId === partyId && role.propertyId === propertyId,
  );
  const party = file.parties.find((each) => each.id === partyId);
  if (party === undefined) return null;
  const own = { party, capacity: roles.map(({ capacity }) => capacity).join(" ") };
  if (signer !== undefined)
    return { name: signer.name, capacityMissing: signer.capacityMissing, ...own };
  if (kind !== "enter" || roles.every(({ role }) => COPY_ROLES.includes(role))) return null;
  return { name: party.name, capacityMissing: party.kind !== "person", ...own };
}

interface Standing {
  readonly file: LineFile;
  readonly report: Pick<Report, "splits" | "holds">;
}

/**
 * Why this letter's reader can't sign a kind of consent on screen now; null where they can. An
 * amount is only signed while it holds: in the version in force, still following from the facts, and
 * with no hold on the final split.
 */
export function signStop(
  { file, report }: Standing,
  notice: Notice,
  kind: ScreenKind,
): LinkStop | null {
  if (LETTERS[notice.kind].onPaper) return "on-paper";
  if (!askedOnScreen(notice).includes(kind)) return "nothing-to-sign";
  if (file.line.closedOn !== null) return "closed";
  if (signingName(file, notice, kind) === null) return "not-your-signature";
  if (kind === "pay") {
    const wrong = amountStop({ file, report }, notice);
    if (wrong !== null) return wrong;
  }
  if (kind === "dig" && !namesArea(file, notice)) return "area-open";
  return signedOn({ file, report }, notice, kind) ? "signed-already" : null;
}

/**
 * The letter that is signed says where and from when is dug, as it stands on file today: leave to dig
 * somewhere at some time would be none.
 */
function namesArea({ digAreas }: LineFile, { frozen, language, propertyId }: Notice): boolean {
  const text = frozen ?? "";
  return digAreas.some(
    (area) =>
      area.propertyId === propertyId &&
      area.restoration !== "nothing-dug" &&
      area.firstOn !== null &&
      areaLacks(area).length === 0 &&
      text.includes(JSON.stringify(area.place).slice(1, -1)) &&
      text.includes(letterDay(area.firstOn, language)),
  );
}

function amountStop({ file, report }: Standing, notice: Notice): LinkStop | null {
  const { splitId, amount } = termsOf(file, notice, "pay");
  if (splitId === null || splitId !== latestSplit(file)?.id) return "superseded";
  if (amount === null || amount === 0) return "nothing-asked";
  const word = wouldBe(notice, { splitId, amount });
  const after = { ...file, consents: [...file.consents, word] };
  if (consentStanding(after, word, report) !== "current") return "superseded";
  return isStopped(report.holds, "final-split") ? "held" : null;
}

function wouldBe(
  { partyId, propertyId }: Notice,
  { splitId, amount }: { splitId: string; amount: Cents },
): Consent {
  return {
    id: "",
    kind: "pay",
    partyId,
    propertyId: propertyId ?? "",
    state: "given",
    stateOn: "9999-12-31",
    splitId,
    amount,
    recordingNumber: "",
    uploadId: null,
    note: "",
    restsOnId: null,
    enteredBy: "",
  };
}

/** The reader's own word of this kind holds today. */
function signedOn({ file, report }: Standing, notice: Notice, kind: ScreenKind): boolean {
  return consentsBy(file, notice, kind).some(
    (consent) => consentStanding(file, consent, report) === "current",
  );
}

/** Every word of one kind by a letter's reader on its property. */
export function consentsBy(
  { consents }: Pick<LineFile, "consents">,
  { partyId, propertyId }: Pick<Notice, "partyId" | "propertyId">,
  kind: ConsentKind,
): Consent[] {
  return consents.filter(
    (each) => each.kind === kind && each.partyId === partyId && each.propertyId === propertyId,
  );
}
