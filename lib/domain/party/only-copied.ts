import type { LineFile } from "../facts/line-file.ts";
import { COPY_ROLES } from "../facts/party.ts";

/**
 * Whether somebody stands at a property only as who gets copies, a lender: they own, use and sign
 * nothing there, and nothing is due to or from them. False where they have another role there too,
 * or none.
 */
export function isOnlyCopied(
  { roles }: Pick<LineFile, "roles">,
  { partyId, propertyId }: { readonly partyId: string; readonly propertyId: string | null },
): boolean {
  const here = roles.filter((role) => role.partyId === partyId && role.propertyId === propertyId);
  return here.length > 0 && here.every(({ role }) => COPY_ROLES.includes(role));
}
