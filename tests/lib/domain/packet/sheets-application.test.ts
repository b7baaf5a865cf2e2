import { expect, test } from "vitest";
import type { SheetKind } from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formFact } from "#lib/domain/form/form-facts.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { aCondition, anApplication, aSurfaceCut } from "#tests/support/application.ts";
import { anOffice, aRequirement } from "#tests/support/file.ts";
import { askingFor, sampleLine } from "#tests/support/sample-line.ts";

function packet(kinds: readonly SheetKind[], change: Partial<LineFile> = {}) {
  const line = askingFor(kinds, sampleLine());
  return composePacket({ ...line, file: { ...line.file, ...change } });
}

test("who signed, the new pipe and the surface are in the packet where they are asked for, and open where not entered", () => {
  const asked = packet(["attestation", "pavement"], {
    applications: [anApplication()],
    surfaceCuts: [aSurfaceCut(), aSurfaceCut({ id: "open", walls: "not-set" })],
  });
  const words = (kind: SheetKind) =>
    JSON.stringify(asked.sheets.find((sheet) => sheet.kind === kind)?.blocks);
  expect(words("attestation")).toContain("November 20, 2026");
  expect(words("attestation")).toContain("NOT ON FILE");
  expect(words("pavement")).toContain('"30"');
  expect(words("pavement")).toContain('["Total","","","unknown",""]');
  expect(words("pavement")).toContain("One lane stays open");
  expect(asked.sheets.map(({ kind }) => kind)).not.toContain("proposed-pipe");
  expect(asked.missing.join(" ")).toContain("how the walls stand not entered");
});

test("how traffic and people on foot get by is printed, goes into a form, and is missing until said", () => {
  const said = packet(["pavement"], { applications: [anApplication()] });
  const words = JSON.stringify(said.sheets.find(({ kind }) => kind === "pavement")?.blocks);
  expect(words).toContain('["Traffic","One lane stays open"]');
  expect(words).toContain('["People on foot","Walk on the far side"]');
  expect(said.missing.join(" ")).not.toMatch(/gets? past the work is not entered/);
  const line = sampleLine();
  const file = { ...line.file, applications: [anApplication()] };
  const input = { ...line, file, authority: { name: "" }, permitKind: "side-sewer" } as const;
  expect(formFact("application.traffic")?.of(input)).toEqual(["One lane stays open"]);
  expect(formFact("application.pedestrians")?.of(input)).toEqual(["Walk on the far side"]);
  const silent = packet(["pavement"], {
    applications: [{ ...anApplication(), traffic: "", pedestrians: " " }],
  });
  expect(silent.missing.join(" ")).toContain("How traffic gets past the work is not entered.");
  expect(silent.missing.join(" ")).toMatch(/people on foot.* not entered/i);
});

test("application data is whole only with an applicant", () => {
  const state = (applicant: string) =>
    packet(["application"], { applications: [{ ...anApplication(), applicant }] }).checks.find(
      ({ requirementId }) => requirementId === "r-application",
    );
  expect(state(" ")).toMatchObject({
    state: "missing",
    sentence: expect.stringContaining("The applicant is not entered."),
  });
  expect(state("Ruth Lindqvist")?.sentence).not.toContain("applicant");
  expect(packet([]).missing.join(" ")).toContain("The applicant is not entered.");
});

test("the new pipe has few enough columns to stand upright among the other sheets", () => {
  const asked = packet(["proposed-pipe"]);
  const sheet = asked.sheets.find(({ kind }) => kind === "proposed-pipe");
  const tables = sheet?.blocks.flatMap((block) => (block.kind === "table" ? [block] : [])) ?? [];
  expect(tables).toHaveLength(1);
  for (const { head, rows } of tables) {
    expect(head.length).toBeLessThanOrEqual(8);
    for (const row of rows) expect(row).toHaveLength(head.length);
  }
});

test("a sheet whose condition says for sure that it does not apply is left out, and its check says why", () => {
  const line = askingFor(["tests"], sampleLine());
  const { authority } = line.file;
  if (authority === null) throw new Error("no authority");
  const id = authority.requirements.find(({ sheet }) => sheet === "tests")?.id ?? "";
  const found = (fact: "buildings-over", limit: number) =>
    composePacket({
      ...line,
      file: {
        ...line.file,
        authority: { ...authority, conditions: [aCondition(fact, { requirementId: id, limit })] },
      },
    });
  const out = found("buildings-over", 9_900);
  expect(out.sheets.map(({ kind }) => kind)).not.toContain("tests");
  expect(out.checks.find((check) => check.requirementId === id)).toMatchObject({
    state: "does-not-apply",
    why: expect.stringContaining("Does not apply:"),
  });
  expect(found("buildings-over", 0).sheets.map(({ kind }) => kind)).toContain("tests");
});

test("one paper of the contractor is judged by its own end, whatever was marked", () => {
  const line = sampleLine();
  const { authority } = line.file;
  if (authority === null) throw new Error("no authority");
  const comp = aRequirement("comp", { sheet: "upload", paper: "workers-compensation" });
  const state = (expires: string) =>
    composePacket({
      ...line,
      office: anOffice({ compensation: "Fund 55-0177", compensationExpiresOn: expires }),
      file: {
        ...line.file,
        authority: { ...authority, requirements: [comp] },
        requirementMarks: [
          { id: "m", requirementId: "comp", state: "in-hand", uploadId: null, note: "" },
        ],
      },
    }).checks[0];
  expect(state("2026-01-01")).toMatchObject({
    state: "missing",
    sentence: expect.stringContaining("Marked as on file, but: Workers’ compensation"),
  });
});
