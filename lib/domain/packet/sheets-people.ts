import { type CONSENT_STANDINGS, consentStanding } from "../consent/standing.ts";
import { consentTable } from "../consent/table.ts";
import type { Consent } from "../facts/consent.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";
import { formatCents } from "../money/format-cents.ts";
import { heading, list, paragraph, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { streetOf } from "../party/stakeholders.ts";
import { latestSplit } from "../split/latest-split.ts";
import { packetContents } from "./contents.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { CONSENT_WORDS } from "./sheet-states.ts";
import { composed } from "./sheets-job.ts";

/** Who is responsible for each section, by which rule, and what agreements are recorded. */
export function responsibilitySheet({ file, report }: PacketInput): Sheet {
  const rule = file.authority?.rules.find(({ id }) => id === file.line.ruleId);
  const name = (id: string) => {
    const property = file.properties.find((each) => each.id === id);
    return property ? streetOf(property.address) : id;
  };
  const rows = report.reaches.map((reach) => [
    EN.stretch(reach.from, reach.to),
    EN.holder[reach.holder],
    servedWords(reach, name, file),
    reach.reason,
    reach.citation === "" ? "none on file" : reach.citation,
  ]);
  const agreements = file.agreements.map(({ title, recordingNumber }) =>
    recordingNumber === "" ? EN.done.unrecorded(title) : EN.done.recorded(title, recordingNumber),
  );
  return composed("responsibility", "Responsibility by section", [
    paragraph(
      rule
        ? `Rule applied: ${rule.title} (${rule.citation}, as of ${EN.day(rule.asOf)}).`
        : "No rule of the authority has been chosen yet.",
    ),
    ...(rows.length === 0
      ? [paragraph("Sections have not been determined.")]
      : table(["Section", "Responsible", "Serves", "Reason", "Source"], rows)),
    heading("Agreements on the line"),
    ...list(agreements.length === 0 ? [EN.done.noAgreement] : agreements),
    officialCaution(),
  ]);
}

/** Whose flow passes, the tie-ins whose owner is unknown among them. */
function servedWords(
  { servedBy, unknownTieIns }: ReachFinding,
  name: (propertyId: string) => string,
  { tieIns }: PacketInput["file"],
): string {
  const unknown = unknownTieIns.map(
    (id) => `${tieIns.find((each) => each.id === id)?.label ?? "a tie-in"} (owner unknown)`,
  );
  return [...servedBy.map(name), ...unknown].join(", ") || "no one known";
}

/** The amounts as chosen, with the rule and its reason. For the authority only. */
export function splitSheet({ file, report }: PacketInput): Sheet {
  const split = latestSplit(file);
  if (split === null) {
    return composed("split", "Cost split", [paragraph("No split has been chosen yet.")]);
  }
  const rule = EN.rule[split.rule];
  const rows = split.shares.map(({ propertyId, tieInId, amount, recoverable }) => {
    const property = file.properties.find(({ id }) => id === propertyId);
    const tieIn = file.tieIns.find(({ id }) => id === tieInId);
    const label = property
      ? streetOf(property.address)
      : `${tieIn?.label ?? "Tie-in"}, owner unknown (set aside)`;
    return [label, recoverable === 0 ? "–" : formatCents(recoverable), formatCents(amount)];
  });
  const worked = report.splits.find(({ choice }) => choice.rule === split.rule);
  const fresh = worked?.basis === split.basis;
  return composed("split", "Cost split", [
    paragraph(
      `Split No. ${split.number}, chosen by ${split.chosenBy} on ${EN.day(split.chosenOn)}.`,
    ),
    paragraph(EN.split.ruleLine(rule.title, rule.sentence)),
    ...(split.reason === "" ? [] : [paragraph(EN.split.reason(split.reason))]),
    // Before the amounts: no page's end parts it from what it speaks of.
    { kind: "caution", ...EN.caution.proposal },
    ...table(
      ["Property", "Of this, covered for unknown owners", "Amount"],
      [...rows, ["Total", "", formatCents(split.total)]],
      { numeric: [1, 2], totals: 1 },
    ),
    ...(fresh && worked ? [paragraph(worked.oddCents)] : []),
    ...(fresh
      ? []
      : [paragraph("This split is out of date: facts have changed since it was chosen.")]),
  ]);
}

/** What a consent is worth today, as an authority reads it. */
export const CONSENT_STANDING_WORDS: Record<(typeof CONSENT_STANDINGS)[number], string> = {
  current: "given, in effect",
  "superseded-amount": "signed for an earlier amount",
  asked: "requested, no answer yet",
  refused: "refused",
  withdrawn: "withdrawn",
  "name-held": "signed, name not yet accepted",
  "name-refused": "signed, name not accepted",
  replaced: "replaced by a later one",
};

/**
 * The consents that the work needs, as far as they are in hand and what is not. Who refused, and what
 * anybody pays, is the neighbors’ business: only where the authority asks who pays what.
 */
export function consentSheet(input: PacketInput): Sheet {
  const { file } = input;
  const all = packetContents(input).kinds.has("split");
  const rows = file.consents
    .filter((consent) => all || isPublic(input, consent))
    .map((consent) => consentRow(input, consent, all));
  const wanted = all ? [] : wantedRows(input);
  const heads = ["Property", "Party", "Consent", "Status", "Date", "Recorded as"];
  return composed(
    "consents",
    "Consents",
    rows.length + wanted.length === 0
      ? [paragraph("No consent is on file.")]
      : table(
          [...heads, ...(all ? ["Amount"] : []), "Name as signed"],
          [...rows, ...wanted],
          all ? { numeric: [6] } : {},
        ),
  );
}

/** Given, and it still holds; what somebody pays is left out. */
function isPublic({ file, report }: PacketInput, consent: Consent): boolean {
  return consent.kind !== "pay" && consentStanding(file, consent, report) === "current";
}

function consentRow({ file, report }: PacketInput, consent: Consent, amounts: boolean): string[] {
  const party = file.parties.find(({ id }) => id === consent.partyId);
  const property = file.properties.find(({ id }) => id === consent.propertyId);
  return [
    property ? streetOf(property.address) : "unknown",
    party?.name ?? "unknown",
    CONSENT_WORDS[consent.kind] ?? consent.kind,
    CONSENT_STANDING_WORDS[consentStanding(file, consent, report)],
    EN.day(consent.stateOn),
    consent.recordingNumber === "" ? "–" : consent.recordingNumber,
    ...(amounts ? [consent.amount === null ? "–" : formatCents(consent.amount)] : []),
    signedAs(file, consent),
  ];
}

/** What the work needs and is not in hand, without why. */
function wantedRows({ file, report }: PacketInput): string[][] {
  return consentTable(file, report).flatMap(({ propertyId, signers, cells }) =>
    Object.entries(cells).flatMap(([kind, { needed, inHand }]) => {
      const property = file.properties.find(({ id }) => id === propertyId);
      if (!needed || inHand || kind === "pay" || property === undefined) return [];
      const words = CONSENT_WORDS[kind] ?? kind;
      // Everybody who has to sign, whoever of them has: who did not is the neighbors’ business.
      const names = EN.list([...new Set(signers.map(({ name }) => name))]) || "owner unknown";
      return [[streetOf(property.address), names, words, "not received", "–", "–", "–"]];
    }),
  );
}

/** The name typed on screen, which its certificate behind the document says more of. */
function signedAs({ signatures }: PacketInput["file"], { id, restsOnId }: Consent): string {
  const signed = restsOnId ?? id;
  return signatures.find(({ consentId }) => consentId === signed)?.signedName ?? "–";
}

/**
 * Open holds, and those waived with who waived them and why. What a household needs is between the
 * office and them, and in no packet.
 */
export function holdSheet({ report }: PacketInput): Sheet {
  const shown = report.holds.filter(({ cause }) => cause !== "household-need");
  const open = shown.filter(({ waiver }) => waiver === null);
  const waived = shown.flatMap(({ sentence, waiver }) =>
    waiver === null ? [] : [[sentence, waiver.reason, waiver.by, EN.day(waiver.on)]],
  );
  return composed("holds-and-waivers", "Holds and waivers", [
    heading("Open"),
    ...(open.length === 0
      ? [paragraph("None.")]
      : table(
          ["Hold", "Blocks", "How to clear it"],
          open.map(({ sentence, stops, closes }) => [
            sentence,
            stops.map((stop) => stop.replaceAll("-", " ")).join(", "),
            closes,
          ]),
        )),
    heading("Waived"),
    ...(waived.length === 0
      ? [paragraph("None.")]
      : table(["Hold", "Reason", "Waived by", "Date"], waived)),
  ]);
}

function officialCaution(): LetterBlock {
  return { kind: "caution", ...EN.caution.official };
}
