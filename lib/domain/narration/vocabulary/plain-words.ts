/** Small words of any sentence, and what cameras do; nothing that names a person, a place or a thing. */
const PLAIN = new Set(
  `a an the this that these those it its it's there there's here here's i i'm i'll i've i'd me we we're we'll we've we'd
   you you're you've you'll you'd my our your she she's her
   is are was were be been being am isn't has have had do does did got get gets getting will would 'll that's that'll that'd it'll what's what
   and or but so then than as because cause since though if when where which once again too also still yet just only now not even
   at in on of to from for by with about around near past over under up down out off into onto through between behind before after until till along across toward towards beside below above inside back
   hey whoa boom man guys folks dude sir ma'am buddy yessir huh ha hmm wow gotcha
   okay ok alright right well uh um oh yeah yep yes so see look looks looking like maybe probably roughly exactly approximately almost nearly pretty little bit touch hair shy dead say called make mark note log write put puts read reads reading give gives take takes hit hits hitting reach reached pass passed passing
   go goes going gone gonna went come comes coming came anyway anyhow thereabouts thereabout ish or so they keep keeps keeping quit quits clears cleans picks ties tied sags widens move moves moving moved stop stops stopped start starts starting begin begins beginning end ends ending pull pulling pulled push pushing pushed approach approaching sit sitting stand standing turn turns turning change changes changing continue continuing run running land lands
   counter footage showing shows feet foot ft tenth tenths camera number counting distance spot place point
   pipe line lateral side left right top bottom hand wall crown invert flow joint hub bell end main house cleanout access street upstream downstream
   first second third last next another other one two both more most all any some each every same
   no nope nah oops whoops wait sorry mean meant lied misread wrong actually scratch strike correction did
   heavy high dry rough smooth clean gone done steady solid
   big small bad worse worst good clear open long short deep depth half quarter quarters
   es el la los las en de y aqui ya con un una
   let let's him them something somewhere somebody someone somebody's someone's everything nothing thing
   bunch ton couple piece chunk spot section stick segment length coupling kind sort full drop drops dropping broke breaks enter enters entering calling show shows showing seeing much them em us whole
   s ' @ # & + -`.split(/\s+/),
);

/** Nothing strange beside a footage. */
export function isPlain(text: string): boolean {
  return PLAIN.has(text) || PLAIN.has(text.replace(/[.,]$/, ""));
}
