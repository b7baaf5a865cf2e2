"use server";

import { jobAction } from "#app/action.ts";

/** Makes the whole file one PDF. */
export const buildCloseOutAction = jobAction("close-out", "work-the-file");
