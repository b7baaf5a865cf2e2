import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// What different people say of one thing, a line each: by its concept whatever the words, in talk with
// points and as a captioning machine writes it.

const SAID: Readonly<Record<string, string>> = {
  "offset-joint": `
    This joint's offset.
    We've got an offset joint.
    There's a bad offset here.
    Pipe's dropped down about an inch.
    The next section dropped.
    The downstream pipe is lower than this one.
    The two pipes don't meet up right.
    See that ledge there?
    There's a vertical offset.
    The joint has shifted to the right.
    Slight misalignment at the joint.
    The pipes are misaligned.
    The bell settled on us.
    Joint is displaced.
    Displaced joint, medium.
    Camera bumps over a lip.
    There's a lip at the joint.
    The joint is stepped.
    We drop off a little shelf there.
    It's off by half a pipe.
    The joint has slipped sideways.
    The pipe's moved over.
    The joint's sheared.
    Bell and spigot aren't lined up.
    Joint kicked out to the left.
    It's jogged over at the joint.
    These two sections aren't aligned.
  `,
  "open-joint": `
    Joint's open.
    The joint has separated.
    Joint separation.
    There's a gap between the two pipes.
    The pipe's pulled apart.
    The two pieces have come apart.
    You can see a gap in the joint.
    The joint opened up.
    The bell pulled out of the hub.
    The coupling has let go.
    The spigot's backed out.
    I can see a half inch space at the joint.
    The gasket's hanging down.
    Joint's gapped.
    The pipe has come out of the bell.
    It's pulled out of the coupling.
  `,
  crack: `
    There's a crack.
    Hairline along the top.
    The pipe is cracked.
    Longitudinal fracture.
    It's fractured all the way around.
    Split down the side.
    Multiple cracks.
    I see cracking at the crown.
    Crack running lengthwise.
    Circumferential crack.
    There's a split in the pipe.
    The pipe has split.
    Spiderwebbed.
    It's got a stress crack in it.
    Cracks all over.
    There's a fracture line.
    A crack that spirals around.
    See that line? That's a crack.
  `,
  broken: `
    The pipe is broken.
    Broken pipe.
    The bell's busted.
    It's shattered.
    A break in the line.
    The pipe's all broken up.
    The hub is chipped.
    It's snapped clean in two.
    The top is smashed.
    The pipe's in pieces.
    There's pieces of pipe laying in the bottom.
    It's broke.
    Crumbling pipe.
    The pipe's falling apart.
    The bell is busted up.
  `,
  hole: `
    There's a hole.
    Hole in the side of the pipe.
    There's a void behind it.
    You can see dirt.
    I'm looking at dirt.
    Soil visible.
    The wall's gone, that's dirt back there.
    Something punched a hole in it.
    Rusted through, there's a hole.
    A section of pipe missing and I see gravel behind.
    Washed out underneath, there's a void.
  `,
  collapsed: `
    The pipe has collapsed.
    Collapse.
    It's caved in.
    The top has fallen in.
    The roof's caved.
    It's completely collapsed.
    There's a cave-in.
    The line's fallen in.
  `,
  deformed: `
    The pipe is egged.
    Egg-shaped.
    It's out of round.
    The pipe's oval.
    It's squashed.
    It's flattened.
    The pipe is crushed.
    It's pinched.
    Deformed about fifteen percent.
    The plastic's deflected.
    It's lost its shape.
    The pipe is mashed.
    It's squeezed in on both sides.
    Pipe's warped.
    The orangeburg is bubbling.
    It's flat on top.
    It's got a dent in it.
    Kinked.
  `,
  roots: `
    Roots.
    Some fine roots.
    Root mass.
    Root ball.
    There's roots in the joint.
    Hair roots.
    Tap root coming through.
    Tree root intrusion.
    Big wad of roots.
    It's full of roots.
    Rootlets.
    Roots hanging from the top.
    Whiskers.
    Little fuzzies at the joint.
    That's the tree getting in.
    Root growth.
    Heavy root infestation.
    A curtain of roots.
    Fibrous roots.
    Got a beard of roots.
  `,
  belly: `
    There's a belly.
    We've got a sag.
    Low spot.
    A dip in the line.
    The pipe sags here.
    It's bellied.
    Slight belly.
    There's a swag in it.
    The line's back-graded.
    It's got a low place.
    The pipe dips down.
    Got a bit of a bow in it.
    It's holding water in a sag.
    Negative slope.
  `,
  water: `
    We're in water.
    Standing water.
    The camera's under water.
    Water's standing in here.
    There's a puddle.
    It's holding water.
    Water level comes up to half pipe.
    The lens is submerged.
    We're swimming.
    Half a pipe of water.
    Water's backed up here.
    It's ponding.
    The head's dipping under.
    We're going under.
    About an inch of water sitting here.
    It's full of water.
    Still water.
  `,
  deposit: `
    There's grease.
    Grease buildup.
    Debris in the invert.
    It's scaled up.
    Heavy scale.
    Rust scale.
    Tuberculation.
    Some gravel in the bottom.
    Rocks in the pipe.
    Sludge.
    There's a wad of wipes.
    Mineral deposits.
    Encrustation around the joint.
    Soap scum.
    Silt in the bottom.
    Rags.
    Paper piled up.
    There's mud in here.
    A bunch of crud on the walls.
    Sand in the bottom.
    Deposits on the side.
    Toilet paper hung up.
    The walls are greasy.
  `,
  infiltration: `
    It's dripping.
    Water's dripping in.
    There's a leak at the joint.
    Groundwater running in.
    Seeping.
    It's weeping at the joint.
    Infiltration.
    Infiltration runner.
    Water coming in through the crown.
    Clear water squirting in.
    A steady stream coming in at the joint.
    Water trickling in through the wall.
    Dripping from the top.
  `,
  "worn-surface": `
    The bottom's gone.
    The bottom is worn out.
    Channeling.
    The invert's rotted.
    It's corroded.
    Rusted out on the bottom.
    The bottom of the pipe's eroded.
    Aggregate showing.
    Pitted pretty good.
    The surface is spalling.
    The invert is deteriorated.
    Rotted bottom.
    Heavy corrosion.
    The flow line's worn thin.
  `,
  "protruding-tie-in": `
    It sticks into the pipe.
    It's protruding.
    It intrudes about two inches.
    Pokes out into our pipe.
    It's hanging into the pipe.
  `,
  "tie-in": `
    There's a tap on the left.
    A connection comes in.
    Service at three o'clock.
    Somebody's tied in here.
    Branch coming in from the right.
    There's a wye.
    Tee connection.
    Saddle tap.
    Another house comes in here.
    There's a line coming in.
    A four inch comes in on the left.
    Capped tap.
    A pipe enters at ten o'clock.
    There's an inlet on the left.
    The neighbor's line joins in.
    Dead tap.
    Live service on the right.
    There's another line dumping in.
    That's where the neighbors hook up.
    Somebody cut in here.
    Hammer tap at two o'clock.
    There's a stub on the left.
    Factory wye, not used.
  `,
  blockage: `
    It's plugged.
    Blocked solid.
    I can't get past it.
    Can't push through this.
    Something's blocking the pipe.
    There's an obstruction.
    Stopped up.
    Completely blocked.
    There's a brick in here.
    We're stopped, can't go any further.
  `,
  bend: `
    There's a bend.
    It turns right.
    The pipe curves left.
    Sweep.
    Ninety degree elbow.
    Line bends to the right.
    It makes a turn to the left.
    A twenty-two and a half.
  `,
  cleanout: `
    There's a cleanout.
    Cleanout overhead.
    A cleanout on top.
    Passing under a cleanout.
    Two-way cleanout.
    Cleanout riser.
  `,
  "": `
    No roots here.
    No cracks.
    This joint is good.
    I don't see any problems.
    Joint looks fine.
    Nothing here.
    The neighbor said there were roots here.
    I was expecting a tap here.
    They told me it was collapsed.
    I thought that was a crack but it isn't.
    That's just a shadow.
    It's clean as a whistle.
    Good joint.
    It's not broken.
    I don't see the tap.
    Not a crack, just a stain.
    There used to be a tap here.
    No sign of any tap.
    Looks clean, no defects.
    Should be a connection around here.
    That's a mold line, not a crack.
    Free of roots.
    The last guy called this a belly, I don't see it.
    A cracked pipe would show a line.
    If it were mine I'd worry about roots.
    Just a scratch.
    Smooth sailing.
    Watch for the lip.
    It isn't offset.
    Joints are tight.
    No standing water.
    Water's flowing good.
    Pipe's in good shape.
    Not a belly.
    Nice round pipe.
    It hasn't cracked.
    There isn't a tap on this side.
    Nobody's tied in here.
  `,
};

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

const MANNERS: readonly (readonly [manner: string, (words: string) => string])[] = [
  [
    "with points",
    (words) =>
      `0:01 Zero at the cleanout.\n0:20 Ten feet.\n0:40 Thirty feet. ${words}\n1:00 Fifty feet.\n1:20 Sixty feet, that's the main.`,
  ],
  [
    "as captions",
    (words) =>
      `0:01 okay counter is zero at the cleanout\n0:20 ten feet\n0:40 thirty feet ${words.toLowerCase().replace(/[.,?]/g, "")}\n1:00 fifty feet\n1:20 sixty feet and that's the main`,
  ],
];

describe.each(Object.entries(SAID))("%s", (concept, phrases) => {
  const lines = phrases
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");
  test.each(lines.flatMap((words) => MANNERS.map(([manner, say]) => ({ words, manner, say }))))(
    "$words ($manner)",
    ({ words, say }) => {
      const { drafts } = draftLog(say(words), RUN);
      const told = drafts.map(({ kind, fault, counter }) => [fault ?? kind, counter]);
      expect(told).toEqual(concept === "" ? [] : [[concept, 3000]]);
    },
  );
});
