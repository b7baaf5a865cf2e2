import fs from "node:fs";
import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { addVideo, mayAddVideo } from "#lib/operations/add-video.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { importLine } from "#lib/operations/import-line.ts";
import { removeVideo } from "#lib/operations/remove-video.ts";
import { setPicture } from "#lib/operations/set-picture.ts";
import { isStored, storedPath } from "#lib/storage/store.ts";
import { storeVideo } from "#lib/storage/store-video.ts";
import { aDb, aDesk, aFolder, anAct, closeAnyhow, fileOf, must } from "../../support/office.ts";
import { aRecording, chunksOf } from "../../support/recording.ts";

async function aDeskWithVideo() {
  const desk = aDesk();
  const runId = fileOf(desk.act, desk.lineId).runs[0]?.id ?? "";
  const stored = must(
    await storeVideo(desk.act.dataFolder, chunksOf(aRecording()), { declared: null, limit: 1e9 }),
  );
  const video = { lineId: desk.lineId, runId, name: "C:\\cam\\run 1.webm", stored };
  must(addVideo(desk.act, video));
  return { ...desk, runId, stored, video };
}

const videosOf = ({ act, lineId }: ReturnType<typeof aDesk>) => fileOf(act, lineId).videos;

test("addVideo() gives a run its recording, and refuses a second one", async () => {
  const desk = await aDeskWithVideo();
  const { act, lineId, runId, video, stored } = desk;
  expect(videosOf(desk)).toMatchObject([
    { runId, name: "run 1.webm", ...stored, addedBy: "Dana Okafor", addedAt: act.now },
  ]);
  expect(mayAddVideo(act, { lineId, runId })).toMatchObject({ error: { reason: "already-there" } });
  const other = { ...video, stored: { ...stored, sha256: "0".repeat(64) } };
  expect(addVideo(act, other)).toMatchObject({ error: { reason: "already-there" } });
  expect(videosOf(desk)).toHaveLength(1);
});

test("addVideo() attaches the same recording again where its bytes were not in the store", async () => {
  const desk = await aDeskWithVideo();
  const { act, lineId, runId, video, stored } = desk;
  fs.rmSync(storedPath(act.dataFolder, stored.sha256));
  expect(mayAddVideo(act, { lineId, runId })).toEqual({ ok: true, value: null });
  const other = { ...video, stored: { ...stored, sha256: "0".repeat(64) } };
  expect(addVideo(act, other)).toMatchObject({ error: { reason: "already-there" } });
  const [before] = videosOf(desk);
  must(addVideo(act, { ...video, name: "again.webm" }));
  expect(videosOf(desk)).toMatchObject([{ id: before?.id, name: "again.webm" }]);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    "Uploaded the video of run again: again.webm.",
  );
});

test("removeVideo() takes the recording out of the file, keeps its bytes and says so", async () => {
  const desk = await aDeskWithVideo();
  const { act, lineId, runId, stored, video } = desk;
  must(removeVideo(act, { lineId, runId }));
  expect(videosOf(desk)).toEqual([]);
  expect(isStored(act.dataFolder, stored.sha256)).toBe(true);
  expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
    "Removed the video of run from the file: run 1.webm. The stored file is kept.",
  );
  expect(removeVideo(act, { lineId, runId })).toMatchObject({ error: { reason: "not-found" } });
  must(addVideo(act, video));
});

test("recordings are field work: a viewer adds and removes none, and a closed file takes none", async () => {
  const desk = await aDeskWithVideo();
  const { act, lineId, runId, video } = desk;
  const viewer = anAct(act.db, { role: "viewer", dataFolder: act.dataFolder });
  const refused = { error: { reason: "not-allowed" } };
  expect(mayAddVideo(viewer, { lineId, runId })).toMatchObject(refused);
  expect(addVideo(viewer, video)).toMatchObject(refused);
  expect(removeVideo(viewer, { lineId, runId })).toMatchObject(refused);
  must(removeVideo(anAct(act.db, { role: "field" }), { lineId, runId }));
  expect(mayAddVideo(act, { lineId, runId: "none" })).toMatchObject({
    error: { reason: "not-found" },
  });
  must(closeAnyhow(act, lineId));
  expect(mayAddVideo(act, { lineId, runId })).toMatchObject({
    error: { reason: "not-in-this-state" },
  });
});

function addPicture(
  { act, lineId }: ReturnType<typeof aDesk>,
  type: "image/png" | "application/pdf",
) {
  const stored = { type, bytes: 9, sha256: "a".repeat(64) };
  return must(addUpload(act, { lineId, name: "still.png", stored, note: "" })).uploadId;
}

test("setPicture() gives an observation its picture, so that tables typed meanwhile hear of it", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const [seen] = fileOf(act, lineId).observations;
  const observationId = seen?.id ?? "";
  const uploadId = addPicture(desk, "image/png");
  const before = getRevisions(act.db, lineId).observations;
  must(setPicture(act, { lineId, observationId, uploadId }));
  expect(fileOf(act, lineId).observations[0]).toEqual({ ...seen, pictureId: uploadId });
  expect(getRevisions(act.db, lineId).observations).toBe(before + 1);
  const told = fileOf(act, lineId).history.length;
  must(setPicture(act, { lineId, observationId, uploadId }));
  expect(fileOf(act, lineId).history).toHaveLength(told);
  must(setPicture(act, { lineId, observationId, uploadId: null }));
  expect(fileOf(act, lineId).observations[0]).toEqual(seen);
});

test("setPicture() refuses a paper, a picture of nowhere, and a viewer", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const observationId = fileOf(act, lineId).observations[0]?.id ?? "";
  const uploadId = addPicture(desk, "application/pdf");
  expect(setPicture(act, { lineId, observationId, uploadId })).toMatchObject({
    error: { reason: "bad-value" },
  });
  expect(setPicture(act, { lineId, observationId, uploadId: "none" })).toMatchObject({
    error: { reason: "not-found", path: "uploadId" },
  });
  expect(setPicture(act, { lineId, observationId: "none", uploadId: null })).toMatchObject({
    error: { reason: "not-found", path: "observationId" },
  });
  const viewer = anAct(act.db, { role: "viewer" });
  expect(setPicture(viewer, { lineId, observationId, uploadId: null })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("a line file names the recording; in another office the same one attaches to it", async () => {
  const desk = await aDeskWithVideo();
  const { act, lineId, runId, video, stored } = desk;
  const text = exportLine(act, lineId) ?? "";
  expect(text).toContain(stored.sha256);
  const other = anAct(aDb(), { dataFolder: aFolder(), role: "admin" });
  must(importLine(other, text));
  expect(fileOf(other, lineId).videos).toEqual(videosOf(desk));
  expect(isStored(other.dataFolder, stored.sha256)).toBe(false);
  expect(mayAddVideo(other, { lineId, runId })).toEqual({ ok: true, value: null });
  must(await storeVideo(other.dataFolder, chunksOf(aRecording()), { declared: null, limit: 1e9 }));
  must(addVideo(other, video));
  expect(fileOf(other, lineId).videos).toHaveLength(1);
  expect(isStored(other.dataFolder, stored.sha256)).toBe(true);
});
