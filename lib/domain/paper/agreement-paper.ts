import { agreementProgress } from "../agreement/agreement-progress.ts";
import { agreementExtent } from "../agreement/agreement-standing.ts";
import type { Agreement } from "../facts/authority.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import { plainFeet } from "../length/station.ts";
import { addressLines, formatAddress } from "../party/address.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";
import { EN } from "./words-en.ts";

/** The draft of an agreement that is to be recorded, as data. What is not known is a blank to fill in. */
export interface AgreementPaper {
  readonly title: string;
  readonly day: Day;
  readonly draft: string;
  /** To whom the county recorder sends it back. */
  readonly returnTo: readonly string[];
  readonly parties: readonly AgreementPartyPaper[];
  readonly lots: readonly AgreementLot[];
  readonly sections: readonly { readonly title: string; readonly text: readonly string[] }[];
}

interface AgreementPartyPaper {
  readonly name: string;
  readonly lots: string;
}

interface AgreementLot {
  readonly place: string;
  readonly parcel: string;
  readonly legal: string;
  readonly share: string;
}

const BLANK = "____________________";
const SHORT_BLANK = "__________";

/** Composes the draft. Nothing in it is anybody’s law: the terms are what was typed in the file. */
export function agreementPaper(
  { file, office, today }: { file: LineFile; office: Office; today: Day },
  agreement: Agreement,
): AgreementPaper {
  const { holders } = agreementProgress(file, agreement);
  const placeOf = (propertyId: string) => {
    const property = file.properties.find(({ id }) => id === propertyId);
    return property === undefined ? BLANK : formatAddress(property.address) || BLANK;
  };
  return {
    title: agreement.title,
    day: today,
    draft: `Draft of ${formatDate(today)}. Not binding. To be reviewed by ${file.authority?.name ?? "the sewer authority"} and by each party’s own attorney or advisor before anyone signs; where the authority or the county has a form of its own, that form is used.`,
    returnTo: [office.name, ...addressLines(office.address)],
    parties: holders.map(({ name, capacityMissing, propertyIds }) => ({
      name: capacityMissing ? `${name}, by its ${BLANK}` : name,
      lots: propertyIds.map(placeOf).join("; "),
    })),
    lots: lotsOf(file, agreement, placeOf),
    sections: sectionsOf(file, agreement),
  };
}

function lotsOf(
  file: LineFile,
  { shares }: Agreement,
  placeOf: (propertyId: string) => string,
): AgreementLot[] {
  const named = shares.filter(({ parts }) => parts > 0);
  const all = named.reduce((sum, { parts }) => sum + parts, 0);
  return named.map(({ propertyId, parts }) => {
    const property = file.properties.find(({ id }) => id === propertyId);
    return {
      place: placeOf(propertyId),
      parcel: property?.parcel || SHORT_BLANK,
      legal: property?.legalDescription || BLANK,
      share: `${parts} of ${all} parts`,
    };
  });
}

function sectionsOf(file: LineFile, agreement: Agreement): AgreementPaper["sections"] {
  const { line } = file;
  const end =
    line.upperEnd === null ? "" : `, ${plainFeet(line.upperEnd)} ft long from the public main`;
  const size = line.diameter === null ? "" : `, ${line.diameter} in inside diameter`;
  const material = line.material === "unknown" ? "" : `, ${EN.material[line.material]}`;
  const terms = agreement.terms
    .split(/\n+/)
    .map((text) => text.trim())
    .filter((text) => text !== "");
  return [
    {
      title: "The shared pipe",
      text: [
        `One private sewer line shared by the lots named above: “${line.name}”, ${line.town || BLANK}${end}${size}${material}. Lengths are in feet along the pipe from its connection at the public main.`,
        `This agreement covers ${agreementExtent(agreement)}.`,
      ],
    },
    {
      title: "Shares",
      text: [
        "Each lot is responsible for its share, as stated in the table of lots, of the costs described below.",
      ],
    },
    {
      title: "Terms",
      text: terms.length === 0 ? [`${BLANK}${BLANK}${BLANK}`, `${BLANK}${BLANK}${BLANK}`] : terms,
    },
  ];
}
