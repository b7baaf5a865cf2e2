import { writable } from "#app/db.ts";
import { sentenceOf } from "#app/messages.ts";
import { isFromOwnPage } from "#app/own-origin.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { actOf, getUser } from "#app/session.ts";
import { storedBody } from "#app/stored-body.ts";
import { readEnv } from "#lib/env.ts";
import type { RefusalReason } from "#lib/operations/act.ts";
import { addUpload, mayAddUpload } from "#lib/operations/add-upload.ts";
import type { StoreProblem } from "#lib/storage/store.ts";

const REASONS: Record<StoreProblem, { reason: RefusalReason; status: number }> = {
  "too-large": { reason: "too-large", status: 413 },
  "wrong-type": { reason: "wrong-type", status: 415 },
  incomplete: { reason: "bad-value", status: 400 },
  empty: { reason: "bad-value", status: 400 },
};

/** Stores the body as a file of the line, written to disk as it comes. `?name=` is what it is called. */
export async function PUT(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if (!isFromOwnPage(request))
    return refusedRequest(403, "Nothing was stored: the request came from another site.");
  const user = await getUser();
  if (user === null) return signedOut();
  await writable();
  const act = actOf(user);
  const { lineId } = await params;
  const may = mayAddUpload(act, lineId);
  if (!may.ok) return refusedRequest(403, sentenceOf(may.error));
  const stored = await storedBody(request, readEnv().uploadLimit);
  if (stored === null) return refusedRequest(400, "Nothing was stored: the file is empty.");
  if (!stored.ok) {
    const { reason, status } = REASONS[stored.error.reason];
    return refusedRequest(status, sentenceOf({ reason, detail: stored.error.detail }));
  }
  const name = new URL(request.url).searchParams.get("name") ?? "";
  const added = addUpload(act, { lineId, name, stored: stored.value, note: "" });
  if (!added.ok) return refusedRequest(404, sentenceOf(added.error));
  return Response.json({ id: added.value.uploadId }, { status: 201 });
}
