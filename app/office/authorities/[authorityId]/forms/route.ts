import { revalidatePath } from "next/cache";
import { sentenceOf } from "#app/messages.ts";
import { refusedRequest } from "#app/refused-request.ts";
import { storedUpload, uploaderOf } from "#app/uploader.ts";
import { mayTakeForm, takeForm } from "#lib/operations/take-form.ts";

/**
 * Takes in a form of the authority: its PDF is the body, written to disk as it comes. `?name=` is what it
 * is called, `form` the form of which it is the newer print.
 */
export async function PUT(
  request: Request,
  { params }: { params: Promise<{ authorityId: string }> },
): Promise<Response> {
  const act = await uploaderOf(request);
  if (!act.ok) return act.error;
  const { authorityId } = await params;
  const may = mayTakeForm(act.value, authorityId);
  if (!may.ok) return refusedRequest(403, sentenceOf(may.error));
  const stored = await storedUpload(request);
  if (!stored.ok) return stored.error;
  const asked = new URL(request.url).searchParams;
  const taken = await takeForm(act.value, {
    authorityId,
    formId: asked.get("form"),
    name: asked.get("name") ?? "",
    stored: stored.value,
  });
  if (!taken.ok) return refusedRequest(400, sentenceOf(taken.error));
  revalidatePath(`/office/authorities/${authorityId}`, "layout");
  return Response.json({ id: taken.value.formId }, { status: 201 });
}
