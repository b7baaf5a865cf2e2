import {
  APPLICANT_WORDS,
  applicationOf,
  ownersToAuthorize,
  WORK_TYPE_WORDS,
} from "../application/application-of.ts";
import {
  METHOD_WORDS,
  type PipeProposal,
  pipeProposals,
  slopeWords,
} from "../application/proposed-pipe.ts";
import { type CutArea, cutAreas, SURFACE_WORDS, totalArea } from "../application/surface-area.ts";
import { valuationOf } from "../application/valuation.ts";
import type { Application } from "../facts/application.ts";
import { sayWhere } from "../length/stretch.ts";
import { EN } from "../paper/words-en.ts";
import { choice, type FormFact, type FormInput, many, one } from "./fact.ts";

const APPLICATION = "Application";
const NEW_PIPE = "New pipe";
const SURFACES = "Surfaces to cut";
const OWNERS = "Owners’ authorizations";

/** What was entered for this form’s permit; what only the side sewer’s application says counts too. */
function entered<K extends keyof Application>(key: K) {
  return ({ file, permitKind }: FormInput): Application[K] | null => {
    const own = applicationOf(file, permitKind)?.[key] ?? null;
    return isSaid(own) ? own : (applicationOf(file, "side-sewer")?.[key] ?? null);
  };
}

function isSaid(value: unknown): boolean {
  return value !== null && value !== "" && value !== "not-set";
}

function withoutUnset(words: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(words).filter(([key]) => key !== "not-set"));
}

/** A choice that nobody made checks nothing. */
function made(value: string | null): string[] {
  return isSaid(value) && value !== null ? [value] : [];
}

const pipe = many<PipeProposal>(NEW_PIPE, ({ file }) => pipeProposals(file));
const surface = many<CutArea>(SURFACES, ({ file, report }) => cutAreas(file, report.today));
const owner = many(OWNERS, ({ file }) =>
  ownersToAuthorize(file).filter(({ signedOn }) => signedOn !== null),
);

/** What the application says beside the facts of the line. */
export const APPLICATION_FACTS: readonly FormFact[] = [
  one(APPLICATION, ["application.applicant", "Applicant"], entered("applicant")),
  choice(
    APPLICATION,
    ["application.applicant-is", "Applicant signs as", withoutUnset(APPLICANT_WORDS)],
    (input) => made(entered("applicantIs")(input)),
  ),
  one(
    APPLICATION,
    ["application.signed-on", "Day the applicant signed", "day"],
    ({ file, permitKind }) => applicationOf(file, permitKind)?.attestedOn,
  ),
  choice(
    APPLICATION,
    ["application.work-type", "Work type", withoutUnset(WORK_TYPE_WORDS)],
    (input) => made(entered("workType")(input)),
  ),
  one(
    APPLICATION,
    ["application.valuation", "Valuation", "money"],
    ({ file, permitKind }) => valuationOf(file, permitKind).amount,
  ),
  one(APPLICATION, ["application.traffic", "How traffic gets past"], entered("traffic")),
  one(
    APPLICATION,
    ["application.pedestrians", "How people on foot get past"],
    entered("pedestrians"),
  ),
  one(
    APPLICATION,
    ["application.insured-as", "Additional insured, as on the certificate"],
    entered("insuredAs"),
  ),
  one(
    APPLICATION,
    ["contractor.compensation", "Workers’ compensation number"],
    ({ office }) => office.compensation,
  ),
  one(
    APPLICATION,
    ["contractor.compensation-expires", "Workers’ compensation expires", "day"],
    ({ office }) => office.compensationExpiresOn,
  ),
  one(
    APPLICATION,
    ["contractor.business-license", "Business license number"],
    ({ office }) => office.businessLicense,
  ),
  one(
    APPLICATION,
    ["contractor.business-license-expires", "Business license expires", "day"],
    ({ office }) => office.businessLicenseExpiresOn,
  ),
  pipe(["pipe-new.work", "New pipe: for which work"], ({ item }) => item.title),
  pipe(["pipe-new.material", "New pipe: material"], ({ pipe: each }) =>
    each === null || each.material === "unknown" ? null : EN.material[each.material],
  ),
  pipe(["pipe-new.size", "New pipe: diameter in inches"], ({ pipe: each }) => each?.diameter),
  pipe(["pipe-new.length", "New pipe: length in feet", "feet"], ({ length }) => length),
  pipe(["pipe-new.slope", "New pipe: slope"], ({ pipe: each }) =>
    each === null || each.slope === null ? null : slopeWords(each.slope),
  ),
  pipe(["pipe-new.method", "New pipe: method"], ({ pipe: each }) =>
    each === null || each.method === "not-set" ? null : METHOD_WORDS[each.method],
  ),
  pipe(["pipe-new.bedding", "New pipe: bedding"], ({ pipe: each }) => each?.bedding),
  pipe(["pipe-new.joint", "New pipe: joint"], ({ pipe: each }) => each?.joint),
  pipe(["pipe-new.connection", "New pipe: connection"], ({ pipe: each }) => each?.connection),
  surface(["surface.where", "Surface: where"], ({ cut }) => sayWhere(cut)),
  surface(["surface.kind", "Surface: kind"], ({ cut }) =>
    cut.surface === "not-set" ? null : SURFACE_WORDS[cut.surface],
  ),
  surface(["surface.width", "Surface: width in feet", "feet"], ({ width }) => width),
  surface(["surface.length", "Surface: length in feet", "feet"], ({ length, width }) =>
    width === null ? null : length,
  ),
  surface(["surface.area", "Surface: square feet"], ({ squareFeet }) => squareFeet),
  surface(["surface.restoration", "Surface: restoration"], ({ cut }) => cut.restoration),
  one(SURFACES, ["surface.total", "All surfaces: square feet"], ({ file, report }) => {
    const areas = cutAreas(file, report.today);
    return areas.length === 0 ? null : totalArea(areas);
  }),
  owner(["authorized.name", "Owner who authorized: name"], ({ name }) => name),
  owner(["authorized.on", "Owner who authorized: day signed", "day"], ({ signedOn }) => signedOn),
];
