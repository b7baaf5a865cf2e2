import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { ownersToAuthorize } from "#lib/domain/application/application-of.ts";
import { pipeProposals } from "#lib/domain/application/proposed-pipe.ts";
import { cutAreas } from "#lib/domain/application/surface-area.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { PERMIT_KINDS, type PermitKind } from "#lib/domain/facts/permit.ts";
import { type DrawingCheck, drawingChecklist } from "#lib/domain/packet/drawing-checklist.ts";
import { PERMIT_KIND_WORDS } from "#lib/domain/permit/state-words.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { counted } from "../../names.ts";
import { QuestionHead } from "../../question-head.tsx";
import { ApplicationForm } from "./application-form.tsx";
import { Areas } from "./areas.tsx";
import {
  authorizationColumns,
  BLANK_PIPE,
  BLANK_SURFACE,
  pipeColumns,
  SURFACE_COLUMNS,
} from "./columns.ts";
import { DrawingChecks } from "./drawing.tsx";

export const metadata: Metadata = { title: "Application" };

/** What the application says beside the facts of the line: who applies, the new pipe, the surface, the drawing. */
export default async function ApplicationPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const work = may("work-the-file") && file.line.closedOn === null;
  const checks = drawingChecklist({ file, report });
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      <Section
        title="Applicant"
        id="applicant"
        note="Printed on the application and offered to the authority’s forms."
      >
        {work ? (
          <ApplicationForm lineId={lineId} file={file} kind="side-sewer" />
        ) : (
          <NoForm file={file} />
        )}
      </Section>
      {work
        ? moreKinds(file).map((kind) => (
            <Section
              key={kind}
              title={`${PERMIT_KIND_WORDS[kind]} application`}
              folded="its own facts"
            >
              <ApplicationForm lineId={lineId} file={file} kind={kind} />
            </Section>
          ))
        : null}
      <Section
        title="Owners’ authorization"
        id="owners"
        folded={authorizedWords(file)}
        note="Each owner’s signed word that the contractor may apply for them."
      >
        <LineGrid
          lineId={lineId}
          table="ownerAuthorizations"
          columns={authorizationColumns(file)}
          blank={{ propertyId: null, partyId: null, signedOn: null, uploadId: null, note: "" }}
          addWord="authorization"
          label="Owners’ authorizations"
          emptyWords="None yet. Example: 12 Fennel Row, its owner, signed 11/20/2026."
        />
      </Section>
      <Section
        title="Proposed pipe"
        id="pipe"
        foldedOnPhone={counted(file.proposedPipes.length, "row")}
        note="What each piece of work puts in. A blank length is the section’s."
      >
        <LineGrid
          lineId={lineId}
          table="proposedPipes"
          columns={pipeColumns(file)}
          blank={{ itemId: file.scope[0]?.id ?? null, ...BLANK_PIPE }}
          addWord="pipe"
          label="Proposed pipe"
          emptyWords="No pipe yet. Example: PVC, 8 in, 2%, open trench, 6 in of crushed rock, gasket, shielded coupling."
        />
        <PipeLacks file={file} />
      </Section>
      <Section
        title="Surfaces to cut"
        id="surfaces"
        foldedOnPhone={counted(file.surfaceCuts.length, "surface")}
        note="Square feet follow from the trench, the soil and the authority’s least cut."
      >
        <LineGrid
          lineId={lineId}
          table="surfaceCuts"
          columns={SURFACE_COLUMNS}
          blank={BLANK_SURFACE}
          addWord="surface"
          label="Surfaces to cut"
          emptyWords="No surface yet. Example: 0 to 12 ft, asphalt, trench 3 ft, shored, hot mix 4 in."
        />
        <Areas areas={cutAreas(file, report.today)} />
      </Section>
      <Section
        title="Drawing checklist"
        id="drawing"
        folded={drawingWords(checks)}
        note="What this authority looks for on the drawing. What Wyebook draws, it checks itself."
      >
        {checks.length === 0 ? (
          <Empty title="This authority has no drawing checklist.">
            <p>
              Enter it once in the <Link href="/office">office pages</Link>, with its source.
            </p>
          </Empty>
        ) : (
          <DrawingChecks {...{ lineId, checks, work }} marks={file.drawingMarks} />
        )}
      </Section>
    </>
  );
}

function drawingWords(checks: readonly DrawingCheck[]): string {
  const missing = checks.filter(({ state }) => state === "missing").length;
  if (checks.length === 0) return "no items";
  return missing === 0 ? "everything shown" : `${counted(missing, "item")} missing`;
}

/** Permits with an application of their own: those on file, and those whose facts were entered. */
function moreKinds({ permits, applications }: LineFile): PermitKind[] {
  return PERMIT_KINDS.filter(
    (kind) =>
      kind !== "side-sewer" &&
      (permits.some((permit) => permit.kind === kind) ||
        applications.some(({ permitKind }) => permitKind === kind)),
  );
}

function authorizedWords(file: LineFile): string {
  const owners = ownersToAuthorize(file);
  const signed = owners.filter(({ signedOn }) => signedOn !== null).length;
  return `${signed} of ${counted(owners.length, "owner")} signed`;
}

function PipeLacks({ file }: { readonly file: LineFile }) {
  const open = pipeProposals(file).filter(({ lacks }) => lacks.length > 0);
  if (open.length === 0) return null;
  return (
    <details>
      <summary>
        {counted(open.length, "piece of work", "pieces of work")} not fully described
      </summary>
      <ul>
        {open.map(({ item, pipe, lacks }) => (
          <li key={`${item.id} ${pipe?.id ?? ""}`}>
            {item.title}: {sayList(lacks)} not entered.
          </li>
        ))}
      </ul>
    </details>
  );
}

function NoForm({ file }: { readonly file: LineFile }) {
  const { applicant = "" } =
    file.applications.find(({ permitKind }) => permitKind === "side-sewer") ?? {};
  return <p>{applicant === "" ? "No applicant is entered." : applicant}</p>;
}
