import { sentenceOf } from "#app/messages.ts";
import { refusedRequest } from "#app/refused-request.ts";
import { storedUpload, uploaderOf } from "#app/uploader.ts";
import { addUpload, mayAddUpload } from "#lib/operations/add-upload.ts";

/** Stores the body as a file of the line, written to disk as it comes. `?name=` is what it is called. */
export async function PUT(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  const act = await uploaderOf(request);
  if (!act.ok) return act.error;
  const { lineId } = await params;
  const may = mayAddUpload(act.value, lineId);
  if (!may.ok) return refusedRequest(403, sentenceOf(may.error));
  const stored = await storedUpload(request);
  if (!stored.ok) return stored.error;
  const name = new URL(request.url).searchParams.get("name") ?? "";
  const added = addUpload(act.value, { lineId, name, stored: stored.value, note: "" });
  if (!added.ok) return refusedRequest(404, sentenceOf(added.error));
  return Response.json({ id: added.value.uploadId }, { status: 201 });
}
