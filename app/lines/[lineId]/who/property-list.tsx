import { SelectOnStrip } from "#app/_components/row-select.client.tsx";
import type { Party } from "#lib/domain/facts/party.ts";
import { ROLE_WORDS } from "#lib/domain/facts/party.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import {
  type PropertyStakeholders,
  type Stakeholder,
  streetOf,
} from "#lib/domain/party/stakeholders.ts";
import { STAKE_WORDS } from "../field-terms.ts";
import { counted, listed } from "../names.ts";
import styles from "./who.module.css";

/** Every property with who is on it, which tie-ins are its own, and what the file does not know. */
export function PropertyList({
  properties,
  report,
}: {
  readonly properties: readonly PropertyStakeholders[];
  readonly report: Report;
}) {
  return (
    <ul className={styles["list"]}>
      {properties.map((each) => (
        <li key={each.property.id} className={styles["property"]}>
          <PropertyName stakeholders={each} report={report} />
          <PeopleThere people={each.people} />
          <Missing sentences={each.missing} />
        </li>
      ))}
    </ul>
  );
}

function PropertyName({
  stakeholders: { property, units },
  report,
}: {
  readonly stakeholders: PropertyStakeholders;
  readonly report: Report;
}) {
  const own = report.tieIns.filter((each) => each.propertyId === property.id);
  return (
    <div>
      <h2 className="lead">{streetOf(property.address) || "No address yet"}</h2>
      <p className="muted small">
        {STAKE_WORDS[property.stake]}
        {units.length === 0 ? "" : `, ${counted(units.length, "unit")}`}
      </p>
      {own.length === 0 ? null : (
        <p className="small">
          {own.map((each) => (
            <span key={each.tieIn.id}>
              <SelectOnStrip id={each.tieIn.id}>
                {each.tieIn.label}
                {each.station === null ? "" : ` at ${formatFeet(each.station)}`}
              </SelectOnStrip>{" "}
            </span>
          ))}
        </p>
      )}
    </div>
  );
}

function PeopleThere({ people }: { readonly people: readonly Stakeholder[] }) {
  if (people.length === 0) return <p className="muted">No one entered.</p>;
  const parties = [...new Set(people.map((each) => each.party))];
  return (
    <ul className={styles["people"]}>
      {parties.map((party) => (
        <li key={party.id}>
          <Person party={party} roles={people.filter((each) => each.party === party)} />
        </li>
      ))}
    </ul>
  );
}

const PREFERS = { es: "Spanish", both: "English and Spanish" };

function Person({
  party,
  roles,
}: {
  readonly party: Party;
  readonly roles: readonly Stakeholder[];
}) {
  const onlyOccupies = roles.every(({ role }) => role === "occupant");
  return (
    <>
      <span className="strong">{party.name}</span>
      <span className="muted">, {listed(roles.map(roleWords))}</span>
      {party.mailing === null || onlyOccupies ? null : (
        <span className="muted small">
          {" "}
          · mailing address: {streetOf(party.mailing)}, {party.mailing.city}
        </span>
      )}
      {party.language === "en" || party.language === "unknown" ? null : (
        <span className="muted small"> · prefers {PREFERS[party.language]}</span>
      )}
      {party.needs === "" ? null : <span className="small"> · {party.needs}</span>}
    </>
  );
}

function roleWords({ role, unit, capacity }: Stakeholder): string {
  const place = unit === null || unit.name === "" ? "" : ` of ${unit.name}`;
  const signs = capacity === "" ? "" : ` (signs as ${capacity})`;
  return `${ROLE_WORDS[role]}${place}${signs}`;
}

function Missing({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <ul className={`small ${styles["missing"]}`}>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
