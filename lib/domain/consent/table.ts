import { remembered } from "../../remembered.ts";
import { CONSENT_KINDS, type Consent, type ConsentKind } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { askedByLetter } from "../notices/asked-by-letter.ts";
import { type Signer, signersFor } from "../party/signers.ts";
import { latestSplit } from "../split/latest-split.ts";
import { workOnLot } from "./lots-worked.ts";
import { type ConsentStanding, consentStanding } from "./standing.ts";

/** How one kind of consent stands on one property. */
export interface ConsentCell {
  /** The work, the split or an agreement already begun asks for it here. */
  readonly needed: boolean;
  /**
   * All who must sign have, and what they signed still holds. Never where somebody holds title
   * without being named: their signature can't be there.
   */
  readonly inHand: boolean;
  /** Parties whose signature holds. */
  readonly signed: readonly string[];
  /** Of those who must sign, with what they have said so far; null: not asked. */
  readonly open: readonly { readonly partyId: string; readonly standing: ConsentStanding | null }[];
}

export interface ConsentRow {
  readonly propertyId: string;
  readonly signers: readonly Signer[];
  readonly cells: Readonly<Record<ConsentKind, ConsentCell>>;
}

type Amounts = Pick<Report, "splits" | "tieIns">;

/** Property by property, which of the six consents are in hand and whose signature is open. */
export function consentTable(file: LineFile, report: Amounts | null = null): readonly ConsentRow[] {
  return report === null ? tableOf(file, null) : tableWith(report, file);
}

/** The desk, the dates and the pages all ask for it. */
const tableWith = remembered((report: Amounts, file: LineFile) => tableOf(file, report));

function tableOf(file: LineFile, report: Amounts | null): readonly ConsentRow[] {
  return file.properties.map((property) => {
    const signers = signersFor(file, property.id);
    const cells = CONSENT_KINDS.map((kind): [ConsentKind, ConsentCell] => [
      kind,
      cellOf(file, { kind, propertyId: property.id, signers, report }),
    ]);
    return {
      propertyId: property.id,
      signers,
      cells: Object.fromEntries(cells) as Record<ConsentKind, ConsentCell>,
    };
  });
}

interface Asked {
  readonly kind: ConsentKind;
  readonly propertyId: string;
  readonly signers: readonly Signer[];
  readonly report: Amounts | null;
}

function cellOf(file: LineFile, asked: Asked): ConsentCell {
  const said = asked.signers.map(({ partyId }) => ({
    partyId,
    standing: standingOf(file, asked, partyId),
  }));
  const signed = said.filter(({ standing }) => standing === "current");
  const open = said.filter(({ standing }) => standing !== "current");
  const anyOneWillDo = asked.kind === "enter";
  const named = asked.signers.every(({ heldWith }) => heldWith === "");
  const all = named && open.length === 0 && signed.length > 0;
  const inHand = anyOneWillDo ? letsIn(file, asked) : all;
  return {
    needed: isNeeded(file, asked),
    inHand,
    signed: signed.map(({ partyId }) => partyId),
    open,
  };
}

/** One who lives there or owns it lets people in, and nobody has said no. */
function letsIn(file: LineFile, { propertyId, report }: Asked): boolean {
  const standings = file.consents
    .filter((consent) => consent.kind === "enter" && consent.propertyId === propertyId)
    .map((consent) => consentStanding(file, consent, report));
  const refused = standings.some((each) => each === "refused" || each === "withdrawn");
  return !refused && standings.includes("current");
}

/** Their last word; before any, whether a letter has asked them. */
function standingOf(file: LineFile, asked: Asked, partyId: string): ConsentStanding | null {
  const own = file.consents.filter((consent) => isBy(consent, asked, partyId));
  const standings = own.map((consent) => consentStanding(file, consent, asked.report));
  const said = standings.find((each) => each !== "replaced");
  if (said !== undefined) return said;
  const { kind, propertyId } = asked;
  return askedByLetter(file, { kind, partyId, propertyId }) === null ? null : "asked";
}

function isBy(consent: Consent, { kind, propertyId }: Asked, partyId: string): boolean {
  return consent.kind === kind && consent.propertyId === propertyId && consent.partyId === partyId;
}

function isNeeded(file: LineFile, { kind, propertyId, report }: Asked): boolean {
  if (kind === "pay") return paysIn(file, propertyId);
  if (kind === "enter" || kind === "dig") {
    const { entered, dug } = workOnLot(file, report?.tieIns ?? null, propertyId);
    return (kind === "enter" ? entered : dug).length > 0;
  }
  const begun = file.consents.some((consent) => consent.kind === kind);
  return begun && isOnPipe(file, propertyId);
}

function paysIn(file: LineFile, propertyId: string): boolean {
  const shares = latestSplit(file)?.shares ?? [];
  return shares.some((share) => share.propertyId === propertyId && share.amount > 0);
}

function isOnPipe(file: LineFile, propertyId: string): boolean {
  const property = file.properties.find((each) => each.id === propertyId);
  return property?.stake === "connected" || property?.stake === "crossed";
}
