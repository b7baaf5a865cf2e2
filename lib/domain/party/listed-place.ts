import type { Address, Property } from "../facts/party.ts";
import { addressKey, formatAddress } from "./address.ts";
import { deliveryLine } from "./delivery-line.ts";
import { listedAddress } from "./listed-address.ts";
import type { ListedFields, ListPlace, ListProblem } from "./listed-row.ts";

/** The property of a row, on file or new. */
interface Place {
  readonly property: Property;
  readonly isNew: boolean;
}

/** The property that a row is about, by parcel number, else by address; null where that is wrong. */
export function propertyFor(
  { properties }: ListPlace,
  fields: ListedFields,
  newId: () => string,
  { problems, said }: { problems: ListProblem[]; said: string[] },
): Place | null {
  const { address } = listedAddress(fields, "site");
  const parcel = (fields.parcel ?? "").trim();
  if (parcel === "" && address.street === "") {
    problems.push({ column: "site", message: "Enter the site address or the parcel number" });
    return null;
  }
  const byParcel = properties.filter(
    (each) => parcelKey(parcel) !== "" && parcelKey(each.parcel) === parcelKey(parcel),
  );
  const byAddress = properties.filter(
    (each) => address.street !== "" && isSamePlace(address, each.address),
  );
  const found = byParcel.length > 0 ? byParcel : byAddress;
  const [property, another] = found;
  if (another !== undefined) {
    problems.push({
      column: byParcel.length > 0 ? "parcel" : "site",
      message: `${found.length} properties on file match; add the unit or the parcel number`,
    });
    return null;
  }
  if (property !== undefined) {
    if (address.street !== "" && !isSamePlace(address, property.address))
      said.push(`On file under this parcel as ${formatAddress(property.address)}; that is kept.`);
    return { property, isNew: false };
  }
  if (address.street === "") {
    problems.push({
      column: "site",
      message: "No property on file has this parcel number: enter the site address",
    });
    return null;
  }
  const fresh: Property = {
    id: newId(),
    address: { ...address, zip: fullerZip(address, listedAddress(fields, "mail").address) },
    parcel,
    legalDescription: (fields.legal ?? "").replace(/\s+/g, " ").trim(),
    stake: fields.stake ?? "candidate",
    weight: null,
    bothLanguages: false,
    note: "",
  };
  return { property: fresh, isNew: true };
}

/** The ZIP+4 under which a list mails to the site itself; else the site's own ZIP code. */
function fullerZip(site: Address, mail: Address): string {
  const isFuller = mail.zip.startsWith(site.zip) && mail.street !== "" && isSamePlace(site, mail);
  return isFuller ? mail.zip : site.zip;
}

/**
 * The rows with the state of each site address that lacks one, as assessors leave it out: from where
 * the list mails to the site itself, or from what is on file in that town. A town of two states is left
 * as it is.
 */
export function withSiteStates(
  { properties }: Pick<ListPlace, "properties">,
  rows: readonly ListedFields[],
): ListedFields[] {
  const known = new Map<string, Set<string>>();
  const note = ({ city, state }: Pick<Address, "city" | "state">) => {
    if (state !== "") known.set(townKey(city), (known.get(townKey(city)) ?? new Set()).add(state));
  };
  for (const { address } of properties) note(address);
  for (const fields of rows) {
    const { address: site } = listedAddress(fields, "site");
    const { address: mail } = listedAddress(fields, "mail");
    if (site.street !== "" && mail.street !== "" && isSamePlace(mail, site))
      note({ city: site.city, state: mail.state });
  }
  return rows.map((fields) => {
    const { address } = listedAddress(fields, "site");
    const [state, another] = known.get(townKey(address.city)) ?? [];
    const isWanted = address.city !== "" && address.state === "";
    return isWanted && state !== undefined && another === undefined
      ? { ...fields, siteState: state }
      : fields;
  });
}

function townKey(city: string): string {
  return city.trim().toUpperCase();
}

function parcelKey(parcel: string): string {
  return parcel.replace(/[^0-9a-z]/gi, "").toUpperCase();
}

/** The same street and unit; town and ZIP only where both say them. */
export function isSamePlace(a: Address, b: Address): boolean {
  const [one, other] = [deliveryLine(a.street, a.unit), deliveryLine(b.street, b.unit)];
  const bare = (unit: string) => unit.replace(/^(APT|UNIT|#) /, "");
  if (one.street !== other.street || bare(one.unit) !== bare(other.unit)) return false;
  const full = { ...a, city: a.city || b.city, state: a.state || b.state, zip: a.zip || b.zip };
  const whole = { ...b, city: b.city || a.city, state: b.state || a.state, zip: b.zip || a.zip };
  return addressKey(full) === addressKey(whole);
}
