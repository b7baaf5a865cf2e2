import { err, ok, type Result } from "#lib/result.ts";

interface Sending {
  /** Where the run's recording belongs. */
  readonly url: string;
  readonly file: File;
  readonly signal: AbortSignal;
  /** Bytes that have arrived. */
  readonly onProgress: (have: number) => void;
}

const PIECE = 16 * 1024 * 1024;
const MOST_BREAKS = 6;
const BROKE =
  "The connection dropped. What was sent is kept: choose the same file again to resume.";

/**
 * Sends a recording piece by piece, so that one broken connection costs one piece, and sending goes
 * on where it stopped, also another day: the same file by name, size and date is the same sending.
 */
export async function sendVideo(sending: Sending): Promise<Result<null, string>> {
  const { file, onProgress } = sending;
  if (file.size === 0) return err("The file is empty. Choose another one.");
  let have: number | null = null;
  let breaks = 0;
  while (breaks <= MOST_BREAKS) {
    const from: number = have ?? 0;
    // How much is there is not known yet: an empty piece asks.
    const piece = have === null ? new Blob([]) : file.slice(from, from + PIECE);
    const answer = await put(sending, { piece, from });
    const end = endOf(answer, sending.signal);
    if (end !== null) return end;
    have = answer.have;
    if (have !== null) {
      breaks = have > from ? 0 : breaks;
      onProgress(have);
    } else {
      breaks += 1;
      await new Promise((resolve) => setTimeout(resolve, 500 * 2 ** breaks));
    }
  }
  return err(BROKE);
}

function endOf(answer: Answer, signal: AbortSignal): Result<null, string> | null {
  if (signal.aborted) return err("Stopped. Choose the same file again to resume.");
  if (answer.done) return ok(null);
  return answer.refused === null ? null : err(answer.refused);
}

interface Answer {
  readonly done: boolean;
  /** Bytes that are there; null where the connection broke or the office was busy. */
  readonly have: number | null;
  /** Why it was refused for good. */
  readonly refused: string | null;
}

const BROKEN: Answer = { done: false, have: null, refused: null };

/** By XMLHttpRequest, because that one tells how much has gone. */
function put(
  { url, file, signal, onProgress }: Sending,
  { piece, from }: { readonly piece: Blob; readonly from: number },
): Promise<Answer> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    const key = `${file.name}|${file.size}|${file.lastModified}`;
    const query = new URLSearchParams({ name: file.name, key });
    request.open("PUT", `${url}?${query}`);
    request.responseType = "text";
    request.setRequestHeader("Content-Range", rangeWords(piece.size, from, file.size));
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.upload.onprogress = (event) => onProgress(from + Math.min(event.loaded, piece.size));
    request.onload = () => resolve(readPiece(request.status, request.responseText));
    request.onerror = () => resolve(BROKEN);
    request.onabort = () => resolve(BROKEN);
    signal.addEventListener("abort", () => request.abort(), { once: true });
    request.send(piece);
  });
}

function rangeWords(size: number, from: number, total: number): string {
  return size === 0 ? `bytes */${total}` : `bytes ${from}-${from + size - 1}/${total}`;
}

/** What the office says to a piece: how much is there, that all is, or in words what is wrong. */
export function readPiece(status: number, text: string): Answer {
  const { have, message } = parsed(text);
  if (status === 201) return { done: true, have: null, refused: null };
  if (status === 200 && typeof have === "number") return { done: false, have, refused: null };
  if (status === 400 || status >= 500) return BROKEN;
  const words =
    typeof message === "string" && message !== ""
      ? message
      : `Nothing was saved: the server returned an error (${status}). Try again in a minute.`;
  return { done: false, have: null, refused: words };
}

function parsed(text: string): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null ? { ...value } : {};
  } catch {
    return {};
  }
}
