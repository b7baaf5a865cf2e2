import "server-only";
import { db } from "#app/db.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import type { Packet } from "#lib/domain/packet/packet.ts";
import { formsOf } from "#lib/operations/forms-of.ts";

interface Facts {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
}

/**
 * Kept as long as the report is, which is made anew whenever the line, its authority or the office
 * changed; and for as long as the authority's forms, which are none of the line, say the same.
 */
const kept = new WeakMap<Report, { readonly forms: string; readonly packet: Packet }>();

/** The permit packet as it stands. */
export function packetOf({ file, report, office }: Facts): Packet {
  const forms = formsOf(db(), file);
  const said = JSON.stringify(forms);
  const known = kept.get(report);
  if (known?.forms === said) return known.packet;
  const packet = composePacket({ file, report, office, forms });
  kept.set(report, { forms: said, packet });
  return packet;
}
