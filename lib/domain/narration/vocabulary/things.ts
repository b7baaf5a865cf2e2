import type { Fitting, Material } from "../../facts/line.ts";
import type { Fault, ObservationKind } from "../../facts/run.ts";
import { formsOf } from "./forms.ts";

/** What a technician names. `main` is the connection at the public main: a place, not a row. */
export interface Thing {
  readonly kind: ObservationKind | "main";
  readonly fault: Fault | null;
  readonly fitting: Fitting;
  /** More than one, and nothing says how many. */
  readonly many: boolean;
  /** A word that often means something else: it counts where a place, a side or `another` goes with it. */
  readonly weak: boolean;
  /** Tells how a tie-in was made; beside a tie-in it is no second one. */
  readonly describes: boolean;
  /** Says that the camera went no further: it could not, or its way just ended there. */
  readonly halts?: "could-not" | "ended";
}

type Entry = readonly [phrase: string, thing: Thing];

const STANDARD = { weak: false, describes: false };

function entries(kind: Thing["kind"], phrases: string, more: Partial<Thing> = {}): Entry[] {
  return phrases.split(",").map((text): Entry => {
    const phrase = text.trim();
    const many =
      /s$/.test(phrase) && /(ins|taps|laterals|tions|wyes|tees|branches|cracks)$/.test(phrase);
    return [phrase, { kind, fault: null, fitting: "unknown", many, ...STANDARD, ...more }];
  });
}

const fault = (name: Fault, phrases: string) => entries("fault", phrases, { fault: name });
const fitting = (name: Fitting, phrases: string) => entries("tie-in", phrases, { fitting: name });

/** By themselves these name something else, or stand elsewhere. */
const NOUNS: ReadonlySet<string> = new Set([
  "chip",
  "separate",
  "deform",
  "fracture",
  "flatten",
  "crush",
  "mash",
  "smash",
  "warp",
  "displace",
  "bubble",
  "bubbles",
]);

/** What a pipe does when it fails, whatever the tense: `it’s blistering`, `that’s crumbled`. */
const done = (name: Fault, stems: string) =>
  fault(
    name,
    stems
      .split(",")
      .flatMap((stem) => formsOf(stem.trim()).filter((form) => !NOUNS.has(form)))
      .join(","),
  );

/** The sewer in the street, by whose it is and what it is. */
const PUBLIC_SEWER = ["city", "street", "public", "sewer", "town", "county"]
  .flatMap((whose) =>
    ["main", "tap", "line", "sewer", "connection", "saddle", "pipe"].map(
      (what) => `${whose} ${what}`,
    ),
  )
  .concat(
    ["city", "street", "public"].flatMap((whose) =>
      ["six", "eight", "ten", "twelve", "6", "8", "10", "12"].map(
        (inches) => `${whose} ${inches} inch`,
      ),
    ),
  )
  .filter((words) => !/^sewer (line|pipe|sewer|saddle)$/.test(words))
  .concat(["main saddle", "main wye", "main tee", "saddle on the main", "tap on the main"])
  .join(",");

/** What a pipe does that goes round: `it doglegs left`, `swinging to the right`. */
const GOES_ROUND = "swing hook bear veer curve bend turn sweep angle dogleg jog"
  .split(" ")
  .flatMap(formsOf)
  .flatMap((verb) =>
    ["left", "right"].flatMap((side) => [
      `${verb} ${side}`,
      `${verb} to the ${side}`,
      `${verb} off to the ${side}`,
    ]),
  )
  .filter((words) => !/^(turn|hook|angle|bend|swing|sweep) /.test(words))
  .join(",");

/** Words of the trade for what is seen in a pipe: plain talk, no association's codes. */
export const THING_WORDS: readonly Entry[] = [
  ...entries("main", PUBLIC_SEWER),
  ...entries(
    "tie-in",
    "tie in, tie ins, tap, taps, first lateral, second lateral, third lateral, side lateral, house lead, side connection, branch line, side line, stub out, tie into, pipe coming in, line coming in, feeder, house line, line comes in, pipe comes in, line ties in, neighbor line, side pipe, takeoff, takeoffs, side lead, branch lead, sewer lead, dead lead, stub in, reinstated opening, reinstatement, reinstated tap",
  ),
  ...entries(
    "tie-in",
    "as the lateral, lateral, laterals, connection, connections, branch, branches, service, services, stub, stubs, inlet, inlets, lead, spur, spurs, opening, openings",
    { weak: true },
  ),
  ...entries(
    "tie-in",
    "tapped in, tapped into, taps in, teed in, tied in, ties in, tying in, hooked in, somebody tied in, tied into, coming in from the side, comes in from the side",
    { describes: true },
  ),
  ...fitting(
    "wye",
    "wye, wyes, y, why branch, wye connection, wye branch, double wye, capped wye, wye fitting, y branch, y fitting, factory wye, y connection",
  ),
  ...fitting(
    "tee",
    "tee, tees, t, tee connection, tee fitting, sanitary tee, t connection, san tee, tap tee, factory tee",
  ),
  ...fitting("saddle", "saddle, saddles, saddle tap, saddle connection, saddle tee, saddle wye"),
  ...entries("tie-in", "saddled in, saddled on", { fitting: "saddle", describes: true }),
  ...fitting(
    "break-in",
    "break in, hammer tap, broken in tap, break in tap, break in connection, hammered in tap, hammer tapped, hammer tapped in",
  ),
  ...entries(
    "tie-in",
    "hammer in, hammered in, broke in, broken in, broke it in, broken it in, punched it in, knocked it in, punched in, just punched in, knocked in, busted in, busted into, broken into, broke into, cut in, cut into, chiseled in, jammed in, knocked a hole in, knocked a hole, shoved a pipe in, shoved a pipe, punch in, stabbed in, chopped in",
    { fitting: "break-in", describes: true },
  ),
  ...fault(
    "crack",
    "crack, cracks, cracked, cracking, hairline, hairlines, hairline crack, hairline cracks, fracture, fractures, fractured, split, spider crack, spider cracks, spiderweb cracks, longitudinal crack, circumferential crack, spider webbing",
  ),
  ...fault(
    "broken",
    "break in the pipe, break in the line, break in your pipe, break in your line, break in this pipe, break in the wall, break in the clay, broken, broke, busted, busted up, shattered, chunk out, broken pipe, break, broken up, chip, chips, chipped, busted pipe, broken out, busted out",
  ),
  ...fault(
    "hole",
    "hole, holes, dirt falling in, dirt is falling in, soil falling in, see dirt, see the rocks, see rocks, see gravel, see the gravel, seeing dirt, see the dirt, void, hole in the pipe, see soil, see bedding, looking at dirt, bare dirt, daylight",
  ),
  ...fault(
    "offset-joint",
    "offset, offsets, offset joint, offset joints, joint offset, dropped joint, joint is offset, joints are offset, joint is off, shifted joint, misaligned joint, step in the joint, drop joint, dropped, slipped joint, lip, shear, sheared, kicked over, off set, a step down, a step up, a step in, a little step, ledge",
  ),
  ...fault(
    "open-joint",
    "open joint, open joints, separated joint, pulled apart, gap in the joint, gapped joint, separation, separated, gap at the joint, wide joint, pulled joint, gasket hanging, gap",
  ),
  ...fault(
    "roots",
    "root, roots, root ball, root mass, root wad, roots coming in, tree roots, fine roots, hair roots, root hairs, root whiskers, whiskers, rooty, root intrusion, feeder roots, heavy roots, root curtain, some roots, little roots, light roots",
  ),
  ...fault(
    "belly",
    "belly, bellied, sag, sags, sagging, low spot, swag, dip, dips, swale, bellies, back fall, backfall, pipe holds water, back pitch, back pitched, lays flat, lies flat, laying flat, lying flat, no fall, no grade, no slope, loses its fall, negative grade, negative slope, reverse grade, reverse slope",
  ),
  ...fault(
    "deformed",
    "deformed, egg shaped, out of round, oval, ovaled, ovalled, squashed, squished, flattened, crushed, pinched, deflected, egged, mashed, blistered, smashed flat, mashed flat, egged out, go flat, going flat, gone flat, went flat, flattening, flattened out, flat spot, flat spots",
  ),
  ...fault(
    "collapsed",
    "collapsed, collapse, caved, caved in, cave in, fallen in, fell in, falling in, caving in, collapsing",
  ),
  ...fault(
    "infiltration",
    "infiltration, infiltrating, dripping, drip, seeping, seep, water coming in, weeping, leaking in, leaks, ground water, groundwater, water dripping, water running in, leak, leaking, water pouring in, drips, weeper, clear water coming in, water squirting in",
  ),
  ...fault(
    "protruding-tie-in",
    "protruding, protrudes, sticking in, sticks in, pokes in, poking in, intruding, intrudes, sticking out into, sticking into the pipe, sticking out, sticks out, pokes out, poking out, stuck in too far, shoved in too far, stabbed in too far, hanging out into, sticking into, pokes into, pushed in too far, protruding tap, protruding lateral",
  ),
  ...fault(
    "worn-surface",
    "worn, worn out, wear, surface wear, invert wear, eroded, bottom gone, bottom is gone, bottom rotted, rotted out, rotten, channeling, channeled, channel rot, pitted, pitting, corroded, corrosion, rusted out, rusted through, rusted clean through, rusted clear through, rusted right through, eaten through, eaten clean through, eaten clear through, rotted through, rotted clean through, rotted clear through, bottom rusted out, bottom eaten out, eaten away, eaten up, bottom worn out, bottom is rotted out, bottom rotted out, no bottom, rotted, gone on the bottom, bottom is eaten out, rough on the bottom, rough bottom, bottom is rough, rough on bottom, bottom et out, et out, bottom is pretty rough, bottom rough, scoured",
  ),
  ...done(
    "deformed",
    "pinch, blister, squat, flatten, squash, squish, deform, buckle, deflect, mash, crush, warp, kink, bubble, dent, bulge, ovalize",
  ),
  ...done("broken", "shatter, crumble, splinter, chip, smash"),
  ...done("crack", "fracture"),
  ...fault(
    "offset-joint",
    "misalignment, misaligned, mis aligned, displacement, displaced, displaced joint, joint displacement, vertical offset, horizontal offset, a shelf, little shelf, stepped joint, uneven joint",
  ),
  ...fault(
    "roots",
    "rootlet, rootlets, tap root, tap roots, fuzzies, fuzz, hairy roots, root growth, root beard, root infestation, root strands, root fibers, root blockage",
  ),
  ...fault(
    "belly",
    "low place, back graded, back grade, bow in it, bow in the pipe, flat grade, reverse fall",
  ),
  ...fault(
    "crack",
    "spiderwebbed, spiderwebbing, spiderweb, spidered, crack line, fracture line, hairline fracture",
  ),
  ...fault(
    "worn-surface",
    "pitting, spall, deterioration, invert gone, invert is gone, rotted bottom, rusted bottom",
  ),
  ...fault(
    "broken",
    ["broke", "broken", "busted", "snapped", "cracked", "split"]
      .flatMap((how) =>
        ["half", "two", "three", "pieces", "several pieces"].map((what) => `${how} in ${what}`),
      )
      .join(","),
  ),
  ...fault("broken", "in pieces, smashed up, pcs of pipe, broken bell, pieces of pipe, fragments"),
  ...done("collapsed", "collapse"),
  ...done("worn-surface", "corrode, erode, scour, spall, deteriorate"),
  ...done("open-joint", "separate"),
  ...done("infiltration", "seep, weep, drip, infiltrate"),
  ...done("belly", "sag"),
  ...done("protruding-tie-in", "protrude, intrude"),
  ...done("offset-joint", "misalign, displace"),
  ...entries(
    "water",
    "in the drink, into the drink, under water, underwater, standing water, water, submerged, half full of water, full of water, dipping under, dips under, camera under, holding water, ponding, pooled, ponded, lens under, head under, goes under, went under, going under, hold water, holds water, puddle, swimming, dunked, we are under, lens is under, camera is under, head is under, under the water",
  ),
  ...entries(
    "deposit",
    "grease, greasy, sludge, debris, silt, sand, mud, scale, scaly, scaled, scaled up, buildup, build up, sediment, gravel, paper, wipes, soap, muck, gunk, crud, rocks, rock, dirt in the bottom, toilet paper, rags, tuberculation, tuberculated, rust buildup, grease buildup, scale buildup, mineral deposit, mineral deposits, deposit, deposits, grit, mud in the bottom, encrustation, mineral buildup, calcium, lime, minerals, mineral stuff, fat, debris in the bottom",
  ),
  ...entries(
    "blockage",
    "blockage, blocked, blocked off, plugged, plugged up, obstruction, obstructed, stopped up, clogged, clogged up, clog, stoppage, solid plug, plug, can't get past, cannot get past, can't get by, can't push past, won't go any further, can't go any further, can't get through, cannot get through, can't get any further, can't push through, jammed up, won't go through, brick, wall of dirt, wall of roots, wall of mud, wall of clay",
  ),
  ...entries(
    "bend",
    `${GOES_ROUND}, takes a turn, took a turn, bend, bends, elbow, sweep, long sweep, curve, turn to the left, turn to the right, elbows, dogleg, doglegs, gentle turn, slight turn, easy turn, sharp turn, hard turn, turn in it, turn in the pipe, turn in the line, takes a turn, hard left, hard right, jog, jogs, turns down, turns up, drop fitting`,
  ),
  ...entries(
    "cleanout",
    "cleanout, cleanouts, clean out, clean outs, co, clean out riser, cleanout riser, riser, stack, cleanout tee, cleanout wye, two way, two way cleanout, two way clean out, double cleanout, double clean out, clean out tee, clean out wye",
  ),
  ...entries(
    "crossing",
    "crossing the pipe, cross bore, crossbore, bored through, running through the pipe, going through the pipe, goes through the pipe, conduit through, gas line through, through the middle of the pipe, pipe through the pipe, right through our pipe, through our pipe, straight through the pipe, straight through our pipe, straight through your pipe, conduit, gas line, gas pipe, crosses the pipe, utility through, right through the pipe, drilled through",
  ),
  ...entries(
    "main",
    "the main connection, at the main connection, in the main connection, main, the main, main connection, connection at the main, main tap, tap at the main, wye at the main, the main at the saddle, the main at the wye, the main at the tee, saddle at the main, tee at the main, at the main, that's the city, there's the city, here's the city, this is the city, city at, the big pipe, that's the big pipe, in the main, into the main, main line, trunk sewer",
  ),
];

const MATERIAL_PHRASES: readonly (readonly [Material, string])[] = [
  [
    "vitrified-clay",
    "clay, vcp, vitrified clay, terracotta, terra cotta, tile, clay tile, clay pipe, vc, vitrified, terracotta pipe, tile pipe, red clay pipe",
  ],
  ["concrete", "concrete, concrete pipe, cement pipe, rcp, cement"],
  ["cast-iron", "cast iron, cast, ci, iron, cast iron pipe, iron pipe, old iron"],
  ["ductile-iron", "ductile, ductile iron, dip pipe, ductile iron pipe"],
  [
    "pvc",
    "pvc, plastic, schedule forty, schedule 40, sdr, sdr thirty five, sdr 35, green pipe, white plastic, green plastic, plastic pipe, pvc pipe, sdr35, p v c, thirty five thirty four, white pipe",
  ],
  ["abs", "abs, black plastic, abs pipe, a b s"],
  [
    "polyethylene",
    "polyethylene, hdpe, poly, burst pipe, poly pipe, hdpe pipe, pe pipe, fused pipe",
  ],
  [
    "bituminous-fibre",
    "orangeburg, orange burg, orangeberg, fiber pipe, bituminous fiber, tar paper pipe, tar paper, fibre pipe, orangeburg pipe",
  ],
  ["asbestos-cement", "transite, asbestos cement, asbestos, ac pipe, transite pipe"],
  [
    "cured-in-place-liner",
    "liner, lined, cured in place, cipp, lining, lined pipe, cured in place liner, cured in place pipe, a liner",
  ],
];

/** Each word for a material, as it is said, with the material. */
export const MATERIAL_WORDS_SPOKEN: readonly (readonly [string, Material])[] =
  MATERIAL_PHRASES.flatMap(([material, phrases]) =>
    phrases.split(",").map((phrase): [string, Material] => [phrase.trim(), material]),
  );

/** One thing, plainly named. */
export const PLAIN_THING: Omit<Thing, "kind"> = {
  fault: null,
  fitting: "unknown",
  many: false,
  ...STANDARD,
};

/** A bend, with nothing else told of it. */
export const BEND: Thing = { ...PLAIN_THING, kind: "bend" };

/** Fittings that are named by their angle: `a forty-five`. */
export const BEND_ANGLES: ReadonlySet<number> = new Set([22, 23, 30, 45, 60, 90]);
