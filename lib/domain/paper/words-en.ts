import type { ScopeKind } from "../facts/scope.ts";
import type { Cft } from "../length/station.ts";
import { plainFeet } from "../length/station.ts";
import { letterDay, letterTime, letterWeekday } from "../time/letter-day.ts";
import { NOTICE_EN } from "./words-notice.ts";
import { STATUTORY_EN } from "./words-statutory.ts";

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
 * Every standing word of a letter in English. The Spanish catalog has the same shape,
 * so that a sentence that is missing there does not compile.
 */
export const EN = {
  day: (day: string) => letterDay(day, "en"),
  onDay: (day: string) => letterDay(day, "en"),
  weekday: (day: string) => letterWeekday(day, "en"),
  feet,
  stretch,
  /** In prose a station says from where it is counted; tables say so in their heads. */
  fromMain: (where: string) => `${where} from the city’s main`,
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
  dayAndNight: "Phone (24 hours)",
  onCall: "On-call phone",
  unknown: "unknown",
  notSet: "not set yet; we will tell you",
  inches: (inches: number) => `${inches} in`,
  /** Text as the office typed it, within a sentence: its language may be another. */
  typed: (text: string) => text,
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
    answerBy: "Please reply by",
    greeting: (name: string, _isPerson: boolean) => `Dear ${name}:`,
    greetingResident: "Dear resident:",
    closing: "Sincerely,",
    page: (page: number, of: number) => `Page ${page} of ${of}`,
    license: (number: string) => `Contractor license ${number}`,
    telephone: "Phone",
    email: "Email",
    forOffice: (by: string, office: string) => `${by}, for ${office}`,
    slipTitle: "Your reply",
    slipCut: "Cut here and mail this part back, or reply by phone or email.",
    slipBy: (day: string) => `Please reply by ${day}.`,
    slipTo: "Return to",
    slipAbout: "About",
    slipName: "Name",
    slipSignature: "Signature, as owner / tenant / for:",
    slipDate: "Date",
    slipPhone: "Phone",
    slipNote: "Anything else we should know",
    notToScale: "Not to scale.",
    /** Beside the text of the other language, for whoever reads this one. */
    alsoHere: ["In English", "After the Spanish text"],
    below: "see below",
    sameText: "The same text in English",
    to: "To",
    drawnAs: "In words",
  },

  /** What is asked and by when: the first sentence of a letter that asks. */
  lead: {
    by: (day: string) => (day === "" ? "" : ` by ${day}`),
    finding: (by: string) =>
      `Please tell us${by} what you know about this pipe. Nothing is to be paid.`,
    inquiry: (place: string, by: string) => `Please tell us${by} where the drains of ${place} go.`,
    visit: (place: string, by: string) =>
      `Please tell us${by} whether we may come to ${place} at the time below.`,
    water: (by: string) =>
      `Please use no water at the time below, and tell us${by} if that does not work.`,
    split: (place: string, amount: string, by: string) =>
      `Please tell us${by} whether you agree to a share of ${amount} for ${place}.`,
    enter: (place: string, by: string) => `Please tell us${by} whether we may enter ${place}.`,
    dig: (place: string, by: string) =>
      `Please tell us${by} whether we may enter ${place} and dig there.`,
    agreement: (by: string) => `Please tell us${by} whether you will sign.`,
    demand: (place: string, amount: string, by: string) =>
      `Please pay ${amount} for ${place}${by}.`,
    start: (day: string) => `Work starts on ${day}.`,
    pause: (place: string, day: string, hours: string) =>
      `Do not let any water go down any drain at ${place} on ${day}${hours === "" ? "" : `, ${hours}`}.`,
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
    "bituminous-fibre": "tar-paper (bituminous fiber) pipe",
    "asbestos-cement": "asbestos cement",
    "cured-in-place-liner": "liner",
    unknown: "material unknown",
  },
  fault: {
    crack: "a crack",
    broken: "broken pipe",
    hole: "a hole",
    "offset-joint": "an offset joint",
    "open-joint": "an open joint",
    roots: "roots",
    belly: "a low place that holds water",
    deformed: "deformed pipe",
    collapsed: "collapsed pipe",
    infiltration: "water coming in",
    "protruding-tie-in": "a connection sticking into the pipe",
    "worn-surface": "a worn pipe wall",
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
    "on-record-seen-elsewhere": "on record, seen at another place or on the other side",
    "on-record-not-seen": "on record, not seen",
    "on-record-not-inspected": "on record; the camera did not get there",
    "on-record-place-unclear": "on record; where in the pipe is not clear",
    undocumented: "seen, not on record",
    "accepted-by-ruling": "not on record, accepted by the authority",
    inactive: "not in use, per test",
    "not-a-sanitary-branch": "not a building sewer connection",
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
      title: "Equal shares",
      sentence: "Every connected property pays the same.",
    },
    "per-unit": {
      title: "By number of units",
      sentence: "Every dwelling and every business on the line counts once.",
    },
    "portion-used": {
      title: "By portion used",
      sentence:
        "The cost of each foot of pipe is shared equally among the properties whose sewage flows through it.",
    },
    "upstream-of-fault": {
      title: "Properties upstream of the defect",
      sentence: "The properties whose sewage flows past the defect pay equal shares.",
    },
    "reach-owner": {
      title: "Whoever is responsible for each section",
      sentence:
        "Each section is paid for by the owners who are responsible for it under the rule named here.",
    },
    weights: {
      title: "By an agreed basis",
      sentence: "The cost is shared in proportion to the basis entered for each property.",
    },
    "recorded-shares": {
      title: "By the recorded agreement",
      sentence: "The cost is shared in the shares that the recorded agreement sets.",
    },
    "single-payer": {
      title: "Single payer",
      sentence: "One property pays for the work.",
    },
  },

  strip: {
    finding:
      "The pipe as the camera saw it. The city’s main is at the left; feet are counted from there. Above, the permit record; below, what the camera saw.",
    one: "Where the connection in question joins the shared pipe, in feet from the city’s main.",
    yours:
      "The shared pipe, in feet from the city’s main; the band shows where your property’s sewage flows.",
    work: "Where the work will be done, in feet from the city’s main.",
    lot: "Where the pipe crosses your lot and where the work will be done, in feet from the city’s main.",
    done: "The pipe as the camera saw it before the work, with the work marked, in feet from the city’s main.",
    title: "Strip drawing of the shared pipe",
    main: "Public main",
    upperEnd: "Upper end",
    you: "your connection",
    notKnown: "owner unknown",
    nobody: "no building",
    onRecord: (label: string) => `Record: ${label}`,
    noRecord: "no record found",
    asked: "the connection in question",
    seen: "Seen by the camera",
    seenYes: "seen",
    pipe: "Pipe",
    passes: "Your sewage flows here",
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
        `Based on records and camera inspection as of ${day}. Public records are not guaranteed to be accurate; actual conditions may differ.`,
    },
    proposal: {
      title: "A proposal, not a decision",
      text: "This is a proposed cost split. It is not a legal determination and not legal advice. It admits nothing and gives up no right, yours or ours. You may get your own advice before you answer.",
    },
    drains: {
      title: "Do not use water or toilets during the stated time",
      text: "Sewage may back up into your own building or a neighbor’s, and it can flood the trench where people are working.",
    },
    /** Where a separate notice says when. */
    drainsLater: {
      title: "Use no water or toilets in a drain shutdown",
      text: "A separate notice will tell you the day and hours. Sewage may back up into your own building or a neighbor’s, and it can flood the trench where people are working.",
    },
    gas: {
      title: "A gas pipe may run through a sewer",
      text: "Do not clear this line with cutting tools. If you smell gas, leave right away. Do not use switches or phones inside. Once you are away from the building, call 911 and the gas company.",
    },
    gasSeen: {
      title: "Something crosses this pipe",
      text: "The camera saw, or could not rule out, something that crosses the pipe. No one should clear this line until the gas company has checked it.",
    },
    sewage: {
      title: "Sewage carries disease",
      text: "Keep children and pets away from sewage and from wet ground over the pipe. Wash hands after any contact.",
    },
    cap: {
      title: "Please do not cap or plug any drain yet",
      text: "Please do not cap, plug or line any branch of this pipe. Until a branch is proven inactive, someone may be using it.",
    },
    dye: {
      title: "About the dye",
      text: "The dye is non-toxic and made for drains. Some color may show in your toilet or sink for a short while. It can stain a light surface; rinse it off. A test that shows no color proves little; it may be repeated.",
    },
    smoke: {
      title: "If smoke is used",
      text: "Before the test, pour water into every floor drain and unused sink. Tell us right away if anyone there has asthma or another lung condition; if so, we will not use smoke. If you see smoke indoors, open windows and go outside.",
    },
    trench: {
      title: "Open trench",
      text: "Stay outside the barriers and keep children and pets away, even when no one is working. Trench walls can collapse without warning.",
    },
    enterOnly: {
      title: "What this consent does not do",
      text: "Allowing entry or digging is not an agreement to pay, and not a statement about who owns the pipe. This letter is not legal advice.",
    },
    official: {
      title: "Not legal advice",
      text: "This letter states facts and amounts from our records. It is not a legal determination and not legal advice. It admits nothing and gives up no right, yours or ours. You may get your own advice.",
    },
  },

  picture: {
    tag: "[photo]",
    caption: (label: string, where: string, day: string) =>
      `${label}, ${where}, as the camera saw it on ${day}`,
    alt: (caption: string) => `Picture from inside the pipe: ${caption}`,
  },

  finding: {
    opening: (office: string, days: string, pipe: string) =>
      `We are ${office}, a drain and sewer contractor. On ${days} we ran a camera through ${pipe}. This letter says what we saw and what is not known yet. It accuses no one, and we are not asking for money.`,
    openingNoRun: (office: string, pipe: string) =>
      `We are ${office}, a drain and sewer contractor. We are gathering the facts about ${pipe}. We have not run a camera through it yet. This letter accuses no one, and we are not asking for money.`,
    connected: (place: string, where: string) =>
      `As far as is known today, ${place} drains into this pipe at ${where} from the city’s main.`,
    connectedAt: (label: string, where: string) => `${label}, ${where}`,
    candidate: (place: string) =>
      `${place} lies along this pipe. Whether it drains into it is not known yet.`,
    crossed: "Nothing seen so far shows that the building there uses it.",
    neighbor: (place: string) => `${place} is near this pipe.`,
    seen: "What was seen, when and by whom",
    run: (day: string, by: string, access: string, feet: string) =>
      `${day}: ${[by, access === "" ? "" : `camera in at ${access}`, feet].filter((part) => part !== "").join(", ")}`,
    runFeet: (from: Cft, to: Cft) => `footage ${stretch(from, to)} from there`,
    runFeetFromMain: (from: Cft, to: Cft) => `footage ${stretch(from, to)} from the city’s main`,
    noRun: "No camera run is on file.",
    tieInHead: ["Mark", "Feet from the city’s main", "Side", "Address", "Permit record and camera"],
    noSide: "none",
    begins: "on record; the shared pipe begins here, not a branch",
    explained: (standing: string) => `${standing}; explained on file`,
    faults: (list: string) => `The camera also saw (feet from the city’s main): ${list}.`,
    noFaults: "No defects were logged.",
    faultLine: (fault: string, where: string) => `${where}: ${fault}`,
    standingWater: "standing water",
    deep: (what: string, inches: number) => `${what}, ${inches} in deep when seen`,
    relative: "at a place not measured from the main yet",
    blocked: (where: string) => `${where}: blocked; the camera could not go on`,
    stations:
      "Feet are measured along the pipe from the city’s main, the public pipe it empties into. Sides are as you look upstream, away from the main.",
    notKnown: "What is not known yet",
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
      "Some matches between the record and the video are our best guess and still have to be confirmed.",
    gap: (where: string, why: string) =>
      `We do not know the condition of the pipe ${where} from the city’s main: ${why}.`,
    unclear: (where: string) =>
      `It is not clear who is responsible for the pipe ${where} from the city’s main.`,
    noBoundary: "Who is responsible for which section has not been determined yet.",
    settled: "There are no open questions today. New facts may raise some.",
    ask: "What we ask of you",
    asks: [
      "Send us any documents about the sewer: permits, plans, agreements, past invoices.",
      "Tell us if someone else owns or lives at this address, so we can notify them too.",
      "Ask to see the video; call or write, and we will show it to you.",
    ],
    choices: [
      "I have read this letter.",
      "I would like to see the video.",
      "I have documents about this pipe.",
      "I disagree with something; please call me.",
    ],
  },

  inquiry: {
    opening: (station: string, side: string) =>
      `Our camera found a branch that joins the shared sewer pipe ${station} from the city’s main, ${side}. It is not on any permit record we have.`,
    openingUnplaced:
      "Our camera found a branch that joins the shared sewer pipe at a place not measured from the main yet. It is not on any permit record we have.",
    why: (grounds: string) =>
      `We are asking you because ${grounds}. The branch may also lead to another address. We are not saying the branch is yours.`,
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
      "It matters because a branch must not be capped or lined over while someone may be using it.",
    facts: "What is known of the branch",
    factHead: ["", "As seen"],
    station: "Feet from the city’s main",
    side: "Side",
    size: "Size",
    material: "Material",
    evidence: "Evidence so far",
    level: [
      "none",
      "location only",
      "a hint in a record",
      "a trace that points to a parcel",
      "one test, one sighting",
      "a repeated test with a control address",
      "excavated, or accepted in writing",
    ],
    ask: "What we ask of you",
    asks: [
      "Tell us where your building’s drains go. Think of a yard drain, a roof downspout, a sump pump, and a bathroom, laundry or floor drain in the basement.",
      "Tell us what was added or changed: when, and by which plumber.",
      "Send us any permit, plan or invoice that shows it.",
      "Allow a dye test. We will tell you the day and time in advance. Letting us in is not an agreement to pay for anything.",
    ],
    choices: [
      "I think the branch serves my building.",
      "I don’t think so; my drains go another way.",
      "I do not know.",
      "You may come and test. Days and times that work for me are below.",
      "I have documents about it.",
    ],
  },

  visit: {
    opening: (place: string) =>
      `We would like to find out where the drains of ${place} go. One of us adds a small amount of dye to a drain in the building while another watches the sewer with a camera.`,
    openingControl: (place: string) =>
      `We are about to run a dye test to see whose drains lead to which branch of the shared sewer. Where the drains of ${place} go is known, so we would like to use them for comparison: one of us adds a small amount of dye to a drain in the building while another watches the sewer with a camera.`,
    head: ["", ""],
    day: "Day",
    hours: "Hours",
    slot: "When we come",
    slotOf: (span: string, unit: string) => (unit === "" ? span : `${span} (${unit})`),
    waterOff: "No water, please",
    titleWater: "Please use no water during a drain test",
    openingWater: (place: string) =>
      `We are about to run a dye test to see whose drains lead to which branch of the shared sewer. No one will enter ${place}. But its water runs, or may run, past the place we are watching, and would wash the dye away.`,
    asksWater: [
      "Use no water during that time: no toilet, sink, shower or machine.",
      "Tell us in advance if you cannot be without water then, or if someone there is ill.",
    ],
    choicesWater: [
      "We will use no water during that time.",
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
    drainsIn: (drains: string) => drains,
    flush: (gallons: number) =>
      `A small amount of dye, then about ${gallons} gallons of water at each drain`,
    put: "What goes in",
    who: "Who comes",
    whoWords: (office: string) => `two people from ${office}, who will show ID`,
    inside: "Where",
    insideWords: "at one sink, tub or toilet on each floor that has drains",
    filmed: "What is filmed",
    filmedWords: "the inside of the sewer pipe only, never your rooms",
    ask: "What we ask of you",
    asks: [
      "Please be home, or have someone there to open the door. Tell us in advance if anyone there is ill.",
      "Use no water at all from when we start until we say we are done, unless we ask you to run it.",
    ],
    tenant:
      "If you rent: your landlord must also give you notice of entry. This letter does not replace it.",
    owner:
      "If you rent the property out: you must give your tenants proper notice of entry. This letter does not replace it.",
    choices: [
      "The day works for me.",
      "The day does not work for me; other days are below.",
      "Someone here needs special care; please call me.",
      "I do not want a test; please call me.",
    ],
  },

  split: {
    opening:
      "This letter proposes how to split the cost of work on the shared sewer. You can check every step yourself.",
    enclosed: "Enclosed: your statement, with every work item and the exact calculation.",
    amount: (place: string) => `Share of ${place}`,
    noShare: (place: string) => `${place} has no share under this rule.`,
    rule: "The rule used, and why",
    ruleLine: (title: string, sentence: string) => `${title}. ${sentence}`,
    reason: (reason: string) => `Why this rule: ${reason}${/[.!?]$/.test(reason) ? "" : "."}`,
    answersLine: (where: string, who: string, source: string) =>
      `The pipe ${where} from the city’s main: ${who} (${source}).`,
    answers: "Who is responsible for each section, under the rule on file",
    answersHead: ["Section, from the city’s main", "Responsible", "Source"],
    nothingWritten: "no rule on file",
    cited: (source: string, day: string) => `${source}, as of ${day}`,
    /** A unit as the office wrote it, in the reader's language where it is a usual one. */
    unit: (unit: string, _many: boolean) => unit,
    work: "The work",
    workHead: ["Work", "Feet from the city’s main", "Price", "Amount"],
    markup: (percent: string) => ` + ${percent} markup`,
    tax: (percent: string) => ` + ${percent} tax`,
    total: "Total for all work",
    general: "whole job",
    branch: (label: string) => `branch at ${label}`,
    steps: "The calculation, step by step",
    stepsOf: (total: string) => `Total for all work: ${total}.`,
    stepsMissing:
      "The steps are left out here because the facts have changed since the amounts were set.",
    carried: (amount: string) =>
      `${amount} of this covers a connection whose owner is not known yet. If the owner is found, that part is to come back to you.`,
    odd: "Amounts are rounded to the cent. A leftover cent goes to the shares rounded down the most.",
    others: "Who else shares",
    othersLine: (places: string) =>
      `The owners of ${places}, under the same rule. Each gets a letter with their own share only.`,
    noOthers: "No other address is known to share.",
    excluded: "Not included",
    excludedAuthority: (where: string) =>
      `The pipe ${where} from the city’s main, for which the sewer authority is responsible.`,
    excludedUnclear: (where: string) =>
      `A decision on the pipe ${where} from the city’s main, where it is not clear who is responsible.`,
    excludedUnknown: (labels: string) =>
      `A share for the connections whose owner is not known yet (${labels}); see the note at your share.`,
    excludedHidden:
      "Anything discovered once the ground is open. We will ask you in writing before extra work that changes your share, unless safety cannot wait.",
    excludedCause:
      "Any question of who or what caused the defect. That is separate from this split.",
    alternatives: "Your share under other rules",
    alternativesHead: ["Rule", "Your share would be"],
    payment: "How you would pay",
    payDays: (days: number) => `By invoice, due ${days} days after the invoice date.`,
    deposit: (percent: number) =>
      percent === 0
        ? "No deposit is required."
        : `A deposit of ${percent}% of the share is due before the work begins.`,
    ifNo: "Nothing is due because of this letter. If you do not agree, write your reasons on the reply slip.",
    choices: (amount: string) => [
      `I agree to the share of ${amount} as proposed.`,
      "I do not agree; my reasons are below.",
      "I have a question; please call me.",
      "I have a record or an agreement about this pipe.",
    ],
  },

  entry: {
    opening: (place: string) =>
      `The shared sewer pipe needs repair. To do it, we need the owner’s consent to enter ${place} and, where marked, to dig there.`,
    area: "Where",
    areaCross: (where: string, easement: string) =>
      `The pipe crosses the lot ${where} from the city’s main. Easement: ${easement}.`,
    easement: { recorded: "recorded", none: "none found", unknown: "unknown" },
    recordedAs: (number: string) => `recorded as ${number}`,
    areaWork: (title: string, where: string) => `${title}, ${where}`,
    areaDig: (size: string, place: string) => `We plan to dig an area of about ${size}: ${place}.`,
    areaEnter: (place: string) => `We will only enter to inspect and measure: ${place}.`,
    areaSize: (length: string, width: string) => `${length} by ${width}`,
    areaUnset: "size not set yet",
    placeUnset: "place not set yet",
    areaNone: "not set yet",
    when: "When",
    whenOver: (first: string, last: string) => `${first} to ${last}`,
    whenFrom: (day: string) => `From ${day}.`,
    whenOpen: "The days are not set yet.",
    terms: "On these terms",
    contact: (name: string, phone: string) =>
      `Contact on the day: ${[name, phone].filter((part) => part !== "").join(", ")}.`,
    larger: "If the area must be larger, we will ask you first.",
    restoration: {
      "not-set": "",
      "nothing-dug": "",
      backfill: "We backfill and compact the ground.",
      seed: "We backfill, compact and reseed the ground.",
      sod: "We backfill and compact the ground and lay sod.",
      gravel: "We backfill and compact the ground and replace the gravel.",
      asphalt: "We backfill and compact the ground and patch the asphalt.",
      concrete: "We backfill and compact the ground and patch the concrete.",
      "by-owner": "We backfill and compact the ground; you restore the surface.",
    },
    mayDiffer: "New grass, plants and patches may not match.",
    noPlantings: "No trees or plantings stand in the area.",
    plantingsUnset: "not set yet",
    plantings: {
      stay: (plants: string) =>
        `Trees and plantings stay as they are${plants === "" ? "" : `: ${plants}`}.`,
      replanted: (plants: string) => `We take out and replant: ${plants}.`,
      removed: (plants: string) => `We take out and do not replant: ${plants}.`,
    },
    notRestored: (what: string) => `We do not replace: ${what}.`,
    insured: (insurance: string, until: string) =>
      `We carry liability insurance (${insurance}), valid through ${until}. The certificate is available on request.`,
    termLines: [
      "You may withdraw this consent in writing at any time before work on your lot begins. Once the ground is open, we will first make it safe.",
    ],
    tenant:
      "If you have tenants, we will notify them too; giving notice of entry is still your responsibility.",
    choices: [
      "I allow entry to inspect and measure.",
      "I allow digging in the area named above, on these terms.",
      "I do not allow it; my reasons are below.",
      "Please call me first.",
    ],
  },

  agreement: {
    opening:
      "This letter is about one written agreement of the owners who share this sewer pipe: who may use it, who maintains it, how costs are shared, and who may enter for repairs. To be recorded with the county, it is signed by all owners and notarized.",
    parties: "Properties it covers",
    steps: "How it works",
    stepLines: (authority: string) => [
      `A draft goes to ${authority} first, if it wants to see it, on its own form where it has one.`,
      "Every title holder signs, including spouses, trustees and contract purchasers.",
      "A click or email is not enough to sign a document that is recorded.",
      "If a lender holds a deed of trust or mortgage, ask whether it has to consent.",
      "The recording number goes into the permit application.",
    ],
    authority: "the sewer authority",
    existing: (title: string, number: string) =>
      `On file already: ${title}${number === "" ? "" : `, recorded as ${number}`}.`,
    choices: [
      "I will sign; please send me the draft.",
      "I have questions about it; please call me.",
      "Others are on the title too; their names are below.",
      "I do not want to sign; my reasons are below.",
    ],
  },

  start: {
    opening: (pipe: string) => `The work is on ${pipe}.`,
    day: "First day of work",
    end: "How long",
    until: (day: string) => `until ${day}`,
    hours: "Hours",
    contractor: "Contractor",
    permits: "Permits",
    permit: (number: string) => `No. ${number}`,
    tickets: "Locate tickets",
    inspections: "Inspections",
    inspection: (title: string, moment: string) => `${title}, ${moment}`,
    none: "none in force yet",
    work: "Work to be done",
    expect: "What to expect",
    expects: [
      "Noise and vehicles during working hours. Tell us if you need vehicle access.",
      "Please keep cars away from the barriers and signs.",
    ],
    choices: [
      "I have read this letter.",
      "Someone here needs the entrance kept clear; please call me.",
    ],
  },

  ...NOTICE_EN,
  statutory: STATUTORY_EN,

  pause: {
    opening:
      "The shared sewer pipe will be open then. Water from your building runs, or may run, through the place where people are working.",
    from: "Do not use drains on",
    hours: "From when to when",
    openHours: "hours not set yet: call us before relying on this notice",
    counts: "That means",
    countLines: [
      "do not flush toilets or use sinks, showers or tubs;",
      "do not run washing machines or dishwashers (check timers);",
      "do not run a pump or softener that empties into a drain.",
    ],
    help: "If you cannot be without water (illness, small children, day care, a business), call us now, before that day.",
    over: "Please wait until we tell you that the drains may be used again, even past the stated time. Call us if you hear nothing.",
    choices: [
      "Everyone at this address knows and will use no drain during that time.",
      "We need help during that time; please call.",
    ],
  },

  spill: {
    reportTitle: "Report of a sewage spill",
    happened: "What happened",
    known: (moment: string) => `It was first noticed on ${moment}.`,
    called: (office: string, moment: string) => `${office} was called on ${moment}.`,
    onSite: (moment: string) => `Our crew came on ${moment}.`,
    stopped: (moment: string) => `The flow was stopped on ${moment}.`,
    notStopped: "It is not on file yet that the flow has stopped.",
    notReported: "It is not on file yet that any agency was told.",
    reported: (to: string, moment: string, number: string) =>
      `We reported this to ${to} on ${moment}${number === "" ? "" : ` (No. ${number})`}.`,
    cleaned: (moment: string) => `The place was cleaned up on ${moment}.`,
    volume: (gallons: number | null) =>
      gallons === null ? "Volume: not known." : `Estimated volume: about ${gallons} gallons.`,
    reached: (what: string) =>
      what === "" ? "What it reached: not known." : `It reached: ${what}.`,
    opening: (where: string) => `Sewage has spilled at or near ${where}.`,
    do: "What to do",
    doLines: [
      "Keep away from it, and keep children and pets away.",
      "Use as little water as you can until we tell you the line is flowing again.",
      "Do not hose it into a storm drain or ditch.",
      "Throw out food that sewage has touched. Wash hands with soap after any contact.",
      "If you feel sick after contact, call a doctor and say what happened.",
    ],
    choices: ["I have read this letter.", "I have had contact or damage; please call me."],
  },

  demand: {
    opening: (place: string) =>
      `This is the share for ${place} in the cost of the work on the shared sewer.`,
    basis: "Basis",
    agreed: (day: string, amount: string) => `Your consent of ${day} to pay ${amount} is on file.`,
    notAgreed: "We have no consent from you to this amount on file. If you disagree, write to us.",
    version: (number: number, day: string) => `Split No. ${number}, chosen on ${day}.`,
    tieIn: (label: string, reason: string) => `Connection ${label}: ${reason}.`,
    reasonAccepted: "accepted in writing by its owner",
    reasonRecord: "on the permit record, and found there by the camera",
    reasonTested: "shown by repeated tests or by digging",
    reasonRuled: "accepted in writing by the authority, though not on the permit record",
    due: "Please pay by",
    dueOpen: "The due date is not set yet.",
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
      `If you dispute any of it, write to us by ${day}: which amount, and why. No answer is not counted as agreement.`,
    disputeOpen:
      "If you dispute any of it, write to us: which amount, and why. No answer is not counted as agreement.",
    enclosed: "Enclosed",
    enclosedLines: [
      "the calculation of your share, step by step (below)",
      "the drawing of the pipe (below)",
      "on request: the video, test records and permit documents",
    ],
    choices: (amount: string) => [
      `I will pay ${amount}.`,
      "I would like to pay in installments; please call me.",
      "I do not agree; my reasons are below.",
    ],
  },

  response: {
    opening: (name: string) => `We write as the contractor for the shared private sewer “${name}”.`,
    order: (day: string, note: string) => `Your order of ${day}${note === "" ? "" : `: ${note}`}`,
    corrections: (day: string, note: string) =>
      `Your corrections of ${day}${note === "" ? "" : `: ${note}`}`,
    noOrder: "No order or correction of yours is on file with us.",
    about: "In response to",
    state: "Current status",
    connections: (total: number, undocumented: number) =>
      `${count(total, "connection", "connections")} on the line; ${undocumented === 0 ? "none of them is undocumented" : `${undocumented} of them without a permit record`}.`,
    owners: (properties: number) =>
      `${count(properties, "property is", "properties are")} on our list for the line.`,
    permits: (list: string) => `Permits: ${list}.`,
    noPermit: "Permits: none yet.",
    holds: (open: number) =>
      open === 0
        ? "Nothing on our side is holding up the work."
        : `${count(open, "hold blocks", "holds block")} part of the work on our side; see the permit packet.`,
    plan: "Planned work",
    dates: "Dates",
    start: (day: string) => `Work is planned to begin on ${day}.`,
    begun: (day: string) => `Work was to begin on ${day}.`,
    noStart: "No start date is set yet.",
    choices: [],
  },

  done: {
    opening: (pipe: string) =>
      `The work on ${pipe} is complete. Please keep this letter with your property records.`,
    openingDug: (pipe: string) =>
      `The work on ${pipe} was inspected; its permit is not final yet. Please keep this letter with your property records.`,
    openingOpen: (pipe: string) =>
      `These are the documents for ${pipe} as of today; its permit is not final yet.`,
    openingNoPermit: (pipe: string) =>
      `These are the documents for ${pipe} as of today; no permit for work on it is on file.`,
    planned: "The work as planned",
    whole: "All of the work",
    built: (what: string, day: string, said: string) =>
      `${what}, done on ${day}${said === "" ? "" : `: ${said}`}`,
    measured: "As built, measured in feet from the city’s main",
    measuredHead: ["Work", "Where", "Length", "Pipe", "Measured"],
    piece: {
      replaced: "Replaced",
      lined: "Lined",
      burst: "Replaced by bursting",
      repaired: "Repaired",
      reconnected: "Reconnected",
      capped: "Capped",
      cleanout: "Cleanout added",
      other: "Other work",
    },
    account: (settled: string, open: string) =>
      open === "$0.00"
        ? `${settled} paid or credited: paid in full.`
        : `${settled} paid or credited; balance due: ${open}.`,
    invoiced: (place: string) => `Invoiced to ${place}`,
    asBuilt: (day: string) => `As-built drawing, given to the authority on ${day}`,
    work: "What was done",
    cost: "Final cost",
    total: (amount: string) => `Total cost: ${amount}.`,
    share: (place: string) => `Share of ${place}`,
    papers: "Documents to keep",
    recorded: (title: string, number: string) => `${title}, recorded as ${number}`,
    unrecorded: (title: string) => `${title}, not recorded`,
    noAgreement: "No recorded agreement on this pipe is on file.",
    permit: (number: string, state: string) =>
      number === "" ? `Permit without a number on file: ${state}` : `Permit ${number}: ${state}`,
    final: "final",
    open: "not final",
    inspection: (title: string, day: string) => `${title}, passed on ${day}`,
    /** How wide and of what a pipe is; either may be empty. */
    pipe: (wide: string, material: string) => `${wide} ${material}`.trim(),
    next: "Who is responsible for the pipe, under the rule or agreement on file",
    nextLine: (where: string, who: string) => `${where} from the city’s main: ${who}`,
    nextUnknown: "Not determined.",
    warranty: "Warranty",
    warrantyNone: "There is no separate warranty on file.",
    warrantyLine: (months: number, from: string, covers: string) =>
      `${count(months, "month", "months")}${from === "" ? "" : ` from ${from}`}${covers === "" ? "" : `, on: ${covers}`}.`,
    choices: [],
  },
};

/** The shape that every catalog has. */
export type LetterWords = typeof EN;
