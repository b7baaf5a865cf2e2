import type { LineFile } from "../facts/line-file.ts";
import type { Address } from "../facts/party.ts";

const NOWHERE: Address = { street: "", unit: "", city: "", state: "", zip: "" };

/**
 * Where a party's mail goes: their mailing address; without one the property that the letter is about,
 * with the unit that they live or work in; without that the first property where they have a role.
 * All empty where the file knows none.
 */
export function mailTo(
  file: Pick<LineFile, "parties" | "roles" | "units" | "properties">,
  { partyId, propertyId }: { readonly partyId: string; readonly propertyId: string | null },
): Address {
  const mailing = file.parties.find(({ id }) => id === partyId)?.mailing ?? null;
  if (mailing !== null) return mailing;
  const about = file.properties.find(({ id }) => id === propertyId);
  if (about === undefined) {
    const first = file.roles.find((each) => each.partyId === partyId);
    return file.properties.find(({ id }) => id === first?.propertyId)?.address ?? NOWHERE;
  }
  const role = file.roles.find((each) => each.partyId === partyId && each.propertyId === about.id);
  const unit = file.units.find(({ id }) => id === role?.unitId)?.name ?? "";
  return about.address.unit === "" && unit !== "" ? { ...about.address, unit } : about.address;
}
