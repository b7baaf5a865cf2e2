"use server";

import { z } from "zod";
import { askAction, formAction, onLineAt } from "#app/action.ts";
import { id } from "#app/fields.ts";
import { removeVideo } from "#lib/operations/remove-video.ts";
import { setPicture } from "#lib/operations/set-picture.ts";

/** Takes the recording of a run out of the file. */
export const removeVideoAction = formAction(onLineAt({ runId: id }), {
  may: "record-the-field",
  typed: z.object({}),
  does: removeVideo,
  says: "The video was removed from the file.",
});

/** Gives an observation its picture, or takes it away. */
export const setPictureAction = askAction({
  may: "record-the-field",
  takes: z.tuple([id, id, id.nullable()]),
  does: (act, [lineId, observationId, uploadId]) =>
    setPicture(act, { lineId, observationId, uploadId }),
});
