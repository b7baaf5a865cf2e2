import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Without points, a branch follows at once on the main that its feet are told from.

test.each([
  ["fifty two feet from the main wye on the left at nine o'clock", "tie-in 52"],
  ["fifty two feet off the main tap on the right at two o'clock", "tie-in 52"],
  ["fifty two feet up from the main roots at the joint", "fault 52"],
  ["fifty two feet from the city main saddle at ten o'clock", "tie-in 52"],
])("%s", (said, row) => {
  const log = draftLog(
    `WEBVTT

00:00:02.000 --> 00:00:08.000
pushed it down to the main and zeroed it there pulling back now

00:00:30.000 --> 00:00:36.000
twelve feet from the main there's a wye on the right at three o'clock

00:00:50.000 --> 00:00:56.000
thirty feet from the main roots in the joint

00:01:20.000 --> 00:01:27.000
${said}

00:01:50.000 --> 00:01:57.000
seventy feet and that's the cleanout where we went in
`,
    { looks: "downstream", measuredFrom: "main", mainCounter: null },
  );
  expect(log.drafts.map(({ kind, fromMain }) => `${kind} ${(fromMain ?? 0) / 100}`)).toContain(row);
});
