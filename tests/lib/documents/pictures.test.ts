import sharp from "sharp";
import { expect, test } from "vitest";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { renderPacket } from "#lib/documents/render-packet.tsx";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { LetterPicture } from "#lib/domain/paper/letter.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { anUpload } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { askingFor, sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

/** Rendering is slow where other work runs beside it. */
const STILLS = ["o1", "o3", "f1"];

/** The sample line with stills of T1, of T3 that is nobody's, and of a fault. */
function pictured() {
  const sample = sampleLine();
  const observations = sample.file.observations.map((seen) =>
    STILLS.includes(seen.id) ? { ...seen, pictureId: `still-${seen.id}` } : seen,
  );
  const uploads = STILLS.map((id) => anUpload(`still-${id}`, { type: "image/jpeg" }));
  return { ...sample, file: { ...sample.file, observations, uploads } };
}

async function aStill(width: number, height: number): Promise<Uint8Array> {
  const background = { r: 90, g: 70, b: 50 };
  return await sharp({ create: { width, height, channels: 3, background } })
    .jpeg()
    .toBuffer();
}

async function bytesOf(ids: readonly string[]): Promise<Map<string, Uint8Array>> {
  return new Map(
    await Promise.all(
      ids.map(
        async (id): Promise<[string, Uint8Array]> => [`still-${id}`, await aStill(1_600, 1_200)],
      ),
    ),
  );
}

function letterOf(kind: "finding" | "tie-in-inquiry", language: "en" | "es" = "en") {
  const [party, property] = kind === "finding" ? ["lodz", "p18"] : ["nils", "p11"];
  const notice = sampleNotice(party ?? "", property ?? null, { kind, tieInId: "T3", language });
  return composeLetter({ ...pictured(), notice });
}

function picturesOf(letter: ReturnType<typeof letterOf>): readonly LetterPicture[] {
  return letter.blocks.flatMap((block) => (block.kind === "pictures" ? block.pictures : []));
}

test("a question about a tie-in shows its newest still, with its place and day", () => {
  const letter = letterOf("tie-in-inquiry");
  const [still, ...others] = picturesOf(letter);
  expect(others).toEqual([]);
  expect(still?.uploadId).toBe("still-o3");
  expect(still?.caption).toMatch(/^T3, [\d.]+ ft.*, as the camera saw it on November 3, 2026$/);
  expect(still?.alt).toBe(`Picture from inside the pipe: ${still?.caption}`);
  expect(letterText(letter).replace(/\s+/g, " ")).toContain(`[photo] ${still?.caption}`);
});

test("a finding shows the reader's own tie-ins and those that are nobody's, never a neighbor's", () => {
  const ids = picturesOf(letterOf("finding")).map(({ uploadId }) => uploadId);
  expect(ids).toContain("still-o3");
  expect(ids).not.toContain("still-o1");
  expect(picturesOf(letterOf("finding", "es"))[0]?.alt).toMatch(/^Imagen del interior/);
});

test("renderLetters() prints the stills no larger than paper needs, the same bytes each time", async () => {
  const letter = letterOf("tie-in-inquiry");
  const uploads = await bytesOf(STILLS);
  const bytes = await renderLetters([letter], uploads);
  const pdf = readPdf(bytes);
  pdf.check();
  expect(pdf.images()).toEqual([{ page: expect.any(Number), width: 1_200, height: 900 }]);
  expect(Buffer.compare(bytes, await renderLetters([letter], uploads))).toBe(0);
});

test("renderLetters() leaves a caption alone where the picture is not there or is none", async () => {
  const letter = letterOf("tie-in-inquiry");
  const broken = new Map([["still-o3", new Uint8Array([1, 2, 3])]]);
  for (const uploads of [new Map<string, Uint8Array>(), broken]) {
    const pdf = readPdf(await renderLetters([letter], uploads));
    expect(pdf.images()).toEqual([]);
    expect(pdf.text()).toContain("as the camera saw it on");
  }
});

test("renderPacket() prints each run's stills below its log, under the numbers that the rows name", async () => {
  const packet = composePacket(askingFor(["observation-log"], pictured()));
  const sheets = packet.sheets.filter(({ kind }) => kind === "observation-log");
  const pdf = readPdf(await renderPacket({ ...packet, sheets }, await bytesOf(STILLS)));
  pdf.check();
  expect(pdf.images()).toHaveLength(3);
  const text = pdf.text().replace(/\s+/g, " ");
  expect(text).toMatch(/1:12, still 1/);
  expect(text).toMatch(/Still 1: T1, [\d.]+ ft, .*1:12/);
  expect(text).toMatch(/Still 2: roots/);
  expect(text).toMatch(/Still 3: T3/);
});
