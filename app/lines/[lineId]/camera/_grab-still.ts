import { sendFile } from "#app/_components/send-file.ts";
import { err, type Result } from "#lib/result.ts";

/** The picture that a player shows, stored with the line; its id, or in words what went wrong. */
export async function grabStill(
  video: HTMLVideoElement,
  { lineId, name }: { readonly lineId: string; readonly name: string },
): Promise<Result<string, string>> {
  const picture = await frameOf(video);
  if (picture === null)
    return err("No picture could be taken yet: let the recording load, then try again.");
  const file = new File([picture], `${name}.jpg`, { type: "image/jpeg" });
  const signal = new AbortController().signal;
  return await sendFile({ lineId, file, signal, onProgress: () => undefined });
}

function frameOf(video: HTMLVideoElement): Promise<Blob | null> {
  const canvas = document.createElement("canvas");
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  const pen = canvas.getContext("2d");
  if (pen === null || canvas.width === 0 || video.readyState < 2) return Promise.resolve(null);
  pen.drawImage(video, 0, 0);
  return new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", 0.92));
}
