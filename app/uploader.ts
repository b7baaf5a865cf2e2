import "server-only";
import { writable } from "#app/db.ts";
import { sentenceOf } from "#app/messages.ts";
import { isFromOwnPage } from "#app/own-origin.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { actOf, getUser } from "#app/session.ts";
import { storedBody } from "#app/stored-body.ts";
import { readEnv } from "#lib/env.ts";
import type { Act, RefusalReason } from "#lib/operations/act.ts";
import { err, ok, type Result } from "#lib/result.ts";
import type { StoredFile, StoreProblem } from "#lib/storage/store.ts";

const REASONS: Record<StoreProblem, { reason: RefusalReason; status: number }> = {
  "too-large": { reason: "too-large", status: 413 },
  "wrong-type": { reason: "wrong-type", status: 415 },
  incomplete: { reason: "bad-value", status: 400 },
  empty: { reason: "bad-value", status: 400 },
};

/** Who sends a file from a page of ours, as the act of storing it; or the answer that refuses it. */
export async function uploaderOf(request: Request): Promise<Result<Act, Response>> {
  if (!isFromOwnPage(request))
    return err(refusedRequest(403, "Nothing was stored: the request came from another site."));
  const user = await getUser();
  if (user === null) return err(signedOut());
  await writable();
  return ok(actOf(user));
}

/** The body of a request, stored as it comes; or the answer that says why it was not. */
export async function storedUpload(request: Request): Promise<Result<StoredFile, Response>> {
  const stored = await storedBody(request, readEnv().uploadLimit);
  if (stored === null) return err(refusedRequest(400, "Nothing was stored: the file is empty."));
  if (stored.ok) return stored;
  const { reason, status } = REASONS[stored.error.reason];
  return err(refusedRequest(status, sentenceOf({ reason, detail: stored.error.detail })));
}
