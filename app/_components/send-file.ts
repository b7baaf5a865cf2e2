import { err, ok, type Result } from "#lib/result.ts";

/** A file on its way. */
export interface Sending {
  readonly file: File;
  readonly signal: AbortSignal;
  readonly onProgress: (percent: number) => void;
}

const BROKEN = "The upload failed: the connection was lost. Choose the file again.";

/** Sends a file to be stored with a line; the id of what was stored, or a sentence on what is wrong. */
export function sendFile({
  lineId,
  ...sending
}: Sending & { readonly lineId: string }): Promise<Result<string, string>> {
  return sendFileTo(`/lines/${encodeURIComponent(lineId)}/uploads`, sending);
}

/** As `sendFile`, to wherever files are taken in. By XMLHttpRequest, because that one tells how much has gone. */
export function sendFileTo(
  place: string,
  { file, signal, onProgress, broken = BROKEN }: Sending & { readonly broken?: string },
): Promise<Result<string, string>> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open(
      "PUT",
      `${place}${place.includes("?") ? "&" : "?"}name=${encodeURIComponent(file.name)}`,
    );
    request.responseType = "text";
    if (file.type !== "") request.setRequestHeader("Content-Type", file.type);
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) onProgress(Math.floor((event.loaded / event.total) * 100));
    };
    request.onload = () => resolve(readAnswer(request.status, request.responseText));
    request.onerror = () => resolve(err(broken));
    request.onabort = () => resolve(err("Canceled. Nothing was uploaded."));
    signal.addEventListener("abort", () => request.abort());
    request.send(file);
  });
}

/** The route answers with the id, or with a message in words. */
export function readAnswer(status: number, text: string): Result<string, string> {
  const answer = parseObject(text);
  if (status >= 200 && status < 300 && typeof answer["id"] === "string") return ok(answer["id"]);
  if (typeof answer["message"] === "string" && answer["message"] !== "")
    return err(answer["message"]);
  if (status === 401) return err("Not uploaded: you are signed out. Sign in and try again.");
  return err(`Not uploaded: the server returned an error (${status}). Try again in a minute.`);
}

function parseObject(text: string): Record<string, unknown> {
  try {
    const parsed: unknown = JSON.parse(text);
    return typeof parsed === "object" && parsed !== null ? { ...parsed } : {};
  } catch {
    return {};
  }
}
