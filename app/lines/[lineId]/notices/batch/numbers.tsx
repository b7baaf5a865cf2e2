import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { numberFault } from "#lib/domain/notices/tracking.ts";
import type { Recipient } from "#lib/domain/paper/addressed.ts";
import { formatAddress } from "#lib/domain/party/address.ts";
import { mailTo } from "#lib/domain/party/mail-to.ts";
import { partyName, tieInName } from "../../names.ts";
import { saveNumbersAction } from "./actions.ts";
import { FillDown } from "./fill-down.client.tsx";
import type { BatchPart } from "./part.ts";

/** The numbers of what went by certified mail, in mailing order; nothing where nothing waits for one. */
export function Numbers({ lineId, file, rows }: BatchPart) {
  const mailed = rows.flatMap(({ notice, recipient }) =>
    file.deliveries
      .filter((one) => one.noticeId === notice?.id && takesNumber(one))
      .map((delivery) => ({ delivery, recipient })),
  );
  if (mailed.length === 0) return null;
  const without = mailed.filter(({ delivery }) => delivery.tracking === "").length;
  return (
    <Section
      title="Certified mail numbers"
      id="numbers"
      folded={
        without === 0 ? `all ${mailed.length} entered` : `${without} of ${mailed.length} missing`
      }
      opened={without > 0 || mailed.some(({ delivery }) => doubtAbout(delivery) !== undefined)}
      note="In mailing order. A column copied from the post office’s list can be pasted into the first field."
    >
      <ActionForm
        className="stack screen-only"
        action={saveNumbersAction.bind(null, lineId)}
        label="Certified mail numbers"
      >
        <FillDown>
          {mailed.map(({ delivery, recipient }) => (
            <Field
              key={`${delivery.id} ${delivery.tracking}`}
              label={labelOf(file, recipient)}
              name={`number:${delivery.id}`}
              defaultValue={delivery.tracking}
              hint={doubtAbout(delivery)}
              width={30}
            />
          ))}
        </FillDown>
        <div>
          <SubmitButton pendingWord="Saving …">Save numbers</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}

/** Whose envelope it is; somebody who gets two letters is told them apart by the tie-in. */
function labelOf(file: LineFile, recipient: Recipient): string {
  const { partyId, tieInId } = recipient;
  const about = tieInId === null ? "" : `, about tie-in ${tieInName(file, tieInId)}`;
  return `${partyName(file, partyId)}, ${formatAddress(mailTo(file, recipient))}${about}`;
}

/** Once its result is recorded, the number is part of the proof. */
function takesNumber({ method, outcome }: Delivery): boolean {
  return method === "certified" && outcome === "on-its-way";
}

function doubtAbout({ tracking }: Delivery): string | undefined {
  const fault = numberFault(tracking);
  return fault === null ? undefined : `${fault.words}.`;
}
