import { Readable } from "node:stream";
import type { ReadableStream as WebStream } from "node:stream/web";
import { revalidatePath } from "next/cache";
import { db, writable } from "#app/db.ts";
import { sentenceOf } from "#app/messages.ts";
import { isFromOwnPage } from "#app/own-origin.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { actOf, getUser } from "#app/session.ts";
import { getVideoOfRun } from "#db/queries/video.ts";
import type { Video, VideoType } from "#lib/domain/facts/video.ts";
import { readEnv } from "#lib/env.ts";
import type { Act } from "#lib/operations/act.ts";
import { addVideo, mayAddVideo } from "#lib/operations/add-video.ts";
import { parseContentRange, parseRange } from "#lib/storage/byte-range.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { isStored, type StoredFile, type StoreProblem, storedPath } from "#lib/storage/store.ts";
import { storePiece, storeVideo } from "#lib/storage/store-video.ts";
import { streamStored } from "#lib/storage/stream-stored.ts";

interface Context {
  readonly params: Promise<{ lineId: string; runId: string }>;
}

const STATUS: Record<StoreProblem, number> = {
  "too-large": 413,
  "wrong-type": 415,
  incomplete: 400,
  empty: 400,
};

/**
 * Stores the body as the run's recording, written to disk as it comes. `?name=` is what it is called.
 * With `Content-Range` the body is one piece of it and `?key=` names the sending: answers how much
 * is there, so that a broken sending goes on from there.
 */
export async function PUT(request: Request, { params }: Context): Promise<Response> {
  if (!isFromOwnPage(request))
    return refusedRequest(403, "Nothing was stored: the request came from another site.");
  const user = await getUser();
  if (user === null) return signedOut();
  await writable();
  const act = actOf(user);
  const run = await params;
  const may = mayAddVideo(act, run);
  if (!may.ok) return refusedRequest(409, sentenceOf(may.error));
  if (request.headers.has("content-range")) return await takePiece(act, request, run);
  const { dataFolder, videoLimit } = readEnv();
  const declared = lengthOf(request);
  const stored = await storeVideo(dataFolder, bodyOf(request), { declared, limit: videoLimit });
  if (!stored.ok) return refusedStore(stored.error);
  return enter(act, request, { run, stored: stored.value });
}

interface RunKey {
  readonly lineId: string;
  readonly runId: string;
}

async function takePiece(act: Act, request: Request, run: RunKey): Promise<Response> {
  const range = parseContentRange(request.headers.get("content-range"));
  const length = lengthOf(request);
  if (range === null || (length !== null && length !== range.length))
    return refusedRequest(400, "Nothing was stored: the piece is not as long as it says.");
  const { dataFolder, videoLimit } = readEnv();
  const sending = new URL(request.url).searchParams.get("key") ?? "";
  const key = JSON.stringify([act.actor.id, run.lineId, run.runId, sending, range.total]);
  const piece = { key, from: range.from, total: range.total, limit: videoLimit };
  const taken = await storePiece(dataFolder, bodyOf(request), piece);
  if (!taken.ok) return refusedStore(taken.error);
  const { have, stored } = taken.value;
  return stored === null ? Response.json({ have }) : enter(act, request, { run, stored });
}

function enter(
  act: Act,
  request: Request,
  { run, stored }: { run: RunKey; stored: StoredFile<VideoType> },
): Response {
  const name = new URL(request.url).searchParams.get("name") ?? "";
  const added = addVideo(act, { ...run, name, stored });
  if (!added.ok) return refusedRequest(409, sentenceOf(added.error));
  revalidatePath(`/lines/${run.lineId}`, "layout");
  return Response.json({ id: added.value.videoId, have: stored.bytes }, { status: 201 });
}

function refusedStore({ reason, detail }: { reason: StoreProblem; detail: string }): Response {
  const words = reason === "too-large" ? `The video is too large: ${detail}` : detail;
  return refusedRequest(STATUS[reason], `Nothing was stored. ${words}.`);
}

function bodyOf({ body }: Request): AsyncIterable<Uint8Array> {
  return body === null ? Readable.from([]) : Readable.fromWeb(body as WebStream);
}

function lengthOf(request: Request): number | null {
  const length = request.headers.get("content-length");
  return length !== null && /^\d+$/.test(length) ? Number(length) : null;
}

/** The run's recording, whole or the one range of bytes that was asked for. */
export async function GET(request: Request, context: Context): Promise<Response> {
  return await answer(request, context, true);
}

/** What GET would say, without the bytes. */
export async function HEAD(request: Request, context: Context): Promise<Response> {
  return await answer(request, context, false);
}

async function answer(request: Request, { params }: Context, full: boolean): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const video = getVideoOfRun(db(), await params);
  if (video === null) return refusedRequest(404, "This run has no video.");
  const { dataFolder } = readEnv();
  if (!isStored(dataFolder, video.sha256))
    return refusedRequest(410, "The video is not stored here. Upload it again.");
  const headers = headersOf(video);
  if (request.headers.get("if-none-match") === headers.ETag)
    return new Response(null, { status: 304, headers });
  const range = parseRange(rangeAsked(request, headers.ETag), video.bytes);
  if (range === "unsatisfiable")
    return new Response(null, {
      status: 416,
      headers: { ...headers, "Content-Range": `bytes */${video.bytes}` },
    });
  const { from, to } = range === "whole" ? { from: 0, to: video.bytes - 1 } : range;
  const place = storedPath(dataFolder, video.sha256);
  return new Response(full ? streamStored(place, { from, to }) : null, {
    status: range === "whole" ? 200 : 206,
    headers: {
      ...headers,
      "Content-Type": video.type,
      "Content-Length": String(to - from + 1),
      ...(range === "whole" ? {} : { "Content-Range": `bytes ${from}-${to}/${video.bytes}` }),
    },
  });
}

/** A range of what the reader has in part already, unless that has become another recording. */
function rangeAsked(request: Request, etag: string): string | null {
  const condition = request.headers.get("if-range");
  return condition === null || condition === etag ? request.headers.get("range") : null;
}

function headersOf({ name, sha256 }: Pick<Video, "name" | "sha256">) {
  return {
    ETag: `"${sha256}"`,
    "Accept-Ranges": "bytes",
    "Content-Disposition": contentDisposition("inline", name),
    "X-Content-Type-Options": "nosniff",
    "Cache-Control": "private, no-cache",
  };
}
