import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

const APP = path.resolve(import.meta.dirname, "../../app");

/** Actions with an order of their own, and why. */
const APART: Readonly<Record<string, string>> = {
  "signInAction, signOutAction": "nobody is signed in",
  setUpAction: "there is no office yet",
  "answerAction, openByCodeAction, paperAction, signAction, withdrawAction":
    "a link's reader is no one of the office",
  "saveRowsAction, savePeopleAction, savePartAction": "a table is answered by its cells",
  readTableAction: "nothing is stored",
  makeLinkAction: "its secret is told this once",
};

function actionFiles(): string[] {
  return fs
    .readdirSync(APP, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => fs.readFileSync(path.join(APP, name), "utf8"))
    .filter((text) => text.startsWith('"use server";'));
}

test("every action goes the way that all go, but for those named here", () => {
  const apart = Object.keys(APART).flatMap((names) => names.split(", "));
  const found = actionFiles().flatMap((text) =>
    [...text.matchAll(/^export (?:const (\w+) = (\w+)\(|async function (\w+))/gm)].map(
      ([, name = "", by = "", own = ""]) => ({ name: name || own, by }),
    ),
  );
  expect(found.length).toBeGreaterThan(80);
  const others = found.filter(
    ({ by }) => !/^(formAction|officeAction|askAction|jobAction)$/.test(by),
  );
  expect(others.map(({ name }) => name).sort()).toEqual(apart.sort());
});

test("every form over which somebody else may have saved says what it was filled in from", () => {
  const takes = actionFiles().flatMap((text) => {
    const parts = new Map(
      text
        .split(/^(?:export )?const /m)
        .slice(1)
        .map((part) => [part.slice(0, part.indexOf(" ")), part]),
    );
    const says = (part = "") => /\bseen: (text\b|textOrNull)/.test(part);
    return [...parts].flatMap(([name, part]) => {
      const [, fields = ""] = /\btyped: (\w+),/.exec(part) ?? [];
      return name.endsWith("Action") && (says(part) || says(parts.get(fields))) ? [name] : [];
    });
  });
  expect(takes).toContain("alignAction");
  expect(takes.length).toBeGreaterThan(25);
  const pages = fs
    .readdirSync(APP, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".tsx"))
    .map((name) => fs.readFileSync(path.join(APP, name), "utf8"));
  const forms = (action: string) =>
    pages.flatMap((text) =>
      [...text.matchAll(/<(\w+Form)\b[\s\S]*?<\/\1>/g)]
        .map(([form]) => form)
        .filter((form) => new RegExp(`\\b${action}\\b`).test(form)),
    );
  const silent = takes.filter((action) => {
    const found = forms(action);
    return found.length === 0 || found.some((form) => !/SeenField|name="seen"/.test(form));
  });
  expect(silent).toEqual([]);
});
