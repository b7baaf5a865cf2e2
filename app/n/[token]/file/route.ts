import { isFromOwnPage } from "#app/own-origin.ts";
import { refusedRequest } from "#app/refused-request.ts";
import { storedBody } from "#app/stored-body.ts";
import { LINK_FILE_LIMIT } from "#lib/domain/consent/private-link.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { addLinkFile, mayAddLinkFile } from "#lib/operations/add-link-file.ts";
import { doorOf, languageOf, stopWords } from "../door.ts";

/** Takes in a neighbor's photo or paper, written to disk as it comes; the answer names its id. */
export async function PUT(
  request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  const { searchParams } = new URL(request.url);
  const words = LINK_WORDS[languageOf(searchParams.get("lang") ?? undefined, "en")];
  if (!isFromOwnPage(request)) return refusedRequest(403, words.refusedPlain);
  const door = await doorOf();
  const { token } = await params;
  const may = mayAddLinkFile(door, token);
  if (!may.ok) return refusedRequest(403, stopWords(words, may.error));
  const stored = await storedBody(request, LINK_FILE_LIMIT);
  if (stored === null) return refusedRequest(400, words.stops["bad-file"]);
  if (!stored.ok) {
    const stop = stored.error.reason === "too-large" ? "too-large" : "bad-file";
    return refusedRequest(stop === "too-large" ? 413 : 415, words.stops[stop]);
  }
  const name = searchParams.get("name") ?? "";
  const added = addLinkFile(door, may.value, { name, stored: stored.value });
  if (!added.ok) return refusedRequest(403, stopWords(words, added.error));
  return Response.json({ id: added.value.uploadId }, { status: 201 });
}
