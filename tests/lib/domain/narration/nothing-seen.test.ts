import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Talk between two finds that tells of nothing that is seen there: what is so in general, what was
// done before or by others, what is feared, asked, or told once more. It makes no row.

const NOTHING_SEEN = `
  That's what roots do, they find the joint.
  If it was broken you'd see dirt.
  I was afraid it'd be collapsed.
  Looks like a crack but that's only a mineral stain line.
  You can hear the water running.
  They told me it was broken out front.
  He had roots cut in March.
  We cut roots out of this last spring.
  This kind of pipe gets holes in it.
  I don't see any offsets in here.
  Pretty clean, no roots, no cracks, no bellies.
  Nothing wrong with that joint.
  Good joint there.
  Nice clean joints.
  That joint's okay.
  Pipe's in good shape here.
  Could use a cleaning but it's fine.
  That would be a hard spot to dig if it broke.
  A root ball would've stopped me.
  The last guy punched a hole in one of these.
  Let me wait for the water to go down.
  Somebody's running water upstairs.
  I'm going to rinse the lens.
  I got mud on the camera.
  Supposed to be a tap right about here.
  I'm looking for the neighbor's tap.
  The city replaced their side in oh nine.
  That's going to get worse.
  It's only a matter of time before that goes.
  We'd line right through that.
  That's the same crack.
  Just passing that wye again.
  That's the one that's causing the backups.
  There's the culprit.
  Wow, look at that.
  That's ugly.
  It's not too bad, considering.
  I've seen worse.
  Camera got hung up for a second.
  Coming around the corner.
  We lost some light there.
  Backing up so you can see.
  Okay, moving on.
  Let me get a still of that.
  I'm going to mark that on the ground.
  What do you think caused that?
  Did you see any roots?
  Could be the tree, could be settling.
  It's the tree that did it.
  Gas company probably bored through there, they do that.
`;

const ROWS = ["material 0", "tie-in 6.2", "crack 22", "roots 48.4"];

const TALKS: readonly (readonly [string, (words: string) => string])[] = [
  ["in the breath of a find", (words) => ` ${words}`],
  ["on the way", (words) => `\n0:52 ${words}`],
];

describe.each(TALKS)("%s", (_, told) => {
  test.each(
    NOTHING_SEEN.trim()
      .split("\n")
      .map((line) => line.trim()),
  )("makes no row: %s", (words) => {
    const talk = `0:00 Zero at the cleanout, clay pipe.\n0:20 Six point two, wye on the left.\n0:40 Twenty-two, crack on the right.${told(words)}\n1:05 Forty-eight four, roots at the top.\n1:40 Seventy feet, we're at the main.`;
    const log = draftLog(talk, { looks: "downstream", measuredFrom: null, mainCounter: null });
    expect(
      log.drafts.map(({ kind, fault, counter }) => `${fault ?? kind} ${(counter ?? 0) / 100}`),
    ).toEqual(ROWS);
  });
});
