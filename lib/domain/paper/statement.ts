import type { LineFile, Office } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Party, Property } from "../facts/party.ts";
import type { SplitVersion } from "../facts/split.ts";
import type { Share } from "../findings/outcome.ts";
import type { Report } from "../findings/report.ts";
import { formatCents } from "../money/format-cents.ts";
import { addressLines } from "../party/address.ts";
import { languagesOfAll } from "../party/letter-languages.ts";
import { formatPhone } from "../party/phone.ts";
import { signersFor } from "../party/signers.ts";
import type { Language } from "../say/language.ts";
import { mergeStretches } from "../say/merge.ts";
import { latestSplit } from "../split/latest-split.ts";
import type { Day } from "../time/day.ts";
import { cautionBlocks } from "./cautions.ts";
import { heading, list, paragraph, table, workTable } from "./common.ts";
import { excludedParts } from "./excluded.ts";
import { type LetterFacts, letterFacts, otherSharers, placeOf } from "./facts.ts";
import type { Letter, LetterBlock } from "./letter.ts";
import { letterStrip } from "./letter-strip.ts";
import { exactLines, itemSum, sumNotes } from "./statement-sum.ts";
import { STATEMENT_WORDS, type StatementWords } from "./statement-words.ts";
import { alternativeRows } from "./sum.ts";

/** A statement as data: page and PDF are made from it. It has the parts of a letter but no slip. */
export type Statement = Omit<Letter, "kind">;

interface StatementInput {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly propertyId: string;
  /** A version of the split; without one, the version in force. */
  readonly splitId?: string | null;
  /** In which languages; without them, in each that one of its title holders wants. */
  readonly languages?: readonly [Language, ...Language[]];
}

interface StatementFacts {
  readonly letter: LetterFacts;
  readonly own: StatementWords;
  readonly property: Property;
  readonly split: SplitVersion;
  readonly names: readonly string[];
}

/**
 * The statement for one property under the split in force or the one named, in the languages of its title
 * holders, the first's first: the pipe and the part they use, each piece of work, and the sum in steps for a pencil. It
 * bears only its reader’s name and amounts, unless the line’s file says that statements show the
 * others’ amounts too. Null before a split is chosen. Throws where there is no such property.
 */
export function statementOf(input: StatementInput): Statement | null {
  const named = input.file.splits.find(({ id }) => id === input.splitId);
  const split = named ?? latestSplit(input.file);
  if (split === null) return null;
  const [first, second] = input.languages ?? languagesHere(input);
  const statement = statementIn(input, split, first);
  return second === undefined
    ? statement
    : { ...statement, also: { ...statementIn(input, split, second), kind: "proposed-split" } };
}

function languagesHere({ file, office, propertyId }: StatementInput) {
  const property = file.properties.find(({ id }) => id === propertyId) ?? null;
  return languagesOfAll(holdersOf(file, propertyId), { property, office });
}

function holdersOf(file: LineFile, propertyId: string): Party[] {
  return signersFor(file, propertyId).flatMap(
    ({ partyId }) => file.parties.find((each) => each.id === partyId) ?? [],
  );
}

function statementIn(input: StatementInput, split: SplitVersion, language: Language): Statement {
  const facts = factsOf(input, split, language);
  const { letter, own, property, names } = facts;
  const { words } = letter;
  const reference = `${shortCode(input.file.line.id)}-S${split.number}`;
  const { office, report } = input;
  const license = office.license === "" ? "" : words.frame.license(office.license);
  return {
    language: letter.notice.language,
    title: own.title,
    day: report.today,
    date: words.day(report.today),
    from: [
      office.name,
      ...addressLines(office.address),
      formatPhone(office.phone),
      office.email,
    ].filter((line) => line !== ""),
    to: [names.join(" & "), ...addressLines(letter.party.mailing ?? property.address)],
    reference,
    subject: own.subject(letter.place),
    answerBy: "",
    greeting: "",
    blocks: blocksOf(facts),
    closing: "",
    footer: [office.name, license, reference].filter((part) => part !== "").join(" · "),
    stations: [],
  };
}

/** The statements of these properties that have a share, in this order; all of them where none is named. */
export function statementsOf(
  input: Omit<StatementInput, "propertyId">,
  propertyIds: readonly string[],
): Statement[] {
  const sharing = propertyIds.filter((id) => input.file.properties.some((each) => each.id === id));
  return sharing.flatMap((propertyId) => statementOf({ ...input, propertyId }) ?? []);
}

/** Properties with a share in the split in force, in the order of the split. */
export function statementPlaces(file: Pick<LineFile, "splits">): string[] {
  return (latestSplit(file)?.shares ?? []).flatMap(({ propertyId }) => propertyId ?? []);
}

function factsOf(
  { file, report, office, propertyId }: StatementInput,
  split: SplitVersion,
  language: Language,
): StatementFacts {
  const property = file.properties.find((each) => each.id === propertyId);
  if (property === undefined) throw new Error(`There is no property ${propertyId} on this line`);
  const holders = holdersOf(file, propertyId);
  const [first = nobody(property, language)] = holders;
  const known = file.parties.some(({ id }) => id === first.id);
  const letter = letterFacts({
    file: known ? file : { ...file, parties: [...file.parties, first] },
    report,
    office,
    notice: noticeFor(first.id, { propertyId, split, language, today: report.today }),
  });
  const names = holders.length === 0 ? [first.name] : holders.map(({ name }) => name);
  return { letter, own: STATEMENT_WORDS[language], property, split, names };
}

/** Whoever owns it, where no name is known. */
function nobody(property: Property, language: Language): Party {
  const name = STATEMENT_WORDS[language].owner(placeOf(property.address));
  const party = { id: `owner of ${property.id}`, kind: "person", language } as const;
  return {
    ...party,
    name,
    mailing: null,
    careOf: "",
    email: "",
    phone: "",
    needs: "",
    needsSaidBy: "",
    note: "",
  };
}

function noticeFor(
  partyId: string,
  about: {
    readonly propertyId: string;
    readonly split: SplitVersion;
    readonly language: Language;
    readonly today: Day;
  },
): Notice {
  return {
    id: `statement ${about.propertyId}`,
    kind: "proposed-split",
    partyId,
    propertyId: about.propertyId,
    tieInId: null,
    splitId: about.split.id,
    language: about.language,
    alsoIn: null,
    state: "draft",
    createdOn: about.today,
    createdBy: "",
    replyBy: null,
    ownWords: "",
    frozen: null,
    frozenHash: null,
    sentAt: null,
    uploadId: null,
    paperId: "",
  };
}

function blocksOf(facts: StatementFacts): LetterBlock[] {
  const { letter, own, split } = facts;
  const { words, place, office } = letter;
  const rule = words.rule[split.rule];
  const contact = [office.name, formatPhone(office.phone), office.email].filter(
    (part) => part !== "",
  );
  return [
    paragraph(own.opening(place, letter.file.line.name, formatCents(split.total))),
    ...shareBlocks(facts),
    ...list([
      `${own.version} ${split.number}, ${words.day(split.chosenOn)}: ${words.split.ruleLine(rule.title, rule.sentence)}`,
      ...(split.reason === "" ? [] : [words.split.reason(split.reason)]),
    ]),
    heading(own.pipe),
    ...list(passLines(facts)),
    letterStrip(letter, "yours"),
    ...sumPart(facts),
    ...othersPart(facts),
    ...rulesPart(facts),
    heading(own.changes),
    paragraph(own.changeLine),
    heading(own.excluded),
    ...list([...excludedParts(letter), words.split.excludedCause]),
    paragraph(`${own.check} ${contact.join(", ")}.`),
    ...cautionBlocks(letter),
    ...exactPart(facts),
  ];
}

function shareBlocks({ letter, own }: StatementFacts): LetterBlock[] {
  const { words, place, share, outcome } = letter;
  if (share === null) return [paragraph(words.split.noShare(place))];
  const amount = formatCents(share.amount);
  const rest = formatCents(share.amount - share.recoverable);
  return [
    { kind: "amount", words: words.split.amount(place), amount },
    ...(share.recoverable === 0
      ? []
      : [paragraph(own.recoverable(formatCents(share.recoverable), rest))]),
    ...(outcome === null ? [paragraph(own.stale)] : []),
  ];
}

/** Where the reader’s connections join, and which part of the pipe their sewage passes. */
function passLines({ letter, own, property }: StatementFacts): string[] {
  const { report, words } = letter;
  const joins = letter.own.map(({ tieIn, station }) =>
    station === null ? own.joinsUnknown(tieIn.label) : own.joins(tieIn.label, words.feet(station)),
  );
  const passed = mergeStretches(
    report.reaches
      .filter(({ servedBy }) => servedBy.includes(property.id))
      .map(({ from, to }) => ({ from, to })),
    () => true,
  );
  const length = passed.reduce((sum, { from, to }) => sum + to - from, 0);
  const where = words.list(passed.map(({ from, to }) => words.stretch(from, to)));
  return [
    ...(joins.length === 0 ? [own.noConnection] : joins),
    passed.length === 0
      ? own.passesNone
      : own.passes(where, words.feet(length), words.feet(report.extent)),
  ];
}

function sumPart(facts: StatementFacts): LetterBlock[] {
  const { letter, own, split } = facts;
  const worked = workedShare(facts);
  if (worked === null) return [heading(letter.words.split.work), ...workTable(letter)];
  return [
    heading(own.sum),
    ...itemSum(letter, own, { worked, total: split.total }),
    ...list(sumNotes(letter, own, { worked, total: split.total })),
    heading(own.alone_),
    paragraph(standAloneWords(facts)),
  ];
}

/** The only place for fractions of a cent. */
function exactPart(facts: StatementFacts): LetterBlock[] {
  const { letter, own } = facts;
  const worked = workedShare(facts);
  const lines = worked === null ? [] : exactLines(letter, own, worked);
  return lines.length === 0 ? [] : [heading(own.exact), paragraph(lines.join(" "))];
}

/** The sum behind the frozen amount, while the facts still give it. */
function workedShare({ letter, property }: StatementFacts): Share | null {
  const worked = letter.outcome?.shares.find((each) => each.propertyId === property.id) ?? null;
  return worked !== null && worked.amount === letter.share?.amount ? worked : null;
}

function standAloneWords({ letter, own, property }: StatementFacts): string {
  const test = letter.outcome?.standAlone ?? null;
  if (test === null) return own.testUnknown;
  if (test.passes) return own.passesTest;
  if (!test.group.includes(property.id)) return own.failsOthers;
  return test.group.length === 1 ? own.failsYou(formatCents(test.excess)) : own.failsGroup;
}

/** The others as addresses; with their amounts only where the office decided so. */
function othersPart({ letter, own, property, split }: StatementFacts): LetterBlock[] {
  const { file, words } = letter;
  const others = otherSharers(letter);
  if (others.length === 0) return [heading(own.others), paragraph(words.split.noOthers)];
  if (!file.line.statementOthers)
    return [heading(own.others), paragraph(own.othersOnly(words.list(others)))];
  const rows = split.shares
    .filter((share) => share.propertyId !== property.id)
    .map(({ propertyId, tieInId, amount }) => {
      const place = file.properties.find((each) => each.id === propertyId);
      const label = file.tieIns.find((each) => each.id === tieInId)?.label ?? words.unknown;
      const name = place === undefined ? own.unknownOwner(label) : placeOf(place.address);
      return [name, formatCents(amount)];
    });
  const mine = [letter.place, formatCents(letter.share?.amount ?? 0)];
  const total = [words.split.total, formatCents(split.total)];
  return [
    heading(own.others),
    ...table(own.othersHead, [mine, ...rows, total], { numeric: [1], totals: 1 }),
  ];
}

function rulesPart({ letter, own, split }: StatementFacts): LetterBlock[] {
  const { file, words } = letter;
  const rows = file.line.statementRules ? alternativeRows(letter) : [];
  if (rows.length === 0) return [];
  const mine = [
    `${words.rule[split.rule].title} (${own.chosen})`,
    formatCents(letter.share?.amount ?? 0),
  ];
  return [
    heading(own.rules),
    ...table(words.split.alternativesHead, [mine, ...rows], { numeric: [1] }),
  ];
}

function shortCode(id: string): string {
  const plain = id.replace(/[^0-9a-z]/gi, "").toUpperCase();
  return plain.slice(-5) || "0";
}
