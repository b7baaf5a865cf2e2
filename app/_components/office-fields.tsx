import type { ReactNode } from "react";
import type { Office } from "#lib/domain/facts/line-file.ts";
import type { Address } from "#lib/domain/facts/party.ts";
import { Choice } from "./choice.tsx";
import { Field } from "./field.tsx";
import { formatShortDay } from "./grid/day-text.ts";

/** Everything that the office says of itself on letters and packets. */
export function OfficeFields({ office }: { readonly office: Office | null }) {
  return (
    <>
      <div className="form-grid">
        <Field
          label="Company name"
          name="name"
          defaultValue={office?.name}
          example="Harrow & Teal Drain and Sewer"
          required
        />
        <Field
          label="Phone"
          name="phone"
          type="tel"
          defaultValue={office?.phone}
          example="(360) 555-0100"
        />
        <Field
          label="Reply-to email"
          name="email"
          type="email"
          defaultValue={office?.email}
          example="office@example.com"
        />
      </div>
      <AddressFields address={office?.address}>
        <Choice
          label="Time zone"
          name="zone"
          options={zonesWith(office?.zone)}
          defaultValue={office?.zone ?? "America/Los_Angeles"}
        />
      </AddressFields>
      <div className="form-grid form-pairs">
        <Field
          label="Contractor license"
          name="license"
          defaultValue={office?.license}
          example="HARROTD000ZZ"
        />
        <DayField label="License expires" name="licenseExpiresOn" day={office?.licenseExpiresOn} />
        <Field
          label="Bond"
          name="bond"
          defaultValue={office?.bond}
          example="Surety bond 55-0110, $12,000"
        />
        <DayField label="Bond expires" name="bondExpiresOn" day={office?.bondExpiresOn} />
        <Field
          label="Insurance"
          name="insurance"
          defaultValue={office?.insurance}
          example="General liability, $1,000,000"
        />
        <DayField
          label="Insurance expires"
          name="insuranceExpiresOn"
          day={office?.insuranceExpiresOn}
        />
      </div>
    </>
  );
}

/** Papers that some authorities ask for beside license, bond and insurance. */
export function OfficePaperFields({ office }: { readonly office: Office | null }) {
  return (
    <div className="form-grid form-pairs">
      <Field
        label="Workers’ compensation"
        name="compensation"
        defaultValue={office?.compensation}
        example="State fund account 55-0177"
      />
      <DayField
        label="Compensation expires"
        name="compensationExpiresOn"
        day={office?.compensationExpiresOn}
      />
      <Field
        label="Business license"
        name="businessLicense"
        defaultValue={office?.businessLicense}
        example="City license 55-0163"
      />
      <DayField
        label="Business license expires"
        name="businessLicenseExpiresOn"
        day={office?.businessLicenseExpiresOn}
      />
    </div>
  );
}

export function AddressFields({
  address,
  children,
}: {
  readonly address: Address | undefined;
  /** What stands beside the ZIP. */
  readonly children?: ReactNode;
}) {
  return (
    <div className="form-grid">
      <Field
        label="Street and number"
        name="street"
        defaultValue={address?.street}
        example="240 Tannery Road"
      />
      <Field label="Unit or suite" name="unit" defaultValue={address?.unit} />
      <Field label="City" name="city" defaultValue={address?.city} />
      <Field label="State" name="state" defaultValue={address?.state} example="WA" width={9} />
      <Field label="ZIP" name="zip" defaultValue={address?.zip} example="98000" width={10} />
      {children}
    </div>
  );
}

function DayField({
  label,
  name,
  day,
}: {
  readonly label: string;
  readonly name: string;
  readonly day: string | null | undefined;
}) {
  return (
    <Field
      label={label}
      name={name}
      defaultValue={day ? formatShortDay(day) : undefined}
      example="6/30/2027"
      width={14}
    />
  );
}

const ZONES = [
  ["America/New_York", "Eastern"],
  ["America/Chicago", "Central"],
  ["America/Denver", "Mountain"],
  ["America/Phoenix", "Arizona"],
  ["America/Los_Angeles", "Pacific"],
  ["America/Anchorage", "Alaska"],
  ["Pacific/Honolulu", "Hawaii"],
] as const;

/** A time zone as an office says it; its registered name where the list has none. */
export function zoneWords(zone: string): string {
  return ZONES.find(([value]) => value === zone)?.[1] ?? zone;
}

function zonesWith(own: string | undefined) {
  const options = ZONES.map(([value, label]) => ({
    value: value as string,
    label: `${label} time`,
  }));
  if (own === undefined || options.some((option) => option.value === own)) return options;
  return [{ value: own, label: own }, ...options];
}
