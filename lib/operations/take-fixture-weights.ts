import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { fixtureWeights } from "#lib/domain/split/fixture-weights.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

/**
 * Takes every property's weight from its plumbing fixtures. Splits by weights that were chosen
 * before go stale. Refuses, saying what is wanting, while the weights can't be worked out.
 */
export function takeFixtureWeights(
  act: Act,
  { lineId }: { readonly lineId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "take-fixture-weights" } as const;
  return changeLine(act, deal, (file) => {
    const proposed = fixtureWeights(file, reportOn(file, act.today).tieIns);
    if (!proposed.ok) return refuse("not-in-this-state", "", proposed.error);
    const { table, weights } = proposed.value;
    const changed = file.properties.flatMap((property) => {
      const own = weights.find(({ propertyId }) => propertyId === property.id);
      return own === undefined || own.weight === property.weight
        ? []
        : [{ before: property, after: { ...property, weight: own.weight } }];
    });
    const words = weights.map(({ label, weight }) => `${label} ${weight}`).join(", ");
    return ok({
      value: null,
      sentence:
        changed.length === 0 ? null : `Used fixture counts as weights, by ${table}: ${words}.`,
      detail: {
        before: changed.map(({ before: { id, weight } }) => ({ id, weight })),
        after: changed.map(({ after: { id, weight } }) => ({ id, weight })),
      },
      write: (db) => {
        for (const { after } of changed) updateRow(db, "properties", { lineId, row: after });
        countSave(db, { lineId, table: "properties", by: act.actor.name, at: act.now });
      },
    });
  });
}
