import type { LineFile, Office } from "../facts/line-file.ts";
import type { PermitState } from "../facts/permit.ts";
import type { Report } from "../findings/report.ts";
import { packetChecks } from "../packet/checks.ts";
import type { PacketCheck } from "../packet/packet.ts";
import { moverOf } from "../permit/mover.ts";
import { waitsOn } from "../permit/order.ts";
import { permitSentence } from "../permit/say.ts";
import { isInForce, permitStateOf } from "../permit/steps.ts";
import { forCount, sayAll, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { exampleRows } from "../starters/authorities.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";

/** `9 of 12 items on file; easement not recorded`. */
export function authorityAnswer(file: LineFile, report: Report, office: Office | null): Reply {
  if (file.authority === null)
    return replyWith("No authority is chosen yet", [
      { closes: "Choose the authority whose rules apply here", pressing: PRESSING.stalls },
    ]);
  const checks = checksOn(file, report, office);
  const permits = file.permits.map((permit) => permitSentence(file, permit, report.today));
  const sentence = sayParts([
    handWords(checks),
    ...easementWords(report),
    ...permits.map(lowerFirst),
  ]);
  return replyWith(sentence, openings(file, report, checks));
}

/**
 * What the packet checks, without what does not apply; what is due later only once a permit is issued. While nobody says which office this is, its
 * own papers are left out: they cannot be judged.
 */
function checksOn(file: LineFile, report: Report, office: Office | null): PacketCheck[] {
  const papers = new Set(
    (file.authority?.requirements ?? [])
      .filter(
        ({ sheet, paper }) =>
          office === null && (sheet === "contractor-standing" || paper !== null),
      )
      .map(({ id }) => id),
  );
  const isIssued = file.permits.some((permit) => isInForce(permitStateOf(file, permit)));
  return packetChecks({ file, report, office: office ?? UNKNOWN_OFFICE }).filter(
    ({ state, requirementId, due }) =>
      state !== "does-not-apply" &&
      !papers.has(requirementId) &&
      (due === "submission" || isIssued),
  );
}

const UNKNOWN_OFFICE: Office = {
  name: "unknown",
  license: "unknown",
  licenseExpiresOn: null,
  bond: "unknown",
  bondExpiresOn: null,
  insurance: "unknown",
  insuranceExpiresOn: null,
  compensation: "unknown",
  compensationExpiresOn: null,
  businessLicense: "unknown",
  businessLicenseExpiresOn: null,
  address: { street: "", unit: "", city: "", state: "", zip: "" },
  phone: "",
  hours: null,
  onCallPhone: "",
  onCallHours: null,
  payee: "",
  payMethods: [],
  payDays: null,
  depositPercent: null,
  bothLanguages: false,
  email: "",
  zone: "UTC",
};

function handWords(checks: readonly PacketCheck[]): string {
  if (checks.length === 0) return "no requirements entered";
  const inHand = checks.filter(({ state }) => state === "in-hand").length;
  const all = checks.length;
  if (inHand === all) return all === 1 ? "1 of 1 on file" : `${sayAll(all)} items on file`;
  return `${inHand} of ${sayCount(all, "item")} on file`;
}

function easementWords({ holds }: Report): string[] {
  const open = holds.filter(({ cause, waiver }) => cause === "easement-missing" && waiver === null);
  if (open.length === 0) return [];
  return [`${forCount(open.length, "easement", `${open.length} easements`)} not recorded`];
}

/** How much it presses that a permit waits for the office. */
const OFFICE_MUST: Partial<Record<PermitState, string>> = {
  drafting: "Assemble the packet and submit it",
  "waiting-on-signatures": "Get the signatures and recordings the application is waiting for",
  "returned-incomplete": "Complete the application and submit it again",
  corrections: "Respond to the corrections",
  denied: "Appeal the denial in time, or apply again",
  "approved-fees-due": "Pay the fees so the permit can be issued",
  "passed-may-backfill": "Backfill and submit the as-built",
  "as-built-rejected": "Fix the as-built and submit it again",
  expired: "Have the permit extended, or apply again",
};

function openings(file: LineFile, report: Report, checks: readonly PacketCheck[]): Opening[] {
  const missing = checks.filter(({ state, mandatory }) => state === "missing" && mandatory);
  const open = file.permits.flatMap((permit): Opening[] => {
    const state = permitStateOf(file, permit);
    const closes = OFFICE_MUST[state];
    const waits = waitsOn(file, permit);
    if (waits !== null)
      return [{ closes: waits, where: "authority/permits", pressing: PRESSING.someTime }];
    if (closes === undefined || moverOf(state) !== "office") return [];
    return [
      {
        closes,
        ...(state === "drafting" ? {} : { where: "authority/permits" }),
        pressing: state === "drafting" ? PRESSING.someTime : PRESSING.soon,
      },
    ];
  });
  if (file.authority !== null && exampleRows(file.authority) > 0)
    open.push({
      closes: `Check the example rules of ${file.authority.name} against the code`,
      pressing: PRESSING.ordinary,
    });
  if (missing.length > 0) {
    const titles = sayList(
      missing.map(({ title }) => lowerFirst(title)),
      4,
    );
    open.push({ closes: `Still needed: ${titles}`, pressing: PRESSING.ordinary });
  }
  const stopped = report.holds.filter(
    ({ waiver, stops }) => waiver === null && stops.includes("submission"),
  );
  if (stopped.length > 0)
    open.push({
      closes: `Lift ${sayCount(stopped.length, "hold")}: nothing can be submitted until then`,
      where: "reconcile#holds",
      pressing: PRESSING.stalls,
    });
  if (file.permits.length === 0 && open.length === 0)
    open.push({
      closes: "Add the permit once you apply for it",
      where: "authority/permits",
      pressing: PRESSING.someTime,
    });
  return open;
}

function lowerFirst(text: string): string {
  const [first = "", second = ""] = text;
  const isName = second !== second.toLowerCase();
  return isName ? text : `${first.toLowerCase()}${text.slice(first.length)}`;
}
