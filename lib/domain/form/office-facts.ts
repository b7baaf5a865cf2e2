import { endOfWork } from "../clocks/work-end.ts";
import { formatAddress, stateLetters } from "../party/address.ts";
import { streetOf } from "../party/stakeholders.ts";
import { type FormFact, one } from "./fact.ts";

const CONTRACTOR = "Contractor";
const LINE = "Line";

/** Who applies, and what the application is about as a whole. */
export const OFFICE_FACTS: readonly FormFact[] = [
  one(CONTRACTOR, ["contractor.name", "Contractor’s name"], ({ office }) => office.name),
  one(CONTRACTOR, ["contractor.address", "Contractor’s address, on one line"], ({ office }) =>
    formatAddress(office.address),
  ),
  one(CONTRACTOR, ["contractor.street", "Contractor’s street and number"], ({ office }) =>
    streetOf(office.address),
  ),
  one(CONTRACTOR, ["contractor.city", "Contractor’s city"], ({ office }) => office.address.city),
  one(CONTRACTOR, ["contractor.state", "Contractor’s state"], ({ office }) =>
    stateLetters(office.address.state),
  ),
  one(CONTRACTOR, ["contractor.zip", "Contractor’s ZIP code"], ({ office }) => office.address.zip),
  one(CONTRACTOR, ["contractor.city-state-zip", "Contractor’s city, state and ZIP code"], (input) =>
    formatAddress({ ...input.office.address, street: "", unit: "" }),
  ),
  one(
    CONTRACTOR,
    ["contractor.phone", "Contractor’s phone", "phone"],
    ({ office }) => office.phone,
  ),
  one(
    CONTRACTOR,
    ["contractor.emergency", "Contractor’s emergency phone", "phone"],
    ({ office }) => office.onCallPhone,
  ),
  one(CONTRACTOR, ["contractor.email", "Contractor’s email"], ({ office }) => office.email),
  one(
    CONTRACTOR,
    ["contractor.license", "Contractor’s license number"],
    ({ office }) => office.license,
  ),
  one(
    CONTRACTOR,
    ["contractor.license-expires", "Contractor’s license expires", "day"],
    ({ office }) => office.licenseExpiresOn,
  ),
  one(CONTRACTOR, ["contractor.bond", "Bond number"], ({ office }) => office.bond),
  one(
    CONTRACTOR,
    ["contractor.bond-expires", "Bond expires", "day"],
    ({ office }) => office.bondExpiresOn,
  ),
  one(
    CONTRACTOR,
    ["contractor.insurance", "Insurance policy number"],
    ({ office }) => office.insurance,
  ),
  one(
    CONTRACTOR,
    ["contractor.insurance-expires", "Insurance expires", "day"],
    ({ office }) => office.insuranceExpiresOn,
  ),
  one(LINE, ["line.name", "Name of the line"], ({ file }) => file.line.name),
  one(LINE, ["line.town", "Town"], ({ file }) => file.line.town),
  one(LINE, ["authority.name", "Authority’s name"], ({ authority }) => authority.name),
  one(LINE, ["today", "Date of the application", "day"], ({ report }) => report.today),
  one(
    LINE,
    ["permit.number", "Number of this permit"],
    ({ file, permitKind }) => file.permits.findLast(({ kind }) => kind === permitKind)?.number,
  ),
  one(
    LINE,
    ["permit.side-sewer", "Number of the side sewer permit"],
    ({ file }) => file.permits.findLast(({ kind }) => kind === "side-sewer")?.number,
  ),
  one(
    LINE,
    ["permit.street-use", "Number of the street use permit"],
    ({ file }) => file.permits.findLast(({ kind }) => kind === "street-use")?.number,
  ),
  one(
    LINE,
    ["ticket.number", "811 ticket number"],
    ({ file }) => file.locateTickets.at(-1)?.number,
  ),
  one(
    LINE,
    ["ticket.called", "811 ticket called in", "day"],
    ({ file }) => file.locateTickets.at(-1)?.calledOn,
  ),
  one(
    LINE,
    ["work.begins", "Work begins", "day"],
    ({ file }) => file.events.findLast(({ event }) => event === "work-begins")?.on,
  ),
  one(LINE, ["work.ends", "Work ends", "day"], ({ file }) => endOfWork(file)),
];
