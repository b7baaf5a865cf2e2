import fs from "node:fs";
import sharp from "sharp";
import { expect, test } from "vitest";
import { listJobs } from "#db/queries/job.ts";
import { addUpload } from "#lib/operations/add-upload.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { fileDeclaration } from "#lib/operations/file-declaration.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { runNextJob } from "#lib/operations/run-job.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { storedPath, storeFile } from "#lib/storage/store.ts";
import { aDesk, fileOf, must } from "../../support/office.ts";
import { readPdf } from "../../support/pdf.ts";
import { aWorkplace } from "../../support/workplace.ts";

type Desk = ReturnType<typeof aDesk>;

async function keep({ act, lineId }: Desk, name: string, bytes: Uint8Array): Promise<string> {
  async function* once() {
    yield bytes;
  }
  const limits = { declared: bytes.byteLength, limit: 10_000_000 };
  const stored = must(await storeFile(act.dataFolder, once(), limits));
  return must(addUpload(act, { lineId, name, stored, note: "" })).uploadId;
}

/** Two letters by certified mail, one of them posted afterward by somebody else, with a photo. */
async function aDeliveredPair() {
  const desk = aDesk();
  const { act, lineId } = desk;
  const recipients = ["12", "14"].map((house) => ({
    ...{ partyId: `owner-${house}`, propertyId: house, tieInId: null, splitId: null },
  }));
  const { noticeIds } = must(
    draftNotices(act, { lineId, kind: "finding", replyBy: "2026-12-10", recipients }),
  );
  const [first = "", second = ""] = noticeIds;
  const tracking = {
    [first]: "9407 5550 1000 0000 0000 04",
    [second]: "9407 5550 1000 0000 0000 11",
  };
  must(
    sendNotices(act, { lineId, noticeIds, method: "certified", sentOn: "2026-11-20", tracking }),
  );
  const picture = { width: 900, height: 600, channels: 3, background: "#6b7f4f" } as const;
  const photo = await keep(desk, "door.jpg", await sharp({ create: picture }).jpeg().toBuffer());
  const posted = { method: "posted", sentOn: "2026-11-24", tracking: "", note: "" } as const;
  const who = { doneBy: "Marcus Reyes", at: "16:05", place: "Front door of 12 Fennel Row" };
  must(recordDelivery(act, { lineId, noticeId: first, ...posted, ...who, proofUploadId: photo }));
  return { ...desk, ids: fileOf(act, lineId).deliveries.map(({ id }) => id) };
}

test("the declaration prints for each person what they did, with its photo behind it", async () => {
  const desk = await aDeliveredPair();
  const { act, lineId, ids } = desk;
  const { jobId } = must(startJob(act, { lineId, kind: "declaration", subjectIds: ids }));
  await runNextJob(aWorkplace(desk).place);
  const job = listJobs(act.db, lineId).find(({ id }) => id === jobId);
  expect(job).toMatchObject({ state: "done", problem: "" });
  const upload = fileOf(act, lineId).uploads.find(({ id }) => id === job?.uploadId);
  const bytes = fs.readFileSync(storedPath(act.dataFolder, upload?.sha256 ?? ""));
  if (process.env["SHOW_PDF"]) fs.writeFileSync(process.env["SHOW_PDF"], bytes);
  const pdf = readPdf(bytes);
  pdf.check();
  const page = (number: number) => pdf.text(number).replaceAll(/\s+/g, " ");
  expect(page(1)).toContain("I, Dana Okafor, delivered the letters below");
  expect(page(1)).toContain("9407 5550 1000 0000 0000 11");
  expect(page(1)).not.toContain("Front door");
  expect(page(2)).toContain("I, Marcus Reyes, delivered");
  expect(page(2)).toContain("2026, 4:05 PM");
  expect(page(2)).toContain("Exhibit A");
  expect(page(2)).toContain("Signature of Marcus Reyes");
  expect(page(3)).toContain("Exhibit A to the declaration of Marcus Reyes");
  expect(pdf.images().map((image) => image.page)).toEqual([3]);
});

test("a signed declaration is filed once, with the deliveries of the one who signed", async () => {
  const desk = await aDeliveredPair();
  const { act, lineId, ids } = desk;
  const scan = await keep(
    desk,
    "signed.png",
    await sharp({
      create: { width: 60, height: 80, channels: 3, background: "#ffffff" },
    })
      .png()
      .toBuffer(),
  );
  const filing = { lineId, uploadId: scan };
  expect(fileDeclaration(act, { ...filing, deliveryIds: ids })).toMatchObject({
    error: { detail: expect.stringContaining("Dana Okafor or Marcus Reyes") },
  });
  must(fileDeclaration(act, { ...filing, deliveryIds: ids.slice(0, 2) }));
  expect(fileOf(act, lineId).deliveries.map((each) => each.declaredUploadId)).toEqual([
    scan,
    scan,
    null,
  ]);
  expect(fileDeclaration(act, { ...filing, deliveryIds: ids.slice(0, 1) })).toMatchObject({
    error: { detail: expect.stringContaining("has its declaration already") },
  });
  expect(fileDeclaration(act, { ...filing, deliveryIds: [] })).toMatchObject({
    error: { reason: "missing-value" },
  });
});
