import { Readable } from "node:stream";
import type { ReadableStream } from "node:stream/web";
import { revalidatePath } from "next/cache";
import { writable } from "#app/db.ts";
import { sentenceOf } from "#app/messages.ts";
import { isFromOwnPage } from "#app/own-origin.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { actOf, getUser } from "#app/session.ts";
import { readEnv } from "#lib/env.ts";
import { mayTakeForm, takeForm } from "#lib/operations/take-form.ts";
import { storeFile } from "#lib/storage/store.ts";

/**
 * Takes in a form of the authority: its PDF is the body, written to disk as it comes. `?name=` is what it
 * is called, `form` the form of which it is the newer print.
 */
export async function PUT(
  request: Request,
  { params }: { params: Promise<{ authorityId: string }> },
): Promise<Response> {
  if (!isFromOwnPage(request))
    return refusedRequest(403, "Nothing was stored: the request came from another site.");
  const user = await getUser();
  if (user === null) return signedOut();
  await writable();
  const act = actOf(user);
  const { authorityId } = await params;
  const may = mayTakeForm(act, authorityId);
  if (!may.ok) return refusedRequest(403, sentenceOf(may.error));
  const { body } = request;
  if (body === null) return refusedRequest(400, "Nothing was stored: the file is empty.");
  const { dataFolder, uploadLimit } = readEnv();
  const length = request.headers.get("content-length");
  const stored = await storeFile(dataFolder, Readable.fromWeb(body as ReadableStream), {
    declared: length !== null && /^\d+$/.test(length) ? Number(length) : null,
    limit: uploadLimit,
  });
  if (!stored.ok) {
    const { reason, detail } = stored.error;
    const said = reason === "incomplete" || reason === "empty" ? "bad-value" : reason;
    return refusedRequest(400, sentenceOf({ reason: said, detail }));
  }
  const asked = new URL(request.url).searchParams;
  const taken = await takeForm(act, {
    authorityId,
    formId: asked.get("form"),
    name: asked.get("name") ?? "",
    stored: stored.value,
  });
  if (!taken.ok) return refusedRequest(400, sentenceOf(taken.error));
  revalidatePath(`/office/authorities/${authorityId}`, "layout");
  return Response.json({ id: taken.value.formId }, { status: 201 });
}
