import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import { type ConsentRow, consentTable } from "#lib/domain/consent/table.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { Signer } from "#lib/domain/party/signers.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { listed, propertyName } from "../../names.ts";

interface SignersPartProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly asked: string | string[] | undefined;
}

/** So many properties stand on a page. */
const AT_ONCE = 40;

/** Property by property, all who must sign, as what, and how far the consent to pay has come. */
export function SignersPart({ lineId, file, report, asked }: SignersPartProps) {
  const from = pageFrom(asked, AT_ONCE);
  const rows = consentTable(file, report).filter(({ signers }) => signers.length > 0);
  if (rows.length === 0) {
    return (
      <Empty title="No owners yet.">
        <p>
          Enter the owners first, under <Link href={`/lines/${lineId}/who`}>Who is on it?</Link>
        </p>
      </Empty>
    );
  }
  return (
    <>
      <Scroll>
        <table className={`plain ${stacks["stacks"]}`}>
          <Heads of={["Property", "All must sign, as", "Current share", "Payment consent"]} />
          <tbody>
            {onPage(rows, from, AT_ONCE).map((row) => (
              <tr key={row.propertyId}>
                <th scope="row">{propertyName(file, row.propertyId)}</th>
                <td data-label="All must sign">
                  {row.signers.map((signer) => (
                    <SignerLine key={signer.partyId} lineId={lineId} signer={signer} />
                  ))}
                </td>
                <td data-label="Current share">{shareWords(file, row.propertyId)}</td>
                <td data-label="Payment consent">{payWords(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Pages
        from={from}
        most={AT_ONCE}
        of={rows.length}
        what="properties"
        href={(page) => `/lines/${lineId}/notices/consents?signers=${page}#signers`}
      />
    </>
  );
}

function SignerLine({ lineId, signer }: { readonly lineId: string; readonly signer: Signer }) {
  return (
    <div>
      {signer.name}
      {signer.capacityMissing ? (
        <>
          {" "}
          <span className="muted">
            signer and capacity unknown: <Link href={`/lines/${lineId}/who`}>enter them</Link>
          </span>
        </>
      ) : null}
    </div>
  );
}

function shareWords(file: LineFile, propertyId: string): string {
  const version = latestSplit(file);
  const share = version?.shares.find((each) => each.propertyId === propertyId);
  if (version === null || share === undefined) return "none";
  return `${formatCents(share.amount)}, version ${version.number}`;
}

function payWords({ cells, signers }: ConsentRow): string {
  const { needed, inHand, signed, open } = cells.pay;
  if (!needed) return "not needed";
  if (inHand) return signers.length === 1 ? "signed" : `signed by all ${signers.length}`;
  const names = open.flatMap(
    ({ partyId }) => signers.find((signer) => signer.partyId === partyId)?.name ?? [],
  );
  const unnamed = signers.map(({ heldWith }) => heldWith).filter((words) => words !== "");
  return `${signed.length} of ${signers.length} signed; open: ${listed([...names, ...unnamed])}`;
}
