import type { ReplyKind } from "../facts/notice.ts";
import type { LinkDeed } from "./private-link.ts";
import type { ScreenKind } from "./signable.ts";
import type { LinkStop } from "./stops.ts";

/** What a neighbor may say by a private link. */
export const LINK_REPLIES = [
  "agrees",
  "disagrees",
  "asks",
  "offers-a-record",
  "books-a-test",
  "wants-another-day",
  "wants-paper",
] as const satisfies readonly ReplyKind[];
export type LinkReply = (typeof LINK_REPLIES)[number];

const stops: Record<LinkStop, string> = {
  gone: "This link is no longer good. Ask the office for a new one.",
  "too-many": "Too much at once from here. Wait a quarter of an hour, then try again.",
  closed: "The office has closed the file on this work. Call or write to them.",
  "no-kind": "Choose what you would like to say.",
  "bad-day": "That is not a day of the calendar. Choose it again, or leave it empty.",
  "no-words": "Write a few words, so that the office knows what you mean.",
  "too-long": "That is longer than can be kept here. Shorten it, or add it as a file.",
  "bad-file": "The file was not stored. Take a PDF, a JPEG or a PNG.",
  "too-large": "The file is larger than 20 MB. Make it smaller, or bring it on paper.",
  "too-many-files": "Ten files are the most for one link. Mail the others to the office.",
  "nothing-to-sign": "There is nothing to sign in this letter.",
  "on-paper": "This agreement is signed on paper, before a notary public.",
  "not-your-signature":
    "Only the owners on title can sign this. You can still say what you think of it.",
  superseded:
    "The amount in this letter no longer holds, so it can’t be signed. The office will send you the new one.",
  held: "Something that this amount rests on is not settled yet, so it can’t be signed yet. You can still answer the letter, and the office will tell you when it is.",
  "nothing-asked": "Nothing is asked of this address.",
  "area-open":
    "The letter does not say yet where and when we would dig, so it can’t be signed yet. You can still answer it; the office writes to you again.",
  "signed-already": "You have signed this already.",
  "letter-not-ready": "The letter’s PDF is still being made. Load this page again in a minute.",
  "letter-not-opened":
    "Open the letter’s PDF first. That shows that you can read and keep it on this device.",
  "no-intent": "Tick what you agree to.",
  "no-records": "Tick that you agree to sign on screen, or ask for paper.",
  "no-name": "Type your full name.",
  "no-capacity": "Write as what you sign, say trustee, manager or executor.",
  "bad-drawing": "The drawn signature could not be read. Clear it and draw again, or leave it out.",
  "office-session":
    "This browser is signed in to the office, and a letter is answered and signed by its reader alone. Sign out of the office first, use another device, or take it on paper.",
  "no-release-words": "Write why you want to be let go from it.",
  "release-asked": "You have asked for this already. A person of the office will answer you.",
  "nothing-to-withdraw":
    "There is nothing to take back: this was not given, or was taken back already.",
};

const deeds: Record<LinkDeed, string> = {
  opened: "Opened this page",
  "opened-letter": "Opened the letter’s PDF",
  "added-file": "Added a file",
  answered: "Answered",
  signed: "Signed",
  withdrew: "Took back a consent",
};

const kinds: Record<ScreenKind, string> = {
  enter: "Consent to enter",
  dig: "Consent to dig",
  pay: "Consent to pay",
};

interface Put {
  readonly office: string;
  readonly place: string;
  readonly reference: string;
  /** Of the letter, as it prints. */
  readonly date: string;
}

/**
 * Every word of the page behind a private link, and of what is kept of a signature, in English. The
 * Spanish catalogue has the same shape, so that a word that is missing there does not compile.
 */
export const EN = {
  language: "English",
  otherLanguage: "En español",
  title: "Your letter",
  heading: (office: string) => `A letter to you from ${office}`,
  about: (name: string, place: string) => `For ${name}, about ${place}.`,
  until: (day: string) => `This page is for you alone, and stays here until ${day}.`,
  jump: "On this page",
  letter: "The letter",
  letterIn: "The letter is in the language that it was sent in.",
  openLetter: "Open the letter as a PDF",
  letterMade: "The PDF of the letter is being made; load this page again in a minute.",
  share: (place: string) => `Proposed share of ${place}`,
  shareNote:
    "A proposal, not a legal decision. You may get your own advice before you answer. How the amount comes about is in the letter, step by step.",
  newAmount: (amount: string, place: string) =>
    `The amount in this letter no longer holds. As things stand now, ${amount} would be asked of ${place}. The office will send you a new letter with the sums.`,
  noNewAmount:
    "The amount in this letter no longer holds, because facts about the pipe or the work have changed. The office will send you a new letter.",
  superseded: "A newer amount",

  say: "What would you like to say?",
  sayNote: "The office reads it and answers you. Saying that you agree is not yet a signature.",
  sayLabel: "Choose one",
  replies: {
    agrees: "I agree with the letter",
    disagrees: "I do not agree",
    asks: "I have a question",
    "offers-a-record": "I have a paper or plan of this pipe",
    "books-a-test": "I would like to book a test or a visit",
    "wants-another-day": "The day in the letter does not suit me; I would like another one",
    "wants-paper": "I want this letter on paper",
  } as Record<LinkReply, string>,
  words: "In your own words",
  wordsHint: "If you ask to be called, write your telephone number too.",
  day: "A day that suits you",
  dayHint: "Only for a test or a visit. The office confirms the time.",
  dayLine: (day: string) => `Day that suits: ${day}.`,
  file: "A photo or paper",
  fileHint: "A PDF, JPEG or PNG of at most 20 MB.",
  fileStoring: (name: string, percent: number) => `Sending ${name}, ${percent} %.`,
  fileStored: (name: string) => `${name} is here.`,
  fileDrop: "Leave it out",
  fileBroken: "The file did not arrive: the connection broke. Choose it again.",
  send: "Send this to the office",
  sending: "Sending …",
  sent: "Your answer is with the office. It stands above, with the day.",
  saidTitle: "What you have said so far",
  said: (day: string, what: string) => `${day}: ${what}`,
  saidOther: "Answered by mail, by telephone or in person",
  saidFile: "With a file.",

  sign: "Sign on screen",
  signNote:
    "Only if you want to. A signature on paper is worth the same; ask for it below at no charge.",
  signAs: (name: string) => `You sign for ${name}.`,
  agreeTo: "What you agree to",
  intents: {
    enter: ({ office, place }: Put) =>
      `I allow ${office} to enter ${place} for looking, measuring and testing, as the letter says.`,
    dig: ({ office, place }: Put) =>
      `I allow ${office} to dig at ${place} in the marked area, on the terms in the letter.`,
    pay: ({ place }: Put, amount: string, version: number) =>
      `I agree to pay ${amount} as the share of ${place}, version ${version} of the split. It binds me once everybody who is asked to pay has signed, or once the work has begun; until then I can take it back.`,
  },
  intentLetter: ({ reference, date }: Put) => `The letter is ${reference} of ${date}.`,
  intentCapacity: (name: string, capacity: string) => `I sign for ${name} as its ${capacity}.`,
  name: "Your full name",
  nameHint:
    "Typing it here is your signature. If it is not the name above, a person of the office looks at it before it counts.",
  nameOf: (person: string) => `Full name of ${person}`,
  nameEach: "Each of you types your own name; one does not sign for the other.",
  openFirst:
    "Before you sign, open the letter as a PDF. That shows that you can read and keep it; without it the signature is not taken.",
  openedFirst: "You have opened the letter as a PDF.",
  officeSession: (person: string) =>
    `This browser is signed in to the office as ${person}. You see what the reader of the letter sees; nothing is noted, and nothing can be answered or signed here until you sign out.`,
  capacity: "As what you sign",
  capacityHint: "For a trust, firm or estate: trustee, manager, executor.",
  draw: "Draw your signature too, if you like",
  drawNote: "With a finger, a pen or the mouse. The typed name is enough without it.",
  drawPlace: "Place to draw your signature",
  drawClear: "Clear the drawing",
  records: "I have read how signing on screen works, and agree to sign this letter on screen.",
  recordsTitle: "How signing on screen works",
  signNow: "Sign now",
  signing: "Signing …",
  signDone: "Signed. Your copy is below; it stays here as long as this page.",
  paper: "I want it on paper",
  paperDone: "The office has your wish for paper, and will send it.",
  onPaper: "To be signed on paper",
  onPaperNote:
    "This agreement is to be recorded with the land records. It is signed on paper before a notary public; a signature on a screen is not enough. Tell the office above when and where it would suit you.",
  cannotSign: "Signing",

  signedTitle: "What you have signed",
  signedOn: (when: string) => `Signed ${when}.`,
  standing: {
    current: "This holds.",
    "superseded-amount":
      "Signed for an earlier amount: a newer amount replaces it, and this signature does not cover the new one.",
    withdrawn: "You have taken this back.",
    refused: "You have said no since.",
    asked: "The office has asked you again since.",
    "name-held":
      "Signed, but it does not count yet: the name typed is not the one that the office has. A person there looks at it and tells you.",
    "name-refused":
      "The office did not take the name typed for yours, so this does not count. You can sign again, here or on paper.",
    replaced: "A later word of yours stands for it.",
  },
  copySent: (address: string) => `A copy goes to ${address}.`,
  copyHere: "Keep a copy: open the letter as you signed it, and print this page.",
  openSigned: "Open the letter as signed",
  withdraw: "Take this back",
  withdrawing: "Taking it back …",
  withdrawConfirm: "Take this back? The office is told, with the day and time.",
  withdrawn: "Taken back. The office has been told.",
  withdrawNote:
    "You can take this back here at any time while this page is up, or in writing to the office.",
  withdrawPay:
    "You can take this back here until everybody who is asked to pay has signed, or the work has begun. From then on it binds.",
  binding: {
    "all-signed": (day: string) =>
      `Binding since ${day}: everybody who is asked to pay has signed.`,
    "work-begun": (day: string) => `Binding since ${day}: the work has begun.`,
  },
  release: "Ask to be let go from it",
  releasing: "Asking …",
  releaseNote:
    "It binds, so it does not end by pressing a button. Write why you want to be let go from it; a person of the office answers you.",
  releaseWhy: "Why",
  releaseAsked: (day: string) =>
    `You asked on ${day} to be let go from it. The office has not answered yet.`,
  releaseSent: "The office has your request, and a person there will answer you.",
  withdrawDug: "Once the ground is open, the office first makes it safe.",

  kept: "What is kept",
  keptNote:
    "The office keeps what you say and sign here, and notes when this page is opened, with the network address. Nobody else on the line sees it. Don’t pass the link on: whoever has it can answer for you.",
  contact: "Reach the office",
  telephone: "Telephone",
  email: "E-mail",
  gas: "A gas line may pass through a sewer. If you smell gas, leave, then call 911 and the gas company.",
  goneTitle: "There is nothing at this link",
  goneWords:
    "It may have run out, or been replaced by a newer one, or was not copied whole. Ask the office that wrote to you for a new link.",
  tooManyTitle: "Too much at once",
  noScripts:
    "To answer here, the browser has to run scripts. You can also answer by telephone, by mail or with the slip on the letter.",
  refusedPlain: "It was not kept. Load the page again, or call the office.",

  kinds,
  stops,
  deeds,

  certificate: {
    title: "Certificate of a signature given on screen",
    signed: "Name as typed",
    party: "For",
    name: "Name looked at",
    nameHeld: "not the one in the file; a person of the office has yet to look at it",
    nameAccepted: (by: string, day: string, why: string) =>
      `accepted by ${by} of the office, ${day}: ${why}`,
    nameRefused: (by: string, day: string, why: string) =>
      `not accepted by ${by} of the office, ${day}: ${why}`,
    consent: "Consent",
    property: "Property",
    amount: "Amount",
    version: (number: number) => `version ${number} of the split`,
    intent: "What was ticked",
    when: "Signed",
    zone: (zone: string) => `on the office’s clock (${zone})`,
    utc: "The same in UTC",
    address: "Network address",
    agent: "Browser",
    unknown: "unknown",
    document: "Document signed",
    documentHash: "Its fingerprint (SHA-256)",
    bytes: (count: number) => `${count.toLocaleString("en-US")} bytes`,
    disclosure: "Consent to electronic records",
    drawing: "Drawn signature",
    drawn: "kept as a picture",
    typedOnly: "none; the name was typed",
    views: "Opened and ticked before",
    copy: "Copy",
    copySent: (messageId: string) => `sent by e-mail, message ${messageId}`,
    copyOnly: "to be opened on the private page",
    hash: "Fingerprint of this signature",
    previous: "Fingerprint of the one before it",
    first: "none; this is the first on the line",
    note: "The document is the file with this fingerprint, byte for byte. If one byte of it or one word of this signature were changed, the fingerprints would no longer agree.",
  },
  ticks: { intent: "Ticked what is agreed to", records: "Ticked the consent to sign on screen" },

  mail: {
    subject: (reference: string) => `Your copy of what you signed: ${reference}`,
    opening: (name: string) => `For ${name}:`,
    words:
      "With this message come the letter that you signed on screen, exactly as you signed it, and the certificate of your signature. Keep both.",
    back: "If this was not you, or you want to take it back, tell us at once.",
  },
  linkInMail: (url: string, day: string) =>
    `Read this letter and answer it on screen, until ${day}:\n${url}\nThe link is for you alone; please don’t pass it on.`,

  disclosure: (office: string, contact: string) => [
    "You can sign on this screen or on paper. If you sign here, this one letter, your signature and your copy are electronic. It covers this letter and nothing else.",
    `You can have the letter on paper instead, before or after you sign, at no charge: use the button “I want it on paper”, or tell ${office}${contact}.`,
    "You can change your mind about signing on screen. Before you sign, just ask for paper. Afterwards, tell us, and all further letters come on paper; that costs nothing, and what was signed until then stays signed.",
    "Leave to enter or to dig can be taken back at any time: with the button that stands beside it on this page, or in writing to us. It counts from when we have it.",
    "An agreement to pay can be taken back in the same way until everybody who is asked to pay has signed, or until the work has begun, whichever comes first. From then on it binds; if you then ask to be let go from it, a person here answers you. Whatever right to cancel the law gives you stays.",
    "You need a telephone or computer with a web browser of recent years that shows this page and opens a PDF, and a way to keep or print it. Opening the letter’s PDF here before you sign shows that you can.",
    "If your e-mail or postal address changes, tell us, so that your copies reach you.",
    "With a signature we keep: your name as you type it, the drawing if you make one, the letter byte for byte with its fingerprint, the day and time, the network address, the kind of browser, and what you opened and ticked here before. A name that is not the one that we have for you is looked at by a person here before the signature counts.",
  ],
};

/** The words of one language. */
export type LinkWords = typeof EN;
