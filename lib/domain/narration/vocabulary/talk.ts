/** What a phrase does to the things and distances around it. */
const TURNS = [
  "hedge",
  "negation",
  "correction",
  "scratch",
  "change",
  "opens",
  "closes",
  "expected",
  "beyond",
  "short-of",
  "another",
  "same",
  "here",
  "self",
  "record",
  "record-comment",
  "unseen",
  "unrecorded",
  "follows",
  "in-pipe",
  "nothing",
] as const;
export type Turn = (typeof TURNS)[number];

/** What shows the pipe, and the ways in which it stops showing it. */
const PICTURE = ["picture", "screen", "video", "signal", "image", "feed", "camera"];
const UNSEEN = PICTURE.flatMap((what) => [
  ...[
    "froze",
    "went black",
    "went out",
    "went dark",
    "cut out",
    "dropped out",
    "is gone",
    "is out",
    "quit",
  ].map((fails) => `${what} ${fails}`),
  ...["lost the", "lost my", "lost", "no"].map((lost) => `${lost} ${what}`),
])
  .filter((words) => !/^(lost|no) camera$/.test(words))
  .join(", ");
const NOT_SEEN = [
  "can't see",
  "cannot see",
  "couldn't see",
  "could not see",
  "didn't see",
  "ain't seen",
  "haven't seen",
]
  .flatMap((not) => ["anything", "nothing", "a thing"].map((what) => `${not} ${what}`))
  .join(", ");
const UNRECORDED = [
  "nothing",
  "not",
  "wasn't",
  "isn't",
  "didn't get",
  "nothing was",
  "nothing got",
  "none of that",
]
  .flatMap((not) => [`${not} recorded`, `${not} recording`])
  .join(", ");

const PHRASES: Readonly<Record<Turn, string>> = {
  hedge:
    "maybe, might be, could be, looks like, look like, looks to be, what looks like, i think, i guess, kind of, kinda, sort of, probably, possibly, seems like, seems to be, appears to be, appears, not sure, not real sure, can't tell, can't really tell, cannot tell, hard to tell, hard to see, hard to say, pretty sure, i believe, i reckon, reckon, i want to say, perhaps, some kind of, some sort of, not certain, don't know if, if i had to guess, my guess, i'd say, i would say, can't say for sure, might have been, fixing to be, i suppose, may be, not positive, i figure, not a hundred percent, could have been, best guess, not too sure, looks kind of like, looked like, i'm guessing, guessing",
  negation:
    "no, not, hasn't, haven't, hadn't, nobody, no one, nobody's, don't see, don't see any, didn't see, didn't see any, not seeing, not seeing any, never saw, without, without any, isn't, is not, isn't any, aren't, ain't, ain't no, nothing, no sign of, free of, clear of, none, nope on, no more, haven't seen, don't have, no evidence of, wasn't, didn't find, not a, not an, not any, never, don't have any, didn't have any, can't see any, cannot see a, can't see a, can't see an, couldn't see any, couldn't see a, couldn't see an, wouldn't call it, wouldn't call that, doesn't look like, don't look like, didn't look like, doesn't seem, don't seem, doesn't appear, doesn't have, thought it was, thought that was, thought this was, thought there was, thought we had",
  correction:
    "no wait, wait no, no no, sorry, i mean, correction, make that, excuse me, or rather, rather, no sorry, sorry no, more like, well more like, more like it's, no i said it wrong, wait, hang on, hold on, my bad, no make that, no i mean, i'm sorry, actually, check that, let me correct that, i misspoke, i meant, no i lied, well no, pardon me, actually no, no actually, no that's, no it's, no that is, no make it, shoot no, i lied",
  scratch:
    "scratch that, strike that, never mind, nevermind, ignore that, forget that, disregard, disregard that, forget i said that, forget what i said, ignore what i said, scratch what i said, disregard what i said, strike what i said, forget that number, scratch that number, scratch the last, take that back, false alarm",
  change:
    "changes, change, changes to, changes over, changes over to, change to, changed to, switches, switches to, switch to, switching to, transition, transitions, transitions to, transition to, goes to, goes into, turns into, turns to, going to, becomes, going into, into, changing to, transitioning to, now we're in, picks up, change of material, material change, changing over to, spliced in, replaced with, replaced it with, replaced this with, swapped for, went to, go to, gone to, gone into, gone over to, gone from, went from, goes from, changes from, change from, it goes from, transitions from, transition from, switches from, back to, back into, coming into, coming out of, comes into, entering",
  opens:
    "starts, starting, start, begins, beginning, starting at, starts at, starts getting, just starting, here comes, starting to, going under, goes under, went under, heading into, get into, getting into, dropping into, dips into, started",
  closes:
    "out of the, ends, ends at, comes back up, come back up, coming up out of, comes up out of, coming up out of the, up out of the, run to, they run to, coming out of the, stops, stop, quits, all the way to, until, till, through to, back out, out the other side, ended, runs to, runs on to, goes on to, goes to about, and out at, on out to, up out of, down to about, extends to, carries on to, runs clear to, goes clear to, coming back up, comes out, popped up, pop up, pops up, come up, came up, came back up, lets go, let go, drains out, come out, came out, out the far side, quit, ends up",
  expected:
    "should be, supposed to be, looking for, expecting, expected, if there's, if there is, if it, if we, would be, we'll, we will, gonna need, going to need, need to, needs, recommend, have to, watch for, watching for, homeowner says, homeowner said, they said, they say, i'd be, they paid, he paid, she paid, would expect, you'd expect, customer said, customer says, owner says, owner said, told me, used to be, says there's, said there's, you can, we can, i can, i'd dig, dig, we'd, want to, keep an eye, trying to find, hoping, in case, used to, last time, plan on, i'll, let's, going to have to, so we don't, anything else, if you, ought to be, call for, looking out for, haven't hit, haven't got to, haven't reached, before we hit, before we get to, till we hit, until we hit, until we get to, headed for, heading for, heading to, headed to, on the way to, next job, yesterday, other job, last job, on the last one, i want, would've been, for the, gonna have to, to get to, get a locate",
  beyond:
    "past the, past that, just past the, right past the, beyond the, after the, after that, past this, right after the, just after the, just beyond the, upstream of the, other side of the, past it, just past that, right past that, on past the, past your, next to the, next to that, right next to, by the, beside the, behind the, behind that",
  "short-of":
    "between there and the, between here and the, between that and the, before the, just before the, right before the, short of the, just short of the, ahead of the, in front of the, this side of the, downstream of the, before that, right before that, just before that, ahead of that",
  another:
    "another, another one, second, third, a second, a second one, a third one, second one, third one, one more, next, a third, fourth, other, across from, opposite, a new, different, new one, one on each side",
  same: "that same, same one, same, again, that one, this one, as i said, like i said, i said, i called, back at, the one at, the one i called, that was the, the other one, said earlier, that last one, the last one, saw before, i told you about, mentioned, we saw, coming back to, back at the, back by the, and there's that, there's that, there goes that, there goes the",
  here: "right here, here, there, right there, same spot, same place, at the same spot, same footage, too, as well, also, right on it, at that spot, in there, on it, in it, on that, at it, with it, alongside",
  self: "you see the, you see a, you see some, i've got, i got, i have, we've got, we got, i see, i'm seeing, i'm at, we're at, we are at, but, you can see, we can see, i can see a, i can see an, i can see dirt, i can see the dirt, i can see soil, i can see ground, i can see rock, i can see gravel, i can see some, i can see where, i can see that, you could see, you can tell, we can tell, i can tell, i show, i find, i'm showing, we show, i read, i'm reading, camera shows, camera says, counter says, i'm getting, we have, it's actually, there it is, i make it, i get",
  record:
    "it shows, i was told, the card, card, cards, city card, record, records, record card, the record, permit, as built, as builts, the drawing, drawing, the map, map, sketch, the city shows, city shows, city records, plan, plans, paperwork, the city has, gis, the sheet, my sheet, the town book, the plat, blueprint, side sewer card, tap card, city has, town has, county has, city's got, town's got, county's got, got it down as, has it down as, have it down as, had it down as, the paper says, the paper say, the paper at the, on paper",
  "record-comment":
    "not supposed to be here, not supposed to be there, isn't supposed to be here, isn't supposed to be there, ain't supposed to be here, ain't supposed to be there, shouldn't be here, shouldn't be there, shouldn't be one here, no business being here, doesn't belong here, don't belong here, on the card, on the record, on my card, on the drawing, on the permit, on the map, on record, matches the card, match the card, matches the record, agrees with the card, agrees with the record, per the card, in the records, in the record, on that card, on the plan, on the sketch, not on card, negative on card, on card, not on permit, not on record card, not on record, no permit, a permit for, pull a permit, pulled a permit, never pulled a permit, nobody told us about, isn't on the permit, not on the card, isn't on the card, ain't on the card, not on the record, isn't on the record, not on the drawing, not on the map, not on record, nothing on the card, no record of, card doesn't show, record doesn't show, card doesn't have, not on my card, isn't on any, not on any, don't have that on the card, not on that card, ain't on no card, ain't on that card, card don't show, never permitted, wasn't on the card, doesn't show on the card, no record, not in the records, same as the card, just like the card, like the card says, where the card says, card has it, card shows it, card's right, card is right, off the card, on the tap card, not on the tap card, on the paperwork, that's on there, that's not on there, isn't on there, not on there, on the as built, not on the as built, on the city card, not on the city card, close to the card, doesn't match the card, don't match the card, that one is on the card, not on the permit, isn't on the permit, card shows nothing, card calls, not on their card, on their card",
  unseen: `${UNSEEN}, nothing on screen, nothing on the screen, nothing on the monitor, can't see squat, don't see squat, can't see, cannot see, couldn't see, couldnt see, cant see, could not see, ain't see, ${NOT_SEEN}, no visibility, can't make anything out, fogged up, fogged over, foggy, lens is dirty, lens is covered, mud on the lens, grease on the lens, blind, camera is blind, blacked out, lights went out, lost visual`,
  unrecorded: `${UNRECORDED}, forgot to record, recording stopped, didn't record, recorder was off, no recording, recording cut out`,
  follows:
    "that was at, that is at, that's at, that's going to be at, that'll be at, which is at, which was at, call that, call it, that was, counter says, counter reads, footage is, we're at, reading, i'm at, that put that at, that puts it at, that puts us at, and that's at, and that is, on the counter, counter is, counter is at, counter at, so that's, so that was, and that was, and that was at, that one was at, that one is at, it's at, it was at, says",
  "in-pipe":
    "we're in, we are in, we in, still in, still, back in, now in, i'm in, we're back in, sitting in, it's still",
  nothing:
    "see squat, seen squat, know squat, do squat, diddly squat, ain't squat, worth squat, gas co, power co, electric co, phone co, cable co, let's see, let me see, we'll see, let us see, let's say, for the first, for the last, shear band, shear coupling, in service, tap water, this lateral, the lateral, our lateral, shared lateral, whole lateral, side sewer lateral, the service, good connection, lateral is, service life, life of service, ran water, running water, run water, running some water, water running, been cut, were cut, got cut, was cut, cut last, cut them, cut back, cut out the, basically paper, pulled paper, pull paper, water coming out of it, water coming out of that, water coming out of there, water coming from it, water coming from there, like paper, as paper, water running from, turned the water on, water heater, the water is running, the water is on, water on, water main, water meter, water line, water service, grease trap, root cutter, the tile floor, gas main, crack of dawn, coffee break, break for lunch, take a break, taking a break, took a break, lunch break, clean pipe, clean joint, good joint, lip of the cleanout, lip of the, mouth of the, the main trap, the main thing, in the main house, mainly, hold on a sec, one second, no problem, no big deal, no worries, all right, alright, turned right, right now, right on, right along, not bad, not too bad, not much, no doubt, not long, no rush, no good, not going to, not gonna, not really, connection to the monitor, connection to the reel, broke for, on the way in, water in the tee, sewer service, drain service, customer service, slip on, drop the camera, dropped the camera, dropped off, drop off, dropped my, drop in, dropped in, cracked a joke, cracked me up, cracks me up, he cracked up, she cracked up, they cracked up, iron out, no kidding, no clue, no idea, paper towels, cut out, plugged in, plug in, plug it, no way, no longer, not yet, not quite, not in there, not there yet, not there, cleanout cap, cleanout plug, the cap, clear the lens, wipe the lens, dip the camera, dip tube, brick house, brick building, in the connection, water off, shut the water, flush, flushing, flushed",
};

/** Each phrase that turns a talk, with the way it turns it. */
export const TURN_WORDS: readonly (readonly [string, Turn])[] = TURNS.flatMap((turn) =>
  PHRASES[turn].split(",").map((phrase): [string, Turn] => [phrase.trim(), turn]),
);
