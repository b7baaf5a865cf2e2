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
  gone: "This link no longer works. Ask the office for a new one.",
  "too-many": "Too many tries from this connection. Wait 15 minutes and try again.",
  "bad-code":
    "That is not a code from our letters. Check it against the letter: three groups of four.",
  closed: "The office has closed the file on this work. Call or write to them.",
  "no-kind": "Choose a reply.",
  "bad-day": "That is not a valid date. Choose it again or leave it blank.",
  "no-words": "Enter a few words so the office knows what you mean.",
  "too-long": "That is too long to save here. Shorten it or add it as a file.",
  "bad-file": "The file was not saved. Use a PDF, JPEG or PNG.",
  "too-large": "The file is larger than 20 MB. Make it smaller or bring a printed copy.",
  "too-many-files": "Limit of ten files per link. Mail the others to the office.",
  "nothing-to-sign": "There is nothing to sign in this letter.",
  "on-paper": "This agreement is signed on paper, before a notary public.",
  "not-your-signature":
    "Only the owners on title can sign this. You can still send us your comments.",
  superseded:
    "The amount in this letter is out of date, so it can’t be signed. The office will send you the new one.",
  held: "Something this amount depends on is not settled, so it can’t be signed yet. You can still reply to the letter; the office will let you know.",
  "nothing-asked": "This address owes nothing.",
  "area-open":
    "The letter does not say yet where and when we would dig, so it can’t be signed yet. You can still reply; the office will write to you again.",
  "signed-already": "You have already signed this.",
  "letter-not-ready": "The letter’s PDF is still being created. Reload this page in a minute.",
  "letter-unreadable":
    "What was kept of this letter can’t be read, so it can’t be signed here. Ask the office for a new letter.",
  "letter-not-opened":
    "Open the letter’s PDF first. That shows that you can read and keep it on this device.",
  "no-intent": "Check what you agree to.",
  "no-records": "Check that you agree to sign on screen, or ask for paper.",
  "no-name": "Enter your full name.",
  "no-capacity": "Enter your role, such as trustee, manager or executor.",
  "bad-drawing":
    "The drawn signature could not be read. Clear it and draw again, or leave it blank.",
  "office-session":
    "This browser is signed in to the office, and only the person a letter is for can reply and sign. Sign out of the office first, use another device, or ask for paper.",
  "no-release-words": "Enter why you want to be released.",
  "release-asked": "You have already asked for this. Someone in the office will answer you.",
  "nothing-to-withdraw": "Nothing to withdraw: this was not given, or was already withdrawn.",
};

const deeds: Record<LinkDeed, string> = {
  opened: "Opened this page",
  "opened-letter": "Opened the letter’s PDF",
  "added-file": "Added a file",
  answered: "Replied",
  signed: "Signed",
  withdrew: "Withdrew a consent",
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
 * Spanish catalog has the same shape, so that a word that is missing there does not compile.
 */
export const EN = {
  language: "English",
  otherLanguage: "En español",
  title: "Your letter",
  heading: (office: string) => `A letter to you from ${office}`,
  about: (name: string, place: string) => `For ${name}, about ${place}.`,
  until: (day: string) => `This page is only for you and is available until ${day}.`,
  jump: "On this page",
  letter: "The letter",
  letterIn: "The letter is in the language that it was sent in.",
  letterUnreadable: "The letter can’t be shown on this page",
  letterUnreadableNote: (office: string) =>
    `What was kept of it can’t be read. Use the paper or PDF you have, and ask ${office} for another copy. You can answer below; nothing can be signed here.`,
  readHere: "read it on this page",
  openLetter: "Open the letter as a PDF",
  letterMade: "The PDF of the letter is being created; reload this page in a minute.",
  share: (place: string) => `Proposed share of ${place}`,
  shareNote:
    "A proposal, not a legal decision. You may get your own advice before you reply. The letter explains step by step how it was calculated.",
  newAmount: (amount: string, place: string) =>
    `The amount in this letter is out of date. Currently the share for ${place} would be ${amount}. The office will send you a new letter with the calculation.`,
  noNewAmount:
    "The amount in this letter is out of date because facts about the pipe or the work have changed. The office will send you a new letter.",
  superseded: "Updated amount",

  say: "Your reply",
  sayNote: "The office reads it and answers you. Saying that you agree is not a signature.",
  sayFolded: "agree, disagree, ask a question, schedule a visit",
  sayLabel: "Choose one",
  replies: {
    agrees: "I agree with the letter",
    disagrees: "I do not agree",
    asks: "I have a question",
    "offers-a-record": "I have a document or plan of this pipe",
    "books-a-test": "I would like to schedule a test or visit",
    "wants-another-day": "The day in the letter does not work for me; I would like another one",
    "wants-paper": "I want this letter on paper",
  } as Record<LinkReply, string>,
  words: "In your own words",
  wordsHint: "If you want a call, include your phone number.",
  day: "A day that works for you",
  dayHint: "Only for a test or a visit. The office confirms the time.",
  dayLine: (day: string) => `Day that works: ${day}.`,
  file: "A photo or document",
  fileHint: "A PDF, JPEG or PNG of at most 20 MB.",
  fileStoring: (name: string, percent: number) => `Uploading ${name}, ${percent}%.`,
  fileStored: (name: string) => `${name} uploaded.`,
  fileDrop: "Remove",
  fileBroken: "The upload failed: the connection was lost. Choose the file again.",
  send: "Send this to the office",
  sending: "Sending …",
  sent: "Sent. Your reply is shown above with the date.",
  saidTitle: "What you have said so far",
  said: (day: string, what: string) => `${day}: ${what}`,
  saidOther: "Replied by mail, by phone or in person",
  saidFile: "With a file.",

  sign: "Sign on screen",
  signNote:
    "Only if you want to. A paper signature is equally valid; request one below at no charge.",
  signFolded: "optional; open the PDF first",
  signAs: (name: string) => `You are signing for ${name}.`,
  agreeTo: "What you agree to",
  intents: {
    enter: ({ office, place }: Put) =>
      `I allow ${office} to enter ${place} to inspect, measure and test, as the letter says.`,
    dig: ({ office, place }: Put) =>
      `I allow ${office} to dig at ${place} in the marked area, on the terms in the letter.`,
    pay: ({ place }: Put, amount: string, version: number) =>
      `I agree to pay ${amount} as the share of ${place}, version ${version} of the split. It binds me once everyone who is asked to pay has signed, or once the work has begun; until then I can withdraw it.`,
  },
  intentLetter: ({ reference, date }: Put) => `The letter is ${reference} of ${date}.`,
  intentCapacity: (name: string, capacity: string) => `I sign for ${name} as its ${capacity}.`,
  name: "Your full name",
  nameHint:
    "Typing it here is your signature. If it is not the name above, someone in the office checks it before it counts.",
  nameOf: (person: string) => `Full name of ${person}`,
  nameEach: "Each of you types your own name; one can’t sign for the other.",
  openFirst:
    "Before you sign, open the letter as a PDF. That shows that you can read and keep it; without it the signature is not taken.",
  openedFirst: "You have opened the letter as a PDF.",
  officeSession: (person: string) =>
    `This browser is signed in to the office as ${person}. You see what the reader of the letter sees; nothing is noted, and nothing can be answered or signed here until you sign out.`,
  capacity: "Your role",
  capacityHint: "For a trust, company or estate: trustee, manager, executor.",
  draw: "You may also draw your signature",
  drawNote: "With a finger, a pen or the mouse. The typed name is enough without it.",
  drawPlace: "Signature box",
  drawClear: "Clear",
  records: "I have read how signing on screen works, and agree to sign this letter on screen.",
  recordsTitle: "How signing on screen works",
  signNow: "Sign now",
  signing: "Signing …",
  signDone: "Signed. Your copy is below; it stays here as long as this page.",
  paper: "Send me paper copies",
  paperDone: "We have your request and will mail it.",
  onPaper: "To be signed on paper",
  onPaperNote:
    "This agreement is to be recorded with the land records. It is signed on paper before a notary public; a signature on a screen is not enough. Tell the office above when and where works for you.",
  cannotSign: "Signing",

  signedTitle: "What you have signed",
  signedOn: (when: string) => `Signed ${when}.`,
  standing: {
    current: "Valid.",
    "superseded-amount":
      "Signed for an earlier amount: a newer amount replaces it, and this signature does not cover the new one.",
    withdrawn: "You have withdrawn this.",
    refused: "You refused later.",
    asked: "The office has asked you again.",
    "name-held":
      "Signed, but it does not count yet: the name typed is not the one the office has. Someone there will check it and tell you.",
    "name-refused":
      "The office did not accept the name typed as yours, so this does not count. You can sign again, here or on paper.",
    replaced: "Replaced by your later answer.",
  },
  copySent: (address: string) => `A copy goes to ${address}.`,
  copyHere: "Keep a copy: open the letter as you signed it, and print this page.",
  openSigned: "Open the letter as signed",
  withdraw: "Withdraw this consent",
  withdrawing: "Withdrawing …",
  withdrawConfirm: "Withdraw? The office is notified with the date and time.",
  withdrawn: "Withdrawn. The office has been notified.",
  withdrawNote:
    "You can withdraw this here at any time while this page is available, or in writing to the office.",
  withdrawPay:
    "You can withdraw this here until everyone who is asked to pay has signed, or the work has begun. After that it is binding.",
  binding: {
    "all-signed": (day: string) => `Binding since ${day}: everyone who is asked to pay has signed.`,
    "work-begun": (day: string) => `Binding since ${day}: the work has begun.`,
  },
  release: "Ask to be released",
  releasing: "Asking …",
  releaseNote:
    "It is binding, so it can’t be withdrawn with a button. Enter why you want to be released; someone in the office will answer you.",
  releaseWhy: "Why",
  releaseAsked: (day: string) =>
    `You asked on ${day} to be released. The office has not answered yet.`,
  releaseSent: "The office has your request, and someone there will answer you.",
  withdrawDug: "Once digging has started, the office will first make the site safe.",

  kept: "What is kept",
  keptNote:
    "The office keeps what you say and sign here, and notes when this page is opened, with your IP address. No one else on the line sees it. Don’t share the link: anyone who has it can reply for you.",
  contact: "Contact the office",
  telephone: "Phone",
  email: "Email",
  gas: "A gas line may pass through a sewer. If you smell gas, leave, then call 911 and the gas company.",
  goneTitle: "This link does not work",
  goneWords:
    "It may have expired, been replaced by a newer one, or was only partly copied. Ask the office that wrote to you for a new link.",
  tooManyTitle: "Too many tries",
  noScripts:
    "To add a photo or document here, JavaScript must be enabled. You can also mail it or bring it to the office.",
  refusedPlain: "It was not saved. Reload the page, or call the office.",

  kinds,
  stops,
  deeds,

  certificate: {
    title: "Certificate of a signature given on screen",
    signed: "Name as typed",
    party: "For",
    name: "Name check",
    nameHeld: "not the one on file; someone in the office has yet to check it",
    nameAccepted: (by: string, day: string, why: string) =>
      `accepted by ${by} of the office, ${day}: ${why}`,
    nameRefused: (by: string, day: string, why: string) =>
      `not accepted by ${by} of the office, ${day}: ${why}`,
    consent: "Consent",
    property: "Property",
    amount: "Amount",
    version: (number: number) => `version ${number} of the split`,
    intent: "Boxes checked",
    when: "Signed",
    zone: (zone: string) => `office time (${zone})`,
    utc: "UTC time",
    address: "IP address",
    agent: "Browser",
    unknown: "unknown",
    document: "Document signed",
    documentHash: "Document checksum (SHA-256)",
    bytes: (count: number) => `${count.toLocaleString("en-US")} bytes`,
    disclosure: "Consent to electronic records",
    drawing: "Drawn signature",
    drawn: "kept as a picture",
    typedOnly: "none; the name was typed",
    views: "Opened and checked before signing",
    copy: "Copy",
    copySent: (messageId: string) => `sent by email, message ${messageId}`,
    copyOnly: "to be opened on the private page",
    hash: "Checksum of this signature",
    previous: "Checksum of the previous signature",
    first: "none; this is the first on the line",
    note: "The document is exactly the file with this checksum. If one byte of it or one word of this signature were changed, the checksums would no longer match.",
  },
  ticks: { intent: "Checked what is agreed to", records: "Checked the consent to sign on screen" },

  mail: {
    subject: (reference: string) => `Your copy of what you signed: ${reference}`,
    opening: (name: string) => `For ${name}:`,
    words:
      "Attached are the letter you signed on screen, exactly as you signed it, and the certificate of your signature. Keep both.",
    back: "If this was not you, or you want to withdraw it, tell us at once.",
  },
  /** Beside the QR code of a letter on paper. */
  printed: {
    scan: "Scan to read and reply on your phone",
    type: (door: string) => `or go to ${door} and type this code`,
    until: (day: string) => `Good through ${day}`,
    own: "Only for you; please don’t share it",
  },
  /** Where the code of a letter on paper is typed. */
  door: {
    title: "Open your letter",
    note: "Type the code printed beside the square at the top of your letter.",
    code: "Code from your letter",
    required: "required",
    hint: "Three groups of four, for example K7QM-2XPD-9RT3. Capitals and hyphens do not matter.",
    open: "Open my letter",
    opening: "Opening …",
    help: "No code, or it does not work? Call the office that wrote to you: its phone number is on the letter.",
  },
  linkInMail: (url: string, day: string) =>
    `Read this letter and reply on screen until ${day}:\n${url}\nThe link is only for you; please don’t share it.`,

  disclosure: (office: string, contact: string) => [
    "You can sign on this screen or on paper. If you sign here, this one letter, your signature and your copy are electronic. It covers this letter and nothing else.",
    `You can have the letter on paper instead, before or after you sign, at no charge: use the button “Send me paper copies”, or tell ${office}${contact}.`,
    "You can change your mind about signing on screen. Before you sign, just ask for paper. Afterwards, tell us, and all further letters come on paper; it is free, and anything already signed stays in effect.",
    "You can also withdraw your consent to enter or dig at any time: with the button beside it on this page, or in writing to us. It takes effect when we receive it.",
    "You can withdraw an agreement to pay in the same way until everyone who is asked to pay has signed, or until the work has begun, whichever comes first. After that it is binding; if you then ask to be released, someone here will answer you. You keep any right to cancel that the law gives you.",
    "You need a phone or computer with a recent web browser that shows this page and opens a PDF, and a way to keep or print it. Opening the letter’s PDF here before you sign shows that you can.",
    "If your email or mailing address changes, tell us, so that your copies reach you.",
    "With a signature we keep: your name as you type it, the drawing if you make one, an exact copy of the letter and its checksum, the date and time, your IP address, your browser type, and what you opened and checked here before. A name that is not the one we have for you is checked by someone here before the signature counts.",
  ],
};

/** The words of one language. */
export type LinkWords = typeof EN;
