import { sendFile } from "#app/_components/send-file.ts";
import { err, type Result } from "#lib/result.ts";

/** The picture that a player shows, stored with the line; its id, or in words what went wrong. */
export async function grabStill(
  video: HTMLVideoElement,
  { lineId, name }: { readonly lineId: string; readonly name: string },
): Promise<Result<string, string>> {
  await settled(video);
  const picture = await frameOf(video);
  if (picture === null)
    return err("No photo could be taken yet: let the video load, then try again.");
  const file = new File([picture], `${name}.jpg`, { type: "image/jpeg" });
  const signal = new AbortController().signal;
  return await sendFile({ lineId, file, signal, onProgress: () => undefined });
}

const PATIENCE_MS = 20_000;

/** Until the picture of the moment that was sought is there, or patience ends. */
function settled(video: HTMLVideoElement): Promise<void> {
  const isThere = () => video.readyState >= 2 && !video.seeking;
  return new Promise((resolve) => {
    const until = Date.now() + PATIENCE_MS;
    const look = () => {
      if (isThere() || Date.now() > until) resolve();
      else setTimeout(look, 50);
    };
    look();
  });
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
