import fs from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";

// What people read is American office English, one word for one thing. Looked at are the words of
// the code that reach people: prose in strings and templates, and the text between tags.

const ROOT = path.resolve(import.meta.dirname, "..");
const FOLDERS = ["app", "lib", "seed"];
/** Text that is heard or read from others, not said by us: what technicians and sheets may say. */
const HEARD = [
  /^lib\/domain\/narration\//,
  /^lib\/domain\/party\/postal-words\.ts$/,
  /^app\/lines\/\[lineId\]\/synonyms\.ts$/,
];

const BRITISH =
  /\b(colour|neighbour|licence|notaris|centre|fibre|grey\b|labour|favour|honour|metre|kerb|programme|organis|recognis|authoris|whilst|amongst|judgement|instalment|ageing|cancell(?:ed|ing)|travell|levell|labell|modell|storey|tyre|plough|catalogue|telephone|enquir|learnt|spelt)\w*/giu;

/** Said otherwise in this program; what to say instead. */
const DECIDED: readonly (readonly [RegExp, string])[] = [
  [/\b(some|no|any|every)body\b/giu, "someone, no one, anyone, everyone"],
  [/\bmend(s|ed|ing)?\b/giu, "fix (data), repair (pipe)"],
  [/\btake(s|n)? (it |this |that |them )?down\b|\btook (it |them )?down\b/giu, "record, enter"],
  [/\b(bring|brought|brings) (it |them |one |rows |a line )?in\b/giu, "import"],
  [/\bin hand\b/giu, "on file"],
  [/(?<!cable )\b(runs?|ran) out\b/giu, "expire"],
  [/\bmail address/giu, "email address"],
  [/\b(tick|ticks|ticked|ticking)\b/giu, "select, check"],
  [/\banswers? for\b/giu, "is responsible for"],
  [/\bput right\b/giu, "fix"],
  [
    /\btak(e|es|en|ing) (it |this |that |them )?back\b|\btook (it |them )?back\b/giu,
    "undo, withdraw",
  ],
  [/\bstale\b/giu, "out of date"],
  [/\bstretch(es)?\b/giu, "section"],
  [/\bfaults?\b/giu, "defect"],
  [/\bnot so\b/giu, "not a match"],
  [/\bstands? as\b|\bhow (it|each) stands\b/giu, "status"],
  [/\bfrom memory\b/giu, "(not said at all)"],
  [/\bnotario\b/giu, "notary public"],
  [/\bpause of (the )?drains\b|\bdrain pause\b/giu, "drain shutdown"],
  [/\b(the|a) pause\b/giu, "the shutdown"],
  [/\blive (branch|connection|tie-in)/giu, "active"],
  [/\btaps? sticking\b/giu, "connection sticking into pipe"],
];

interface Said {
  readonly file: string;
  readonly line: number;
  readonly words: string;
}

/** Everything in the code that reads as prose: two words or more, or text between tags. */
function saidIn(file: string): Said[] {
  const source = ts.createSourceFile(
    file,
    fs.readFileSync(path.join(ROOT, file), "utf8"),
    ts.ScriptTarget.Latest,
    true,
    file.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );
  const found: Said[] = [];
  const add = (node: ts.Node, words: string) => {
    const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
    found.push({ file, line: line + 1, words });
  };
  const visit = (node: ts.Node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isLiteralTypeNode(node)) return;
    if (ts.isJsxAttribute(node) && node.name.getText(source) === "className") return;
    if (ts.isJsxText(node)) add(node, node.text);
    else if (isText(node) && /\S\s+\S/.test(node.text)) add(node, node.text);
    node.forEachChild(visit);
  };
  visit(source);
  return found;
}

function isText(node: ts.Node): node is ts.Node & { readonly text: string } {
  return (
    ts.isStringLiteral(node) ||
    ts.isNoSubstitutionTemplateLiteral(node) ||
    ts.isTemplateHead(node) ||
    ts.isTemplateMiddle(node) ||
    ts.isTemplateTail(node)
  );
}

const SAID = FOLDERS.flatMap((folder) =>
  fs
    .readdirSync(path.join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .map((name) => path.posix.join(folder, name))
    .filter((file) => /\.(tsx?|mjs)$/.test(file) && !HEARD.some((heard) => heard.test(file))),
).flatMap(saidIn);

function where(pattern: RegExp): string[] {
  return SAID.flatMap(({ file, line, words }) =>
    [...words.matchAll(pattern)].map(([found]) => `${file}:${line} ${found.trim()}`),
  );
}

test("all that people read is looked at", () => {
  expect(SAID.length).toBeGreaterThan(5_000);
  const files = new Set(SAID.map(({ file }) => file));
  for (const file of ["app/sign-in/page.tsx", "lib/domain/paper/words-en.ts"])
    expect(files).toContain(file);
});

test("what people read is spelled as in the USA", () => {
  expect(where(BRITISH)).toEqual([]);
});

describe("what people read says each thing in one word", () => {
  test.each(DECIDED)("not %s but %s", (pattern) => {
    expect(where(pattern)).toEqual([]);
  });
});

/** Names in line files and in the history, which old files and entries keep. */
const KEPT = new Set(["colour", "neighbour", "cancelled", "licence", "licenceExpiresOn"]);

/** The names in the code: identifiers, keys and words of closed sets. */
function namesIn(file: string): string[] {
  const text = fs.readFileSync(path.join(ROOT, file), "utf8");
  const found: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isIdentifier(node) || (isText(node) && /^[\w-]+$/.test(node.text)))
      found.push(node.text);
    node.forEachChild(visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return found;
}

test("names in the code are spelled as in the USA, but for those that old files keep", () => {
  const foreign =
    /colour|neighbour|licence|centre(?!ce)|grey|favour|honour|metre|programme|organis|recognis|authoris|normalis|initialis|serialis|cancell|labell(?!ed)|modell|judgement|catalogue|spelt|learnt/i;
  const files = [...new Set(SAID.map(({ file }) => file))];
  const found = files.flatMap((file) =>
    namesIn(file)
      .filter((name) => foreign.test(name) && !KEPT.has(name))
      .map((name) => `${file} ${name}`),
  );
  expect(found).toEqual([]);
});
