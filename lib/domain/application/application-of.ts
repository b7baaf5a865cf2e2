import type { ApplicantIs, Application, WorkType } from "../facts/application.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Party, Property } from "../facts/party.ts";
import type { PermitKind } from "../facts/permit.ts";
import { signersFor } from "../party/signers.ts";
import { streetOf } from "../party/stakeholders.ts";

export const APPLICANT_WORDS: Readonly<Record<ApplicantIs, string>> = {
  "not-set": "not set",
  contractor: "contractor",
  owner: "owner",
  "owners-agent": "owner’s agent",
};

export const WORK_TYPE_WORDS: Readonly<Record<WorkType, string>> = {
  "not-set": "not set",
  repair: "repair",
  replacement: "replacement",
  relocation: "relocation",
  "new-connection": "new connection",
  lining: "lining",
  capping: "capping or disconnecting",
  "emergency-repair": "emergency repair",
  other: "other",
};

/** What is entered for the application for one kind of permit; null: nothing yet. */
export function applicationOf(
  { applications }: Pick<LineFile, "applications">,
  kind: PermitKind,
): Application | null {
  return applications.findLast(({ permitKind }) => permitKind === kind) ?? null;
}

/** An owner who has to sign for a property, and whether their authorization is on file. */
export interface AuthorizedOwner {
  readonly property: Property;
  readonly party: Party;
  /** As it is signed: `Larkspur Holdings LLC, by its manager`. */
  readonly name: string;
  /** Null: nothing is on file. */
  readonly signedOn: string | null;
  readonly uploadId: string | null;
}

type OwnerFile = Parameters<typeof signersFor>[0] &
  Pick<LineFile, "properties" | "parties" | "ownerAuthorizations">;

/** Every owner of a connected property, with the authorization that names them. */
export function ownersToAuthorize(file: OwnerFile): AuthorizedOwner[] {
  return file.properties
    .filter(({ stake }) => stake === "connected")
    .flatMap((property) =>
      signersFor(file, property.id).flatMap(({ partyId, name }) => {
        const party = file.parties.find(({ id }) => id === partyId);
        if (party === undefined) return [];
        const found = file.ownerAuthorizations.findLast(
          (each) => each.propertyId === property.id && each.partyId === partyId,
        );
        return [
          {
            property,
            party,
            name,
            signedOn: found?.signedOn ?? null,
            uploadId: found?.uploadId ?? null,
          },
        ];
      }),
    );
}

/** What an attested application still wants, in sentences; empty: nothing. */
export function attestationWants(file: OwnerFile & Pick<LineFile, "applications">): string[] {
  const application = applicationOf(file, "side-sewer");
  const wants: readonly [boolean, string][] = [
    [(application?.applicant ?? "").trim() !== "", "The applicant is not entered."],
    [
      application !== null && application.applicantIs !== "not-set",
      "Whether the applicant signs as contractor, owner or agent is not entered.",
    ],
    [application !== null && application.attestedOn !== null, "The applicant has not signed yet."],
  ];
  const own = wants.flatMap(([there, words]) => (there ? [] : [words]));
  // An owner who applies in person authorizes nobody.
  if (application?.applicantIs === "owner") return own;
  const owners = ownersToAuthorize(file);
  const unsigned = owners
    .filter(({ signedOn }) => signedOn === null)
    .map(({ name, property }) => `No authorization from ${name}, ${streetOf(property.address)}.`);
  const none = owners.length === 0 ? ["No owner of a connected property is on file."] : [];
  return [...own, ...none, ...unsigned];
}
