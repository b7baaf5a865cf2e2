import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { AddressFields } from "#app/_components/office-fields.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getAuthority } from "#db/queries/authority.ts";
import { listForms } from "#db/queries/form.ts";
import { holidayCaution } from "#lib/domain/calendar/holiday-caution.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { formatAddress } from "#lib/domain/party/address.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { EXAMPLE_CITATION, exampleRows } from "#lib/domain/starters/authorities.ts";
import { authorityFactsSeen, readAuthority } from "#lib/operations/save-part.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { removeAuthorityAction, saveAuthorityFactsAction } from "./actions.ts";
import { BringInHolidays, type HolidaysAsked } from "./bring-in-holidays.tsx";
import {
  CLOCK_COLUMNS,
  HOLIDAY_COLUMNS,
  INSPECTION_COLUMNS,
  REFUSAL_COLUMNS,
  REQUIREMENT_COLUMNS,
  RULE_COLUMNS,
} from "./columns.ts";
import { FEE_BLANK, FEE_COLUMNS } from "./fee-columns.ts";
import { FormList } from "./forms/form-list.tsx";
import { PartsGrid } from "./parts-grid.client.tsx";
import { PermitParts } from "./permit-parts.tsx";
import { StatutoryParts } from "./statutory-parts.tsx";

interface Props {
  readonly params: Promise<{ authorityId: string }>;
  readonly searchParams: Promise<HolidaysAsked>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await requireUser();
  const authority = getAuthority(db(), (await params).authorityId);
  return { title: authority?.name ?? "Authority" };
}

export default async function AuthorityPage({ params, searchParams }: Props) {
  const user = await requireUser();
  const read = readAuthority(db(), (await params).authorityId);
  if (read === null) return notFound();
  const { authority, revision: base } = read;
  const may = mayDo(user.role, "run-the-office");
  const day = today();
  const caution =
    authority.clockRules
      .map((rule) => holidayCaution(rule, authority.holidays))
      .find((words) => words !== "") ?? "";
  const grid = { authorityId: authority.id, base, readOnly: !may };
  return (
    <div className="sheet">
      <PageHead asked={authority.name} answer={sentence(authority)}>
        <p className="small cluster screen-only">
          <Link href="/office">All authorities</Link>
          <a href={`/office/authorities/${authority.id}/export`} download>
            Export this authority
          </a>
        </p>
      </PageHead>
      <ExampleBox authority={authority} />
      <Section title="Contact" folded={reached(authority)}>
        <Facts authority={authority} may={may} />
      </Section>
      <Section
        title="Who is responsible for what"
        note="One row per rule, with its source and the date last checked. Each line applies one of them."
      >
        <PartsGrid
          {...grid}
          part="rules"
          label="Responsibility rules"
          addWord="rule"
          rows={authority.rules}
          columns={RULE_COLUMNS}
          blank={{
            sharedRule: "unclear",
            boundary: "main-connection",
            clearingBy: "owners",
            repairBy: "authority",
            replacementBy: "authority",
            asOf: day,
            note: "",
          }}
          emptyWords="No rules yet. Enter what the code says, with the citation; “unclear” is also a rule. Example: Owners to the main, owners to main, main connection, Code 14.20.060."
        />
      </Section>
      <Section
        title="Requirements"
        foldedOnPhone={counted(authority.requirements.length, "requirement")}
        opened={authority.requirements.length === 0}
        note="Each requirement names the sheet that meets it; anything Wyebook can’t create is an upload. The packet holds what is required with the application, and no more."
      >
        <PartsGrid
          {...grid}
          part="requirements"
          label="Requirements"
          addWord="requirement"
          rows={authority.requirements}
          columns={REQUIREMENT_COLUMNS}
          blank={{ sheet: "upload", mandatory: true, due: "submission", asOf: day }}
          emptyWords="No requirements yet. Paste the authority’s checklist: title, sheet, detail, citation. Example: Line drawing to scale, line drawing, with stations in feet."
        />
      </Section>
      <PermitParts authority={authority} grid={grid} day={day} />
      <StatutoryParts authority={authority} grid={grid} day={day} />
      <Section
        title="Forms"
        id="forms"
        note="The authority’s own application forms. Wyebook fills them in from the line’s file; they come first in the packet."
      >
        <FormList authorityId={authority.id} forms={listForms(db(), authority.id)} may={may} />
      </Section>
      <Section title="Fees" id="fees" folded={counted(authority.fees.length, "fee")}>
        <PartsGrid
          {...grid}
          part="fees"
          label="Fees"
          addWord="fee"
          rows={authority.fees}
          columns={FEE_COLUMNS}
          blank={{ ...FEE_BLANK, asOf: day }}
          emptyWords="No fees yet. Example: Side sewer repair permit, $280.00, per permit; or $1.00 of the cost of the work, for each 100."
        />
      </Section>
      <Section
        title="Inspections"
        id="inspections"
        folded={counted(authority.inspectionKinds.length, "inspection")}
        note="Each kind, how it is booked, and what cannot go on before it passed."
      >
        <PartsGrid
          {...grid}
          part="inspectionKinds"
          label="Kinds of inspection"
          addWord="inspection"
          rows={authority.inspectionKinds}
          columns={INSPECTION_COLUMNS}
          blank={{
            neededBefore: "no",
            permitKind: null,
            lead: 0,
            leadUnit: "business-days",
            cutOff: "",
            asksForFigures: false,
            asOf: day,
          }}
          emptyWords="No inspections yet. Example: Open trench, needed before backfill, book 1 business day ahead, call by 3:00 PM."
        />
      </Section>
      <Section
        title="Deadlines"
        id="deadlines"
        folded={counted(authority.clockRules.length, "deadline")}
        note="Event, number of days, before or after, and what happens on a non-business day. Every deadline on a line is counted from these rows."
      >
        <PartsGrid
          {...grid}
          part="clockRules"
          label="Deadline rules"
          addWord="deadline rule"
          rows={authority.clockRules}
          columns={CLOCK_COLUMNS}
          blank={{
            unit: "business-days",
            way: "after",
            roll: "none",
            mailDays: 0,
            meaning: "due-by",
            countsEventDay: false,
            fullDays: false,
            asOf: day,
          }}
          emptyWords="No deadlines yet. Example: Locate marks, earliest start, 2 business days after the locate is called in."
        />
      </Section>
      <Section
        title="If a neighbor refuses"
        id="refusal"
        folded={counted(authority.refusalSteps.length, "step")}
        note="The lawful next steps in order, as the code or the authority has them. A line’s page counts the earliest day of each; it is not advice."
      >
        <PartsGrid
          {...grid}
          part="refusalSteps"
          label="Steps if a neighbor refuses"
          addWord="step"
          rows={authority.refusalSteps}
          columns={REFUSAL_COLUMNS}
          blank={{ kind: "notice", detail: "", days: null, citation: "", asOf: day }}
          emptyWords="No steps yet. Enter what the code says on shared lines whose owners do not agree. Example: mediation, 30 days after the written demand."
        />
      </Section>
      <Section
        title="Holidays"
        id="holidays"
        folded={counted(authority.holidays.length, "holiday")}
        note="Non-business days other than weekends."
      >
        {caution === "" ? null : <NoticeBox kind="caution" title={caution} />}
        {may ? (
          <BringInHolidays
            authority={authority}
            asked={await searchParams}
            thisYear={Number(day.slice(0, 4))}
          />
        ) : null}
        <PartsGrid
          {...grid}
          part="holidays"
          label="Holidays"
          addWord="holiday"
          rows={authority.holidays}
          columns={HOLIDAY_COLUMNS}
          blank={{}}
          emptyWords="No holidays yet. Import a year, then add and remove what this authority does differently."
        />
      </Section>
    </div>
  );
}

/** Said until the last row of an example has the code's own citation. */
function ExampleBox({ authority }: { readonly authority: Authority }) {
  const rows = exampleRows(authority);
  if (rows === 0) return null;
  return (
    <NoticeBox
      kind="caution"
      title={`${rows === 1 ? "1 row is" : `${rows} rows are`} from an invented example`}
    >
      <p>
        Check each against your code, then replace “{EXAMPLE_CITATION}” with the citation. Until
        then these words print in letters and packets.
      </p>
    </NoticeBox>
  );
}

function sentence({ rules, requirements, clockRules }: Authority): string {
  const parts = [
    counted(rules.length, "rule"),
    counted(requirements.length, "requirement"),
    counted(clockRules.length, "deadline"),
  ];
  return parts.join(", ");
}

function reached({ office, phone }: Authority): string {
  const known = [office, formatPhone(phone)].filter((part) => part !== "").join(", ");
  return known === "" ? "unknown" : known;
}

function counted(count: number, word: string): string {
  if (count === 0) return `no ${word}s`;
  return count === 1 ? `1 ${word}` : `${count} ${word}s`;
}

function Facts({ authority, may }: { readonly authority: Authority; readonly may: boolean }) {
  const { office, address, phone, email, note } = authority;
  return (
    <div className="stack">
      <dl className="facts">
        <dt>Counter</dt>
        <dd>{office || "unknown"}</dd>
        <dt>Address</dt>
        <dd>{formatAddress(address) || "unknown"}</dd>
        <dt>Phone and email</dt>
        <dd>{[formatPhone(phone), email].filter((part) => part !== "").join(", ") || "unknown"}</dd>
        {note === "" ? null : (
          <>
            <dt>Note</dt>
            <dd className="prewrap">{note}</dd>
          </>
        )}
      </dl>
      {may ? (
        <details className="screen-only">
          <summary>Edit</summary>
          <ActionForm
            action={saveAuthorityFactsAction.bind(null, { authorityId: authority.id })}
            label="Authority details"
          >
            <SeenField value={seenOf(authorityFactsSeen(authority))} />
            <div className="form-grid">
              <Field label="Name" name="name" defaultValue={authority.name} required />
              <Field
                label="Counter"
                name="office"
                defaultValue={office}
                example="Side sewer counter, second floor"
              />
              <Field label="Phone" name="phone" type="tel" defaultValue={phone} />
              <Field label="Email address" name="email" type="email" defaultValue={email} />
            </div>
            <AddressFields address={address} />
            <Field label="Note" name="note" rows={2} defaultValue={note} />
            <div>
              <SubmitButton pendingWord="Saving …">Save</SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
      {may ? <RemoveAuthority authority={authority} /> : null}
    </div>
  );
}

/** For one that was added by mistake; refused while a line is assigned to it. */
function RemoveAuthority({ authority }: { readonly authority: Authority }) {
  return (
    <details className="screen-only">
      <summary>Remove this authority</summary>
      <ActionForm
        action={removeAuthorityAction.bind(null, { authorityId: authority.id })}
        label="Remove this authority"
        confirm={`Remove ${authority.name} with its rules, requirements, fees and deadlines?`}
      >
        <p className="muted">
          For one added by mistake. It cannot be removed while a line is assigned to it.
        </p>
        <div>
          <SubmitButton pendingWord="Removing …" quiet>
            Remove {authority.name}
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
