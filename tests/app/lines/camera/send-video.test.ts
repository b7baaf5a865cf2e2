import { expect, test } from "vitest";
import { readPiece } from "#app/lines/[lineId]/camera/send-video.ts";

test("readPiece() goes on where the office says, and ends where it is done", () => {
  expect(readPiece(200, '{"have":16777216}')).toEqual({
    done: false,
    have: 16_777_216,
    refused: null,
  });
  expect(readPiece(201, '{"id":"v1"}')).toMatchObject({ done: true });
});

test("readPiece() tries again what broke, and gives up with the office's own words", () => {
  const broken = { done: false, have: null, refused: null };
  expect(readPiece(400, '{"message":"busy"}')).toEqual(broken);
  expect(readPiece(502, "<html>")).toEqual(broken);
  const words = "Nothing was stored. This is a QuickTime recording.";
  expect(readPiece(415, JSON.stringify({ message: words }))).toMatchObject({ refused: words });
  expect(readPiece(418, "tea")).toMatchObject({ refused: expect.stringContaining("418") });
});
