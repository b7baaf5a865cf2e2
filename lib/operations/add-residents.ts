import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Party, Role } from "#lib/domain/facts/party.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { namelessPlaces, RESIDENT } from "#lib/domain/party/residents.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { sayCount } from "#lib/domain/say/count.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { writeTables } from "./row-writes.ts";

const TABLES = ["parties", "roles"] as const satisfies readonly RowTable[];

/**
 * Puts “Current Resident” on the list for every unit that has no occupant on file, so that letters
 * to occupants reach it. It is nobody's name and signs nothing; once a name is known, the row gets
 * it and keeps its letters.
 */
export function addResidents(
  act: Act,
  { lineId }: { readonly lineId: string },
): Result<{ added: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "add-residents" } as const;
  return changeLine(act, deal, (file) => {
    const places = namelessPlaces(file);
    if (places.length === 0)
      return refuse("not-in-this-state", "", "Every unit has an occupant on file");
    const made = places.map(({ propertyId, unitId }): { party: Party; role: Role } => {
      const partyId = act.newId();
      return {
        party: {
          id: partyId,
          kind: "resident",
          name: RESIDENT,
          mailing: null,
          careOf: "",
          email: "",
          phone: "",
          language: "unknown",
          needs: "",
          needsSaidBy: "",
          note: "",
        },
        role: {
          id: act.newId(),
          partyId,
          propertyId,
          role: "occupant",
          unitId,
          capacity: "",
          heldWith: "",
        },
      };
    });
    const after: LineFile = {
      ...file,
      parties: [...file.parties, ...made.map(({ party }) => party)],
      roles: [...file.roles, ...made.map(({ role }) => role)],
    };
    const wrong = nonsenseIn(after)[0];
    if (wrong) return refuse("bad-value", wrong.list, wrong.message);
    return ok({
      value: { added: made.length },
      sentence: `Current residents without a name were added at ${sayCount(made.length, "place")}.`,
      detail: { added: made },
      write: (db) => void writeTables({ ...act, db }, { before: file, after, tables: TABLES }),
    });
  });
}
