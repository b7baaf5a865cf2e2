import type { ScopeKind } from "../facts/scope.ts";
import type { Cft } from "../length/station.ts";
import { plainFeet } from "../length/station.ts";
import { letterDay, letterTime, letterWeekday } from "../time/letter-day.ts";

function feet(length: Cft): string {
  return `${plainFeet(length)} ft`;
}

function stretch(from: Cft, to: Cft): string {
  return `${plainFeet(from)} to ${plainFeet(to)} ft`;
}

function count(many: number, one: string, several: string): string {
  return `${many} ${many === 1 ? one : several}`;
}

/**
 * Every standing word of a letter in English. The Spanish catalogue has the same shape,
 * so that a sentence that is missing there does not compile.
 */
export const EN = {
  day: (day: string) => letterDay(day, "en"),
  onDay: (day: string) => letterDay(day, "en"),
  weekday: (day: string) => letterWeekday(day, "en"),
  feet,
  stretch,
  list: (names: readonly string[]) =>
    names.length < 2
      ? names.join("")
      : `${names.slice(0, -1).join(", ")}${names.length > 2 ? "," : ""} and ${names.at(-1)}`,
  time: (time: string) => letterTime(time, "en"),
  span: (from: string, to: string) => `${letterTime(from, "en")} to ${letterTime(to, "en")}`,
  moment: (day: string, time: string) =>
    time === "" ? letterDay(day, "en") : `${letterDay(day, "en")}, ${letterTime(time, "en")}`,
  openDays: {
    "every-day": "every day",
    "monday-to-friday": "Monday to Friday",
    "monday-to-saturday": "Monday to Saturday",
  },
  phoneAt: (number: string, hours: string) => (hours === "" ? number : `${number}, ${hours}`),
  dayAndNight: "Phone, day and night",
  onCall: "On-call phone",
  unknown: "unknown",
  notSet: "not yet set; we will tell you",
  inches: (inches: number) => `${inches} in`,
  /** A station with how far off it may be. */
  about: (station: Cft, off: Cft) =>
    off === 0 ? feet(station) : `${feet(station)} ± ${feet(off)}`,
  /** The shared pipe, by what is known of it and the reader's place. */
  pipe: {
    serves: (place: string) => `the private sewer pipe that serves ${place}`,
    "may-serve": (place: string) => `a private sewer pipe that may serve ${place}`,
    crosses: (place: string) => `a private sewer pipe that crosses the lot of ${place}`,
    near: (place: string) => `a private sewer pipe near ${place}`,
  },
  /** A piece of work as the office calls it. */
  workTitle: (title: string, _kind: ScopeKind) => title,

  frame: {
    date: "Date",
    reference: "Reference",
    answerBy: "Please answer by",
    greeting: (name: string, _isPerson: boolean) => `Dear ${name}:`,
    closing: "Sincerely,",
    page: (page: number, of: number) => `Page ${page} of ${of}`,
    licence: (number: string) => `Contractor license ${number}`,
    telephone: "Phone",
    email: "Email",
    forOffice: (by: string, office: string) => `${by}, for ${office}`,
    slipTitle: "Your answer",
    slipCut: "Cut here and send this part back, or tell us the same by phone or email.",
    slipBy: (day: string) => `Please answer by ${day}.`,
    slipTo: "Send to",
    slipAbout: "About",
    slipName: "Name",
    slipSignature: "Signature, as owner / tenant / for:",
    slipDate: "Date",
    slipPhone: "Phone",
    slipNote: "What else we should know",
    notToScale: "Lengths are in proportion; the drawing is not to a printed scale.",
    drawnAs: "In words",
  },

  title: {
    finding: "What the camera found in a shared sewer pipe",
    "tie-in-inquiry": "A question about a sewer connection",
    "test-visit": "A visit to test which drain goes where",
    "proposed-split": "Proposed sharing of the cost of work on the shared sewer",
    "entry-consent": "Request to enter and to dig",
    "joint-agreement": "Agreement on the shared sewer",
    "work-start": "Work on the shared sewer is about to start",
    "drain-pause": "Do not use your drains",
    spill: "Sewage spill: please keep away",
    "share-demand": "Request to pay your share",
    "authority-response": "Answer on the shared private sewer",
    "close-out": "Closing papers on the shared sewer",
  },
  subject: (title: string, place: string) => (place === "" ? title : `${title}: ${place}`),

  material: {
    "vitrified-clay": "clay",
    concrete: "concrete",
    "cast-iron": "cast iron",
    "ductile-iron": "ductile iron",
    pvc: "PVC",
    abs: "ABS",
    polyethylene: "polyethylene",
    "bituminous-fibre": "bituminous fiber",
    "asbestos-cement": "asbestos cement",
    "cured-in-place-liner": "liner",
    unknown: "material unknown",
  },
  fault: {
    crack: "a crack",
    broken: "broken pipe",
    hole: "a hole",
    "offset-joint": "a joint out of line",
    "open-joint": "an open joint",
    roots: "roots",
    belly: "a low place that holds water",
    deformed: "pipe out of shape",
    collapsed: "collapsed pipe",
    infiltration: "water coming in",
    "protruding-tie-in": "a connection that sticks into the pipe",
    "worn-surface": "worn pipe wall",
  },
  side: {
    left: "on the left if you look upstream, away from the public main",
    right: "on the right if you look upstream, away from the public main",
    crown: "at the top of the pipe",
    unknown: "side not known",
  },
  sideShort: { left: "left", right: "right", crown: "above", unknown: "unknown" },
  compass: {
    north: "north",
    northeast: "northeast",
    east: "east",
    southeast: "southeast",
    south: "south",
    southwest: "southwest",
    west: "west",
    northwest: "northwest",
  },
  /** Of a wind. */
  onSide: (compass: string) => `on the ${compass} side of the pipe`,
  shortSide: (compass: string) => `${compass} side`,
  toward: (side: string, what: string) => `${side}, toward ${what}`,
  yourBuilding: (name: string) => `your ${name || "building"}`,
  buildingAt: (place: string) => `the building at ${place}`,
  standing: {
    "on-record-and-seen": "on record and seen",
    "on-record-seen-elsewhere": "on record, seen at another place",
    "on-record-not-seen": "on record, not seen",
    "on-record-not-inspected": "on record; the camera did not get there",
    "on-record-place-unclear": "on record; where in the pipe is not clear",
    undocumented: "seen, not on record",
    "accepted-by-ruling": "not on record, accepted by the authority",
    inactive: "not in use, as tested",
    "not-a-sanitary-branch": "not a building’s sewer connection",
  },
  coverage: {
    "under-water": "under water",
    blocked: "blocked",
    "not-in-view": "out of the camera’s view",
    "not-recorded": "not recorded",
    "not-inspected": "not inspected",
  },
  holder: {
    owners: "the owners who use it",
    authority: "the sewer authority",
    unclear: "not clear",
  },
  rule: {
    equal: {
      title: "Equal parts",
      sentence: "Every connected property pays the same.",
    },
    "per-unit": {
      title: "By dwellings and businesses",
      sentence: "Every dwelling and every business on the line counts once.",
    },
    "portion-used": {
      title: "By the part of the pipe that each one uses",
      sentence:
        "The cost of each foot of pipe is shared equally among the properties whose sewage passes there.",
    },
    "upstream-of-fault": {
      title: "Those upstream of the fault",
      sentence: "The properties whose sewage passes the fault pay in equal parts.",
    },
    "reach-owner": {
      title: "Whoever is responsible for each stretch",
      sentence:
        "Each stretch is paid by the owners who are responsible for it under the rule named here.",
    },
    weights: {
      title: "By an agreed measure",
      sentence: "The cost is shared in proportion to the measure entered for each property.",
    },
    "recorded-shares": {
      title: "By the recorded agreement",
      sentence: "The cost is shared in the parts that the recorded agreement names.",
    },
    "single-payer": {
      title: "One payer",
      sentence: "One property pays for the work.",
    },
  },

  strip: {
    finding:
      "The pipe as the camera saw it. The public main is at the left; feet are counted from there.",
    one: "Where the connection in question joins the shared pipe.",
    yours: "The shared pipe. The band shows where the sewage of your property passes.",
    work: "Where the work is to be done.",
    lot: "Where the pipe crosses your lot, and where the work is to be done.",
    done: "The pipe as the camera saw it before the work, with the work marked.",
    title: "Strip drawing of the shared pipe",
    main: "Public main",
    upperEnd: "Upper end",
    you: "your connection",
    notKnown: "owner not yet known",
    nobody: "no building",
    onRecord: (label: string) => `Record: ${label}`,
    noRecord: "no record found",
    asked: "asked about here",
    seen: "Seen by the camera",
    seenYes: "seen",
    pipe: "Pipe",
    passes: "Your sewage passes here",
    passesYes: "yes",
    passesNo: "no",
    work_: "Work",
    crossing: "Your lot",
    crossed: "pipe crosses",
    boundary: {
      "right-of-way-line": "Right-of-way line",
      curb: "Curb",
      "property-line": "Property line",
      cleanout: "Cleanout",
      foundation: "Foundation",
      manhole: "Manhole",
      "easement-edge": "Edge of easement",
    },
    at: (label: string, station: Cft) => `${label} at ${feet(station)}.`,
    over: (label: string, from: Cft, to: Cft) => `${label} from ${stretch(from, to)}.`,
    tieIn: (label: string, station: Cft, who: string) =>
      `${label} joins at ${feet(station)}: ${who}.`,
  },

  caution: {
    records: {
      title: "How far this can be relied on",
      text: (day: string) =>
        `Based on records and camera as of ${day}. Public records are not guaranteed to be accurate, and what is in the ground may differ.`,
    },
    proposal: {
      title: "A proposal, not a ruling",
      text: "This is a proposed sharing of cost. It is not a legal determination and not legal advice. It admits nothing and gives up no right, yours or ours. You may get advice of your own before you answer.",
    },
    drains: {
      title: "Do not use water or toilets during the stated time",
      text: "Sewage may back up into your own building, and it can run into the open trench where people work.",
    },
    gas: {
      title: "A gas pipe may run through a sewer",
      text: "Do not clear this line with cutting tools. If you smell gas, leave the building first, touch no switch and no phone there; then call 911 and the gas company.",
    },
    gasSeen: {
      title: "Something crosses this pipe",
      text: "The camera saw, or could not rule out, something that crosses the pipe. Nobody should clear it until the gas company has been asked.",
    },
    sewage: {
      title: "Sewage carries disease",
      text: "Keep children and pets away from sewage and from wet ground over the pipe. Wash hands after any contact.",
    },
    cap: {
      title: "Please do not cap or plug any drain yet",
      text: "Please do not cap, plug or line any branch of this pipe. Until a branch is proven dead, somebody’s sewage may depend on it.",
    },
    dye: {
      title: "About the dye",
      text: "The dye is non-toxic and made for drains. Some color may show in your toilet or sink for a short while. It can stain a light surface; rinse it off. A test that shows no color proves little; it may be repeated.",
    },
    smoke: {
      title: "If smoke is used",
      text: "Pour water into every floor drain and unused sink beforehand. Tell us at once if anybody there has asthma or lung disease: then no smoke is used. If you see smoke indoors, open windows and go outside.",
    },
    trench: {
      title: "Open trench",
      text: "Stay outside the barriers and keep children and pets away, also when nobody is at work. Trench walls can fall in without warning.",
    },
    enterOnly: {
      title: "What this consent is not",
      text: "Allowing us to enter or to dig is not an agreement to pay, and not a statement about who owns the pipe. This letter is not legal advice.",
    },
    official: {
      title: "Not legal advice",
      text: "This letter states facts and amounts as the office has them. It is not a legal determination and not legal advice. It admits nothing and gives up no right, yours or ours. You may get advice of your own.",
    },
  },

  picture: {
    caption: (label: string, where: string, day: string) =>
      `${label}, ${where}, as the camera saw it on ${day}`,
    alt: (caption: string) => `Picture from inside the pipe: ${caption}`,
  },

  finding: {
    opening: (office: string, days: string, pipe: string) =>
      `We are ${office}, a drain and sewer contractor. On ${days} our camera went through ${pipe}. This letter says what was seen and what is not yet known. It accuses nobody and asks for no money.`,
    openingNoRun: (office: string, pipe: string) =>
      `We are ${office}, a drain and sewer contractor. We are gathering the facts about ${pipe}. The camera has not been through it yet. This letter accuses nobody and asks for no money.`,
    connected: (place: string, where: string) =>
      `${place} drains into this pipe at ${where}, as far as is known today.`,
    connectedAt: (label: string, where: string) => `${label}, ${where}`,
    candidate: (place: string) =>
      `${place} lies along this pipe. Whether it drains into it is not yet known.`,
    crossed: (place: string) =>
      `The pipe crosses the lot of ${place}. Nothing seen so far shows that the building there uses it.`,
    neighbour: (place: string) => `${place} lies near this pipe.`,
    seen: "What was seen, when and by whom",
    runHead: ["Day", "By", "Camera went in at", "Feet on its counter"],
    runOpen: "to the end of the run",
    noRun: "No camera run is on file.",
    tieInHead: ["Mark", "Feet from the main", "Side", "Address", "Permit record and camera"],
    explained: (standing: string) => `${standing}; explained on file`,
    faults: "Along the way the camera saw:",
    noFaults: "No fault of the pipe is on the log.",
    faultLine: (fault: string, where: string) => `${where}: ${fault}`,
    relative: "at a place not yet tied to the main",
    blocked: (where: string) => `${where}: blocked; the camera could not go on`,
    stations:
      "Feet are measured along the pipe from the public main, the city’s pipe that it empties into, whichever way the camera went. Sides are as you look upstream, away from the main.",
    notKnown: "What is not yet known",
    undocumented: (labels: string, many: number) =>
      many === 1
        ? `We saw a connection, ${labels}, that is not on any permit record we have. We do not know whose it is.`
        : `We saw ${many} connections, ${labels}, that are not on any permit record we have. We do not know whose they are.`,
    notSeen: (labels: string, many: number) =>
      many === 1
        ? `The record shows a connection that the camera did not see: ${labels}.`
        : `The record shows connections that the camera did not see: ${labels}.`,
    notInspected: (labels: string, many: number) =>
      many === 1
        ? `The record shows a connection where the camera did not get to or could not see: ${labels}.`
        : `The record shows connections where the camera did not get to or could not see: ${labels}.`,
    placeUnclear: (labels: string, many: number) =>
      many === 1
        ? `The record shows a connection, and it is not clear yet where in the pipe that is: ${labels}.`
        : `The record shows connections, and it is not clear yet where in the pipe they are: ${labels}.`,
    undecided:
      "Some of the matches between the record and the video are our best guess. They still have to be confirmed.",
    gap: (where: string, why: string) =>
      `We do not know what the pipe is like from ${where}: ${why}.`,
    unclear: (where: string) => `It is not clear who is responsible for the pipe from ${where}.`,
    noBoundary: "Who is responsible for which stretch has not been worked out yet.",
    settled: "No open point is on file today. New facts may bring one up.",
    ask: "What we ask of you",
    asks: [
      "Look at the video with us; call or write, and we will show it to you.",
      "Send us any paper about the sewer: permits, plans, agreements, bills of earlier work.",
      "Tell us if somebody else owns or lives at this address, so that they hear of it too.",
    ],
    choices: [
      "I have read this letter.",
      "I would like to see the video.",
      "I have papers about this pipe.",
      "I see something differently; please call me.",
    ],
  },

  inquiry: {
    opening: (station: string, side: string) =>
      `Our camera saw a branch, ${station} from the city’s pipe, that joins the shared sewer pipe, ${side}. It is not on any permit record we have.`,
    openingUnplaced:
      "Our camera saw a branch that joins the shared sewer pipe at a place that is not yet measured from the main. It is not on any permit record we have.",
    why: (grounds: string) =>
      `We ask you because ${grounds}. The branch may also lead to another address. We do not say that it is yours.`,
    ground: {
      excavation: (place: string, day: string) =>
        `digging on ${day} showed that it leads to ${place}`,
      dye: (place: string, day: string) =>
        `dye put into a drain at ${place} came out of it on ${day}`,
      flow: (place: string, day: string) => `water run at ${place} came out of it on ${day}`,
      trace: (place: string, day: string) => `a signal traced from it on ${day} led to ${place}`,
      smoke: (place: string, day: string) => `smoke blown into it on ${day} came out at ${place}`,
      statement: (place: string, day: string) => `we were told on ${day} that it serves ${place}`,
    },
    groundRecord: (place: string) =>
      `a permit record shows a connection for ${place} that the camera did not find`,
    groundCrossed: (place: string) => `the pipe crosses the lot of ${place} there`,
    groundPlace: (place: string) => `it joins the pipe near ${place}`,
    groundUnknown: (place: string) => `we do not know yet where the drains of ${place} go`,
    whyMatters:
      "It matters because a branch must not be closed or lined over while somebody’s sewage may come through it.",
    facts: "What is known of the branch",
    factHead: ["", "As seen"],
    station: "Feet from the main",
    side: "Side",
    size: "Size",
    material: "Material",
    evidence: "Evidence so far",
    level: [
      "none",
      "position only",
      "a hint in a record",
      "a trace that points at a parcel",
      "one test, seen once",
      "a repeated test with a control address",
      "dug up, or accepted in writing",
    ],
    ask: "What we ask of you",
    asks: [
      "Tell us what you know about where the drains of your building go. Think of a yard drain, a roof downspout, a sump pump, and a bathroom, laundry or floor drain in the basement.",
      "Tell us what was added or changed: when, and by which plumber.",
      "Send us any permit, plan or bill that shows it.",
      "Allow a dye test. We tell you beforehand on which day and when. Letting us in is no agreement to pay for anything.",
    ],
    choices: [
      "I think the branch serves my building.",
      "I think it does not; my drains go another way.",
      "I do not know.",
      "You may come and test. Days and hours that suit me are written below.",
      "I have papers about it.",
    ],
  },

  visit: {
    opening: (place: string) =>
      `We would like to find out where the drains of ${place} go. For that, one of us puts a little dye into a drain in the building while another watches the sewer pipe with a camera.`,
    openingControl: (place: string) =>
      `We are about to test with dye whose drains lead to which branch of the shared sewer. Where the drains of ${place} go is known, so we would like to compare with them: one of us puts a little dye into a drain in the building while another watches the sewer pipe with a camera.`,
    head: ["", ""],
    day: "Day",
    hours: "Hours",
    slot: "When we come",
    slotOf: (span: string, unit: string) => (unit === "" ? span : `${span} (${unit})`),
    waterOff: "No water, please",
    titleWater: "Please use no water during a drain test",
    openingWater: (place: string) =>
      `We are about to test with dye whose drains lead to which branch of the shared sewer. Nobody comes into ${place}. But its water runs, or may run, past the place that we watch, and would wash the dye away.`,
    asksWater: [
      "Use no water in that time: no toilet, sink, shower or machine.",
      "Tell us beforehand if you cannot be without water then, or if somebody there is ill.",
    ],
    choicesWater: [
      "We will use no water in that time.",
      "We cannot be without water then; please call me.",
    ],
    floor: {
      outside: "outside",
      basement: "basement",
      "first-floor": "first floor",
      "upper-floor": "upper floor",
    },
    drain: {
      "floor-drain": "floor drain",
      "laundry-sink": "laundry sink",
      toilet: "toilet",
      "kitchen-sink": "kitchen sink",
      "bathroom-sink": "bathroom sink",
      "tub-or-shower": "tub or shower",
      "yard-drain": "yard drain",
      downspout: "downspout",
      sump: "sump",
    },
    floorDrain: (floor: string, drain: string) => `${floor} ${drain}`,
    drainsIn: (drains: string) => `${drains}, on each floor that there is`,
    flush: (gallons: number) =>
      `A little dye, then about ${gallons} gallons of water at each drain`,
    put: "What goes in",
    who: "Who comes",
    whoWords: (office: string) => `two people of ${office}, who will show you who they are`,
    inside: "Where",
    insideWords: "at one sink, tub or toilet on each floor that has drains",
    filmed: "What is filmed",
    filmedWords: "the inside of the sewer pipe only, never your rooms",
    ask: "What we ask of you",
    asks: [
      "Be there, or let somebody be there who can open the door.",
      "Use no water at all from the moment we start until we say that we are done, unless we ask you to run it.",
      "Tell us beforehand if the day does not suit you, or if somebody there is ill.",
    ],
    tenant:
      "If you rent: your landlord must give you notice of entry as well. This letter does not replace it.",
    owner:
      "If you let the place: you must give the people who live there notice of entry in good time. This letter does not replace it.",
    choices: [
      "The day suits me.",
      "The day does not suit me; other days are written below.",
      "Somebody here needs special care; please call me.",
      "I do not want a test; please call me.",
    ],
  },

  split: {
    opening: (place: string) =>
      `This letter proposes how the cost of work on the shared sewer is to be shared, and what share falls to ${place}. You can check every step with pencil and paper. Please tell us whether you agree.`,
    yourShare: "Your share",
    enclosed: "Enclosed: your statement, with every step of the sum.",
    amount: (place: string) => `Share of ${place}`,
    noShare: (place: string) => `Under this rule no share falls to ${place}.`,
    rule: "The rule used, and why",
    ruleLine: (title: string, sentence: string) => `${title}. ${sentence}`,
    reason: (reason: string) => `Why this rule: ${reason}`,
    answers: "Who is responsible for which stretch, by the rule on file",
    answersHead: ["Stretch", "Responsible", "Where it is written"],
    nothingWritten: "no rule found",
    cited: (source: string, day: string) => `${source}, as of ${day}`,
    /** A unit as the office wrote it, in the reader's language where it is a usual one. */
    unit: (unit: string, _many: boolean) => unit,
    work: "The work",
    workHead: ["Work", "Where", "Price", "Amount"],
    markup: (percent: string) => ` + ${percent} markup`,
    tax: (percent: string) => ` + ${percent} tax`,
    total: "Total of all work",
    general: "whole job",
    branch: (label: string) => `branch at ${label}`,
    steps: "The sum, step by step",
    stepsHead: ["Work", "The sum", "Your part"],
    stepsNote: "Parts of a cent are written out; only the last line is rounded.",
    stepsSum: "Together",
    stepsRounded: "Rounded to the cent",
    stepSum: (amount: string, numerator: string, denominator: string) =>
      numerator === denominator ? amount : `${amount} × ${numerator}/${denominator}`,
    stepsMissing:
      "The steps are left out here because facts of the line have changed since the amounts were set.",
    carried: (amount: string) =>
      `Of this, ${amount} is carried for a connection whose owner is not yet known. If the owner is found, that part is to come back to you.`,
    odd: "A few cents may be left over after rounding. They are shared out one cent at a time, first to whoever lost most by rounding.",
    others: "Who else shares",
    othersLine: (places: string) =>
      `The same rule is put to the owners of ${places}. Each of them gets a letter with their own share only.`,
    noOthers: "No other address is known to share.",
    excluded: "What is not in it",
    excludedAuthority: (where: string) =>
      `The pipe from ${where}, for which the sewer authority is responsible.`,
    excludedUnclear: (where: string) =>
      `A decision on the pipe from ${where}, where it is not clear who is responsible.`,
    excludedUnknown: (labels: string) =>
      `A share for the connections whose owner is not yet known (${labels}); see the note at your share.`,
    excludedHidden:
      "Anything that comes to light when the ground is open. We ask in writing before extra work that changes your share, unless safety cannot wait.",
    excludedCause:
      "Any question of who or what caused the fault. That is kept apart from this sharing.",
    alternatives: "What other rules would ask of you",
    alternativesHead: ["Rule", "Your share would be"],
    alternativesNote: "Each line shows the whole of your share under that rule.",
    payment: "How it would be paid",
    payDays: (days: number) => `By invoice, due ${days} days after the day of the invoice.`,
    deposit: (percent: number) =>
      percent === 0
        ? "No deposit is asked for."
        : `A deposit of ${percent}% of the share is asked for before the work begins.`,
    ifNo: "This letter makes nothing due. If you do not agree, write your reasons on the answer slip; nothing is owed because of this letter.",
    choices: (amount: string) => [
      `I agree to the share of ${amount} as proposed.`,
      "I do not agree; my reasons are written below.",
      "I have a question; please call me.",
      "I have a record or an agreement about this pipe.",
    ],
  },

  entry: {
    opening: (place: string) =>
      `The shared sewer pipe needs repair. For that we need the owner’s consent to enter ${place} and, where marked, to dig there.`,
    area: "Where",
    areaCross: (where: string, easement: string) =>
      `The pipe crosses the lot from ${where}, counted from the public main. Easement: ${easement}.`,
    easement: { recorded: "recorded", none: "none found", unknown: "unknown" },
    recordedAs: (number: string) => `recorded as ${number}`,
    areaWork: (title: string, where: string) => `${title}, ${where}`,
    areaDig: (size: string, place: string) =>
      `We plan to dig in an area of about ${size}: ${place}.`,
    areaEnter: (place: string) => `We only walk in, look and measure: ${place}.`,
    areaSize: (length: string, width: string) => `${length} by ${width}`,
    areaUnset: "size not yet set",
    placeUnset: "place not yet set",
    areaNone: "not yet set",
    when: "When",
    whenOver: (first: string, last: string) => `${first} to ${last}`,
    whenFrom: (day: string) => `From ${day}.`,
    whenOpen: "The days are not yet set.",
    terms: "On these terms",
    contact: (name: string, phone: string) =>
      `To call on the day: ${[name, phone].filter((part) => part !== "").join(", ")}.`,
    larger: "If the area must be larger, we ask you first.",
    restoration: {
      "not-set": "",
      "nothing-dug": "",
      backfill: "We backfill and compact the ground.",
      seed: "We backfill, compact and reseed the ground.",
      sod: "We backfill and compact the ground and lay sod.",
      gravel: "We backfill and compact the ground and replace the gravel.",
      asphalt: "We backfill and compact the ground and patch the asphalt.",
      concrete: "We backfill and compact the ground and patch the concrete.",
      "by-owner": "We backfill and compact the ground; the surface is put back by you.",
    },
    mayDiffer: "New grass, plants and patches may not match.",
    notRestored: (what: string) => `We do not replace: ${what}.`,
    insured: (insurance: string, until: string) =>
      `We carry liability insurance (${insurance}), in force to ${until}. The certificate is shown on request.`,
    termLines: [
      "You may take this consent back in writing at any time before work on your lot begins. Once the ground is open, we first make it safe.",
    ],
    tenant:
      "If somebody rents there, they hear of it from us too; notice of entry remains yours to give.",
    choices: [
      "I allow entry for looking and measuring.",
      "I allow digging in the area named above, on these terms.",
      "I do not allow it; my reasons are written below.",
      "Please call me first.",
    ],
  },

  agreement: {
    opening:
      "This letter is about one written agreement of the owners who share this sewer pipe: who may use it, who looks after it, how cost is shared, and who may enter for repair. To be recorded with the county’s land records it is signed by all owners and acknowledged before a notary public.",
    parties: "Properties named in it",
    steps: "How it goes",
    stepLines: (authority: string) => [
      `A draft goes to ${authority} first, if it wants to see it, on its own form where it has one.`,
      "Every owner on title signs, also husband and wife, trustees and purchasers under contract.",
      "Signatures are acknowledged before a notary public. A click or an email is not enough for a recorded paper.",
      "Where a lender holds a deed of trust or mortgage, ask whether it has to consent.",
      "The recorded number goes into the permit papers.",
    ],
    authority: "the sewer authority",
    existing: (title: string, number: string) =>
      `On file already: ${title}${number === "" ? "" : `, recorded as ${number}`}.`,
    choices: [
      "I will sign; please send me the draft.",
      "I have questions about it; please call me.",
      "Others are on the title too; their names are written below.",
      "I do not want to sign; my reasons are written below.",
    ],
  },

  start: {
    opening: (pipe: string) => `Work on ${pipe} is about to start.`,
    day: "First day of work",
    end: "How long",
    until: (day: string) => `until ${day}`,
    hours: "Hours",
    contractor: "Contractor",
    permits: "Permits",
    permit: (number: string) => `no. ${number}`,
    tickets: "Locate tickets",
    inspections: "Inspections",
    inspection: (title: string, moment: string) => `${title}, ${moment}`,
    none: "none in force yet",
    work: "What is done",
    expect: "What to expect",
    expects: [
      "Noise and vehicles in working hours. Tell us if you need a car at the door.",
      "Please keep cars away from the barriers and signs.",
    ],
    drains: "When not to use your drains is told in a letter of its own.",
    choices: [
      "I have read this letter.",
      "Somebody here needs the entrance kept free; please call me.",
    ],
  },

  pause: {
    opening: (place: string) =>
      `The shared sewer pipe will be open. During that time no water may go down any drain at ${place}.`,
    from: "Do not use drains on",
    hours: "From when to when",
    openHours: "hours not yet set: ask us before you rely on this page",
    why: "Why: water from your building runs, or may run, through the place where people work.",
    counts: "That means",
    countLines: [
      "no toilet, no sink, no shower or bath;",
      "no washing machine, no dishwasher, also none on a timer;",
      "no pump or softener that empties into a drain.",
    ],
    happens:
      "If water is used all the same: sewage may come up in your own building or a neighbor’s, and it can run into the open trench where people work.",
    help: "If you cannot be without water (illness, small children, day care, a business), call us now, before that day.",
    over: "Until you hear from us that the drains may be used again, please wait, also past the stated hour. Call us if you hear nothing.",
    choices: [
      "Everybody at this address knows and will use no drain in that time.",
      "We need help for that time; please call.",
    ],
  },

  spill: {
    reportTitle: "Report of a sewage spill",
    happened: "What happened",
    known: (moment: string, place: string) =>
      `It was first noticed on ${moment}${place === "" ? "" : `, ${place}`}.`,
    called: (office: string, moment: string) => `${office} was called on ${moment}.`,
    onSite: (moment: string) => `Our crew came on ${moment}.`,
    stopped: (moment: string) => `The flow was stopped on ${moment}.`,
    notStopped: "That the flow has stopped is not on file yet.",
    reported: (to: string, moment: string, number: string) =>
      `We reported this to ${to} on ${moment}${number === "" ? "" : ` (no. ${number})`}.`,
    cleaned: (moment: string) => `The place was cleaned up on ${moment}.`,
    volume: (gallons: number | null) =>
      gallons === null ? "Volume: not known." : `Estimated volume: about ${gallons} gallons.`,
    reached: (what: string) =>
      what === "" ? "What it reached: not known." : `It reached: ${what}.`,
    opening: (where: string) => `Sewage has come out at or near ${where}.`,
    do: "What to do",
    doLines: [
      "Keep away from it, and keep children and pets away.",
      "Use as little water as you can until we tell you that the pipe is working again.",
      "Do not wash it into the street drain or a ditch.",
      "Throw out food that sewage has touched. Wash hands with soap after any contact.",
      "If you feel ill after contact, call a doctor and say what happened.",
    ],
    choices: ["I have read this letter.", "I have had contact or damage; please call me."],
  },

  demand: {
    opening: (place: string) =>
      `We ask you to pay the share of ${place} in the cost of the work on the shared sewer.`,
    basis: "What it rests on",
    agreed: (day: string, amount: string) => `Your consent of ${day} to pay ${amount} is on file.`,
    notAgreed:
      "No consent of yours to this amount is on file. If you see it differently, write to us.",
    version: (number: number, day: string) => `Split no. ${number}, chosen on ${day}.`,
    tieIn: (label: string, reason: string) => `Connection ${label}: ${reason}.`,
    reasonAccepted: "accepted in writing by its owner",
    reasonRecord: "on the permit record, and found there by the camera",
    reasonTested: "shown by repeated tests or by digging",
    reasonRuled: "accepted in writing by the authority, though not on the permit record",
    due: "Please pay by",
    dueOpen: "The day to pay by is not yet set.",
    payTo: (payee: string, methods: string) =>
      `Pay to ${payee}${methods === "" ? "" : `, by ${methods}`}. Write the reference of this letter on it.`,
    method: {
      check: "check",
      card: "card",
      "bank-transfer": "bank transfer",
      cash: "cash",
      other: "other means",
    },
    or: "or",
    dispute: (day: string) =>
      `If you dispute it, write to us by ${day}: what you dispute, and why.`,
    disputeOpen: "If you dispute it, write to us: what you dispute, and why.",
    enclosed: "Enclosed",
    enclosedLines: [
      "the sum behind your share, step by step (below)",
      "the strip drawing of the pipe (below)",
      "on request: the video, the test records and the permit papers",
    ],
    choices: (amount: string) => [
      `I pay ${amount}.`,
      "I would like to pay in parts; please call me.",
      "I do not agree; my reasons are written below.",
    ],
  },

  response: {
    opening: (name: string) =>
      `This is our answer on the shared private sewer “${name}”. We write as the contractor.`,
    order: (day: string, note: string) => `Your order of ${day}${note === "" ? "" : `: ${note}`}`,
    corrections: (day: string, note: string) =>
      `Your corrections of ${day}${note === "" ? "" : `: ${note}`}`,
    noOrder: "No order or correction of yours is on file with us.",
    about: "What it answers",
    state: "Where things stand",
    connections: (total: number, undocumented: number) =>
      `${count(total, "connection", "connections")} on the line; ${undocumented} of them without a permit record.`,
    owners: (properties: number) =>
      `${count(properties, "property is", "properties are")} on our list for the line.`,
    permits: (list: string) => `Permits: ${list}.`,
    noPermit: "Permits: none yet.",
    holds: (open: number) =>
      open === 0
        ? "No open point on our file stops the work."
        : `${count(open, "open point stops", "open points stop")} part of the work on our side; they are listed in the permit packet.`,
    plan: "What is planned",
    dates: "Dates",
    start: (day: string) => `Work is planned to begin on ${day}.`,
    noStart: "No day for the work is set yet.",
    choices: [],
  },

  done: {
    opening: (pipe: string) =>
      `The work on ${pipe} is done. Please keep this letter with the papers of the property.`,
    openingDug: (pipe: string) =>
      `The work on ${pipe} was inspected; its permit is not final yet. Please keep this letter with the papers of the property.`,
    openingOpen: (pipe: string) =>
      `These are the papers on ${pipe} as they stand today; its permit is not final yet.`,
    openingNoPermit: (pipe: string) =>
      `These are the papers on ${pipe} as they stand today; no permit for work on it is on file.`,
    planned: "The work as planned",
    whole: "All of the work",
    built: (what: string, day: string, said: string) =>
      `${what}, done on ${day}${said === "" ? "" : `: ${said}`}`,
    account: (settled: string, open: string) =>
      `${settled} of it has come in or was credited; ${open} is open.`,
    invoiced: (place: string) => `Invoiced to ${place}`,
    asBuilt: (day: string) => `As-built drawing, given to the authority on ${day}`,
    work: "What was done",
    cost: "What it came to",
    total: (amount: string) => `All work together: ${amount}.`,
    share: (place: string) => `Share of ${place}`,
    papers: "Papers to keep",
    recorded: (title: string, number: string) => `${title}, recorded as ${number}`,
    unrecorded: (title: string) => `${title}, not recorded`,
    noAgreement: "No recorded agreement on this pipe is on file.",
    permit: (number: string, state: string) =>
      number === "" ? `Permit without a number on file: ${state}` : `Permit ${number}: ${state}`,
    final: "final",
    open: "not yet final",
    inspection: (title: string, day: string) => `${title}, passed on ${day}`,
    next: "Who is responsible for the pipe, by the rule or agreement on file",
    nextLine: (where: string, who: string) => `From ${where}: ${who}`,
    nextUnknown: "Not worked out.",
    warranty: "Warranty",
    warrantyNone: "There is no separate warranty on file.",
    warrantyLine: (months: number, from: string, covers: string) =>
      `${count(months, "month", "months")}${from === "" ? "" : ` from ${from}`}${covers === "" ? "" : `, on: ${covers}`}.`,
    choices: [],
  },
};

/** The shape that every catalogue has. */
export type LetterWords = typeof EN;
