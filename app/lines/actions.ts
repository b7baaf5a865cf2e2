"use server";

import { z } from "zod";
import { officeAction } from "#app/action.ts";
import { text, textOrNull } from "#app/fields.ts";
import { openLine } from "#lib/operations/open-line.ts";

export const openLineAction = officeAction("/lines", {
  may: null,
  typed: z.object({ name: text, town: text, authorityId: textOrNull }),
  does: openLine,
  says: "",
  leadsTo: ({ lineId }) => `/lines/${lineId}/who`,
});
