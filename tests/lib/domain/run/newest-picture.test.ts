import { expect, test } from "vitest";
import { newestPicture } from "#lib/domain/run/newest-picture.ts";
import { aFile, anObservation, anUpload, aRun } from "../../../support/file.ts";

const file = aFile({
  runs: [aRun("early", { ranOn: "2026-11-03" }), aRun("late", { ranOn: "2026-11-20" })],
  uploads: ["e1", "l1", "l2"].map((id) => anUpload(id, { type: "image/jpeg" })),
  observations: [
    anObservation("a", { runId: "late", tieInId: "T1", pictureId: "l1" }),
    anObservation("b", { runId: "late", tieInId: "T1", pictureId: "l2" }),
    anObservation("c", { runId: "early", tieInId: "T1", pictureId: "e1" }),
    anObservation("d", { runId: "late", tieInId: "T2", pictureId: null }),
  ],
});

test("newestPicture() takes the last still of the latest run", () => {
  expect(newestPicture(file, "T1")).toMatchObject({ uploadId: "l2", run: { id: "late" } });
  expect(newestPicture(file, "T2")).toBeNull();
  expect(newestPicture(file, "T9")).toBeNull();
});

test("newestPicture() passes over papers and pictures that the file does not hold", () => {
  const uploads = [
    anUpload("e1", { type: "image/png" }),
    anUpload("l2", { type: "application/pdf" }),
  ];
  expect(newestPicture({ ...file, uploads }, "T1")).toMatchObject({ uploadId: "e1" });
});
