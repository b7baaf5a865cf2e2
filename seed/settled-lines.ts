import type { WorkType } from "#lib/domain/facts/application.ts";
import type { PermitState } from "#lib/domain/facts/permit.ts";
import type { UtilityResponse } from "#lib/domain/facts/utility-response.ts";
import { proposalsKey, proposedEntries } from "#lib/domain/ledger/propose.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { addDays } from "#lib/domain/time/days.ts";
import type { Actor } from "#lib/operations/act.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { closeLine } from "#lib/operations/close-line.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { enterMoney } from "#lib/operations/enter-money.ts";
import { invoiceSplit } from "#lib/operations/invoice-split.ts";
import { markRequirement } from "#lib/operations/mark-requirement.ts";
import { openLine } from "#lib/operations/open-line.ts";
import { recordBuilt } from "#lib/operations/record-built.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";
import { saveApplication } from "#lib/operations/save-application.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";
import { addRows, type deskAt, fileOf, must } from "./desk.ts";
import { AUTHORITY } from "./office.ts";
import { anchor, entry, land, party, property, role, run, seen, unit, work } from "./rows.ts";
import { planShutdown, type Shutdown } from "./shutdown.ts";

type Desk = ReturnType<typeof deskAt>;

interface House {
  readonly street: string;
  readonly owner: string;
  readonly phone: string;
  readonly units: number;
  /** Where the card and where the camera has it. */
  readonly card: number;
  readonly camera: number;
}

/** What a tape and a level told of a piece of new pipe. */
interface MeasuredPiece {
  readonly id: string;
  readonly itemId: string;
  readonly from: number;
  readonly to: number;
  readonly depthFrom: number;
  readonly depthTo: number;
  readonly slope: number;
  readonly note: string;
}

interface Story {
  readonly key: string;
  readonly name: string;
  readonly houses: readonly House[];
  readonly upperEnd: number;
  readonly openedOn: Day;
  readonly ranOn: Day;
  readonly decidedOn: Day;
  readonly toldOn: Day;
  readonly scope: readonly ReturnType<typeof work>[];
  /** Measured up from the pit at the main, before the branches are closed: by house. */
  readonly fromPit: readonly { readonly house: number; readonly up: number; readonly on: Day }[];
  readonly workType: WorkType;
  /** What the authority took for the permit, with its receipt; null: nothing yet. */
  readonly fee: { readonly on: Day; readonly amount: number; readonly receipt: string } | null;
  readonly permit: { readonly number: string; readonly steps: readonly [PermitState, Day][] };
  readonly built: readonly { readonly itemId: string; readonly on: Day; readonly words: string }[];
  /** As measured once it was built. */
  readonly measured: readonly MeasuredPiece[];
  /** Which way it leaves the main, and how far along that from the downstream manhole. */
  readonly lies: { readonly bearing: number; readonly mainStation: number } | null;
  /** The last day of work. */
  readonly worksUntil: Day;
  readonly ticket: { readonly number: string; readonly calledOn: Day; readonly workBeginsOn: Day };
  readonly money: {
    readonly invoicedOn: Day;
    readonly dueOn: Day;
    /** By house: how much of its share came in, in hundredths, and when. */
    readonly paid: readonly { readonly house: number; readonly part: number; readonly on: Day }[];
  };
  readonly closedOn: Day | null;
  readonly shutdown: Shutdown | null;
  /** What the utilities answered to the locate ticket. */
  readonly responses: readonly (Pick<UtilityResponse, "utility" | "kind" | "answer"> &
    Partial<Pick<UtilityResponse, "answeredOn" | "note">>)[];
  /** Pushed to the main, zeroed there and pulled back; else the counter began at the upper end. */
  readonly pulledBack: boolean;
}

/** Three houses, all settled and agreed; the permit waits for its fees. */
export const ROPEWALK: Story = {
  key: "rw",
  pulledBack: false,
  name: "Ropewalk Lane, 3 to 7",
  houses: [
    {
      street: "3 Ropewalk Lane",
      owner: "Imani Castellane",
      phone: "(360) 555-0133",
      units: 1,
      card: 2_000,
      camera: 2_000,
    },
    {
      street: "5 Ropewalk Lane",
      owner: "Rafael Ostrander",
      phone: "(360) 555-0135",
      units: 2,
      card: 6_000,
      camera: 6_030,
    },
    {
      street: "7 Ropewalk Lane",
      owner: "Petra Vandermolen",
      phone: "(360) 555-0137",
      units: 1,
      card: 10_000,
      camera: 10_000,
    },
  ],
  upperEnd: 10_000,
  openedOn: "2026-09-14",
  ranOn: "2026-09-17",
  decidedOn: "2026-09-21",
  toldOn: "2026-10-05",
  workType: "lining",
  fee: null,
  scope: [
    work("rw-s1", "Line the pipe", {
      kind: "line",
      place: "stretch",
      from: 1_000,
      to: 7_000,
      quantity: 6_000,
      unit: "ft",
      rate: 10_000,
    }),
    work("rw-s2", "Permit and inspection fees", { kind: "permit-fee", rate: 31_000 }),
  ],
  fromPit: [
    { house: 0, up: 2_020, on: "2026-11-19" },
    { house: 1, up: 6_010, on: "2026-11-19" },
  ],
  permit: {
    number: "SS-26-0818",
    steps: [
      ["drafting", "2026-10-20"],
      ["submitted", "2026-11-02"],
      ["in-review", "2026-11-04"],
      ["approved-fees-due", "2026-11-20"],
    ],
  },
  built: [],
  measured: [],
  lies: null,
  worksUntil: "2026-12-11",
  ticket: { number: "26-555-0171", calledOn: "2026-11-23", workBeginsOn: "2026-12-01" },
  money: {
    invoicedOn: "2026-10-12",
    dueOn: "2026-11-11",
    paid: [
      { house: 0, part: 100, on: "2026-10-21" },
      { house: 1, part: 50, on: "2026-11-04" },
    ],
  },
  closedOn: null,
  shutdown: {
    id: "rw-shutdown",
    on: "2026-12-01",
    at: "08:00",
    until: "15:00",
    toldOn: "2026-11-23",
    calledOn: "2026-11-24",
    doors: [
      { answer: "agreed", spokeWith: "Imani Castellane", words: "Will be at work all day." },
      { answer: "aware", spokeWith: "Rafael Ostrander", words: "" },
      { answer: "not-reached", spokeWith: "", words: "Rang twice, no answer." },
    ],
  },
  responses: [
    { utility: "Quillhaven Gas", kind: "gas", answer: "marked", answeredOn: "2026-11-24" },
    {
      utility: "City of Quillhaven water",
      kind: "water",
      answer: "clear",
      answeredOn: "2026-11-24",
    },
    { utility: "Weir Valley Power", kind: "electric", answer: "marked", answeredOn: "2026-11-25" },
    {
      utility: "Harbor Cable",
      kind: "phone-or-cable",
      answer: "wants-time",
      answeredOn: "2026-11-24",
      note: "Crew comes Monday",
    },
  ],
};

/** Two houses; mended, inspected, closed. */
export const TOLLGATE: Story = {
  key: "tg",
  pulledBack: true,
  name: "Tollgate Court, 1 and 2",
  houses: [
    {
      street: "1 Tollgate Court",
      owner: "Mireille Quennell",
      phone: "(360) 555-0161",
      units: 1,
      card: 3_150,
      camera: 3_200,
    },
    {
      street: "2 Tollgate Court",
      owner: "Sander Oyelaran",
      phone: "(360) 555-0162",
      units: 1,
      card: 5_800,
      camera: 5_790,
    },
  ],
  upperEnd: 5_800,
  openedOn: "2026-05-04",
  ranOn: "2026-05-06",
  decidedOn: "2026-05-08",
  toldOn: "2026-05-18",
  workType: "repair",
  fee: { on: "2026-06-16", amount: 30_000, receipt: "R-26-1187" },
  scope: [
    work("tg-s1", "Dig and replace the collapsed section", {
      kind: "dig-and-replace",
      work: "replacement",
      place: "stretch",
      from: 1_400,
      to: 2_200,
      quantity: 800,
      unit: "ft",
      rate: 26_000,
    }),
    work("tg-s2", "Permit and inspection fees", { kind: "permit-fee", rate: 30_000 }),
  ],
  fromPit: [],
  permit: {
    number: "SS-26-0402",
    steps: [
      ["drafting", "2026-06-01"],
      ["submitted", "2026-06-08"],
      ["in-review", "2026-06-09"],
      ["approved-fees-due", "2026-06-15"],
      ["issued", "2026-06-17"],
      ["working", "2026-06-29"],
      ["inspection-requested", "2026-06-30"],
      ["passed-may-backfill", "2026-07-01"],
      ["as-built-submitted", "2026-07-06"],
      ["final", "2026-07-10"],
    ],
  },
  built: [
    {
      itemId: "tg-s1",
      on: "2026-06-30",
      words: "6 in PVC, 14.0 to 22.0 ft, coupled to the clay at both ends",
    },
  ],
  measured: [
    {
      id: "tg-m1",
      itemId: "tg-s1",
      from: 1_400,
      to: 2_200,
      depthFrom: 720,
      depthTo: 690,
      slope: 210,
      note: "Flexible couplings with shear rings at both ends, 6 in of gravel below",
    },
  ],
  lies: { bearing: 14, mainStation: 8_860 },
  worksUntil: "2026-07-02",
  ticket: { number: "26-555-0144", calledOn: "2026-06-22", workBeginsOn: "2026-06-29" },
  money: {
    invoicedOn: "2026-07-13",
    dueOn: "2026-07-31",
    paid: [
      { house: 0, part: 100, on: "2026-07-16" },
      { house: 1, part: 100, on: "2026-07-22" },
    ],
  },
  closedOn: "2026-07-24",
  shutdown: null,
  responses: [
    { utility: "Quillhaven Gas", kind: "gas", answer: "marked", answeredOn: "2026-06-23" },
    {
      utility: "City of Quillhaven water",
      kind: "water",
      answer: "clear",
      answeredOn: "2026-06-23",
    },
    { utility: "Weir Valley Power", kind: "electric", answer: "clear", answeredOn: "2026-06-24" },
  ],
};

export function fillSettledLine(desk: Desk, actor: Actor, story: Story): void {
  const act = desk(actor, story.openedOn);
  const { lineId } = must(
    openLine(act, { name: story.name, town: "Quillhaven, WA", authorityId: AUTHORITY.id }),
  );
  must(
    chooseRule(act, { lineId, authorityId: AUTHORITY.id, ruleId: AUTHORITY.rules[0]?.id ?? null }),
  );
  must(
    saveLine(act, {
      lineId,
      facts: {
        material: "vitrified-clay",
        diameter: 6,
        upperEnd: story.upperEnd,
        ...(story.lies === null ? {} : { ...story.lies, bearingFrom: "plat" }),
      },
    }),
  );
  addHouses(act, lineId, story);
  addCamera(desk(actor, story.ranOn), lineId, story);
  settle(desk(actor, story.decidedOn), lineId, story);
  tell(desk, actor, lineId, story);
  measure(desk, actor, lineId, story);
  permit(desk, actor, lineId, story);
  bookMoney(desk, actor, lineId, story);
  answerTicket(desk(actor, story.permit.steps.at(-1)?.[1] ?? story.toldOn), lineId, story);
  if (story.shutdown) planShutdown(desk, actor, { lineId, shutdown: story.shutdown });
  if (story.closedOn)
    must(
      closeLine(desk(actor, story.closedOn), {
        lineId,
        reason: `Final on permit ${story.permit.number}; split paid by all`,
      }),
    );
}

type SeedAct = ReturnType<Desk>;

/** Invoices the split and takes down what came in. */
function bookMoney(desk: Desk, actor: Actor, lineId: string, { key, money }: Story): void {
  const act = desk(actor, money.invoicedOn);
  const file = fileOf(act, lineId);
  const billing = "one-invoice";
  const proposed = proposedEntries(file, reportOn(file, act.today), billing)?.proposals ?? [];
  const seen = proposalsKey(proposed);
  must(invoiceSplit(act, { lineId, billing, dueOn: money.dueOn, seen, propertyIds: null }));
  for (const { house, part, on } of money.paid) {
    const propertyId = `${key}-h${house + 1}`;
    const invoice = proposed.find((each) => each.propertyId === propertyId);
    must(
      enterMoney(desk(actor, on), {
        lineId,
        kind: "payment",
        partyId: invoice?.partyId ?? "",
        propertyId,
        amount: Math.round(((invoice?.amount ?? 0) * part) / 100),
        on,
        method: "check",
        reference: `No. ${2_100 + house * 37}`,
        uploadId: null,
        note: "",
        beyond: false,
      }),
    );
  }
}

function addHouses(act: SeedAct, lineId: string, { key, name, houses }: Story): void {
  const street = name.split(",")[0] ?? name;
  const at = (index: number) => `${key}-h${index + 1}`;
  addRows(
    act,
    { lineId, table: "properties" },
    houses.map((house, index) =>
      property(at(index), house.street, {
        parcel: `QH-${key.toUpperCase()}${index + 1}`,
        legalDescription: `Lot ${index + 1}, ${street} Addition`,
      }),
    ),
  );
  addRows(
    act,
    { lineId, table: "units" },
    houses.flatMap((house, index) =>
      Array.from({ length: house.units }, (_, number) =>
        unit(`${at(index)}-u${number + 1}`, at(index), {
          name: house.units > 1 ? `Unit ${number + 1}` : "",
        }),
      ),
    ),
  );
  addRows(
    act,
    { lineId, table: "parties" },
    houses.map((house, index) => party(`${at(index)}-owner`, house.owner, { phone: house.phone })),
  );
  addRows(
    act,
    { lineId, table: "roles" },
    houses.flatMap((_, index) => [
      role(`${at(index)}-owner`, at(index), "owner"),
      role(`${at(index)}-owner`, at(index), "occupant", { unitId: `${at(index)}-u1` }),
    ]),
  );
  addRows(act, { lineId, table: "land" }, [
    land(`${key}-street`, { to: 1_000, kind: "right-of-way", shownBy: "City street map" }),
    ...houses.map((house, index) =>
      land(`${key}-land${index + 1}`, {
        from: houses[index - 1]?.camera ?? 1_000,
        to: house.camera,
        propertyId: at(index),
      }),
    ),
  ]);
  addRows(act, { lineId, table: "records" }, [
    {
      id: `${key}-card`,
      kind: "card",
      title: "Side sewer card",
      number: `${key.toUpperCase()}-1`,
      dated: "1966",
      measuredFrom: "main",
      length: null,
      obtainedOn: act.today,
      uploadId: null,
      note: "",
    },
  ]);
  addRows(
    act,
    { lineId, table: "entries" },
    houses.map((house, index) =>
      entry(`${key}-e${index + 1}`, `${key}-card`, {
        label: house.street,
        distance: house.card,
        side: "left",
        material: "vitrified-clay",
        propertyId: at(index),
      }),
    ),
  );
}

function addCamera(
  act: SeedAct,
  lineId: string,
  { key, houses, upperEnd, ranOn, pulledBack }: Story,
): void {
  const runId = `${key}-run1`;
  addRows(act, { lineId, table: "runs" }, [
    run(runId, {
      name: "Run 1",
      ranOn,
      looks: "downstream",
      measuredFrom: pulledBack ? "main" : "access",
      selfLeveling: "yes",
      accessPoint: "Cleanout at the upper end",
      zeroAt: pulledBack ? "the main, before pulling back" : "center of the cleanout",
      toCounter: upperEnd,
    }),
  ]);
  addRows(
    act,
    { lineId, table: "anchors" },
    pulledBack
      ? []
      : [anchor(`${runId}-a1`, runId, { kind: "main-connection", counter: upperEnd, station: 0 })],
  );
  addRows(
    act,
    { lineId, table: "observations" },
    houses.map((house, index) =>
      seen(`${key}-o${index + 1}`, runId, {
        counter: pulledBack ? house.camera : upperEnd - house.camera,
        clock: 3,
        diameter: 4,
        material: "vitrified-clay",
        fitting: "wye",
      }),
    ),
  );
}

function settle(act: SeedAct, lineId: string, { key, houses, scope }: Story): void {
  houses.forEach((_, index) => {
    const tieInId =
      fileOf(act, lineId).observations.find((each) => each.id === `${key}-o${index + 1}`)
        ?.tieInId ?? "";
    must(
      decidePairing(act, {
        lineId,
        entryId: `${key}-e${index + 1}`,
        tieInId,
        state: "accepted",
        reason: "Same side, size and place",
      }),
    );
  });
  addRows(act, { lineId, table: "scope" }, scope);
}

/** The lower end of each branch; the camera run came from the upper one. */
function measure(desk: Desk, actor: Actor, lineId: string, { key, fromPit }: Story): void {
  const [first] = fromPit;
  if (first === undefined) return;
  const act = desk(actor, first.on);
  const { observations } = fileOf(act, lineId);
  addRows(
    act,
    { lineId, table: "reconnections" },
    fromPit.map(({ house, up, on }) => {
      const { tieInId } = observations.find(({ id }) => id === `${key}-o${house + 1}`) ?? {};
      return {
        id: `${key}-tally${house + 1}`,
        tieInId,
        lowerAccess: 0,
        fromLower: up,
        measuredBy: "Marek Łódź",
        measuredOn: on,
        note: "From the pit at the main",
      };
    }),
  );
}

function tell(desk: Desk, actor: Actor, lineId: string, { key, houses, toldOn }: Story): void {
  const act = desk(actor, toldOn);
  const choice = {
    rule: "portion-used",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
  } as const;
  const { splitId } = must(
    chooseSplit(act, {
      lineId,
      choice,
      reason: "Each foot is paid by those whose flow passes it; all owners asked for it",
    }),
  );
  for (const kind of ["finding", "proposed-split"] as const) {
    const { noticeIds } = must(
      draftNotices(act, {
        lineId,
        kind,
        replyBy: kind === "proposed-split" ? addDays(toldOn, 14) : null,
        recipients: houses.map((_, index) => ({
          partyId: `${key}-h${index + 1}-owner`,
          propertyId: `${key}-h${index + 1}`,
          tieInId: null,
          splitId: kind === "proposed-split" ? splitId : null,
        })),
      }),
    );
    must(sendNotices(act, { lineId, noticeIds, method: "first-class", sentOn: toldOn }));
  }
  const file = fileOf(act, lineId);
  const shares = file.splits.at(-1)?.shares ?? [];
  houses.forEach((_, index) => {
    const propertyId = `${key}-h${index + 1}`;
    const amount = shares.find((share) => share.propertyId === propertyId)?.amount ?? null;
    for (const kind of ["enter", "dig", "pay"] as const) {
      must(
        recordConsent(act, {
          lineId,
          kind,
          partyId: `${propertyId}-owner`,
          propertyId,
          state: "given",
          stateOn: toldOn,
          splitId: kind === "pay" ? splitId : null,
          amount: kind === "pay" ? amount : null,
          recordingNumber: "",
          uploadId: null,
          note: "Signed at the meeting",
        }),
      );
    }
  });
}

function permit(desk: Desk, actor: Actor, lineId: string, story: Story): void {
  const first = desk(actor, story.permit.steps[0]?.[1] ?? story.toldOn);
  addRows(first, { lineId, table: "permits" }, [
    {
      id: `${story.key}-permit`,
      kind: "side-sewer",
      number: story.permit.number,
      expiresOn: null,
      note: "",
    },
  ]);
  addRows(first, { lineId, table: "events" }, [
    { id: `${story.key}-ends`, event: "work-ends", on: story.worksUntil, note: "" },
  ]);
  must(
    saveApplication(first, {
      lineId,
      facts: {
        permitKind: "side-sewer",
        applicant: "Ruth Lindqvist, Harrow & Teal",
        applicantIs: "contractor",
        workType: story.workType,
      },
    }),
  );
  for (const id of ["easement", "street"])
    must(
      markRequirement(first, {
        lineId,
        requirementId: `${AUTHORITY.id}-${id}`,
        state: "does-not-apply",
        uploadId: null,
        note: NOT_HERE[id] ?? "",
      }),
    );
  const called = story.permit.steps.findIndex(([, on]) => on >= story.ticket.calledOn);
  for (const [at, [state, on]] of story.permit.steps.entries()) {
    if (at === called) callLocate(desk, actor, lineId, story);
    if (state === "passed-may-backfill")
      addRows(desk(actor, on), { lineId, table: "inspections" }, [
        {
          id: `${story.key}-trench`,
          permitId: `${story.key}-permit`,
          title: "Open trench",
          kindId: `${AUTHORITY.id}-inspection-trench`,
          bookedFor: on,
          bookedAt: "10:00",
          bookedUntil: "12:00",
          inspector: "Paulo Reyes",
          result: "passed",
          note: "",
        },
      ]);
    must(
      stepPermit(desk(actor, on), {
        ...{ lineId, permitId: `${story.key}-permit`, state, on, note: "" },
        ...(state === "working" ? { card: cardOf(on) } : {}),
      }),
    );
  }
  for (const built of story.built)
    must(
      recordBuilt(desk(actor, story.worksUntil), {
        lineId,
        by: "Marek Łódź",
        uploadId: null,
        ...built,
      }),
    );
  if (story.measured.length > 0)
    addRows(
      desk(actor, story.worksUntil),
      { lineId, table: "builtPieces" },
      story.measured.map((piece) => ({
        kind: "replaced",
        diameter: 6,
        material: "pvc",
        measuredBy: "Marek Łódź",
        measuredOn: story.worksUntil,
        ...piece,
      })),
    );
  if (story.fee !== null)
    addRows(desk(actor, story.fee.on), { lineId, table: "permitFees" }, [
      {
        id: `${story.key}-fee`,
        permitId: `${story.key}-permit`,
        kind: "paid",
        feeId: null,
        by: "Dana Okafor, check 2214",
        note: "",
        ...story.fee,
      },
    ]);
  if (called < 0) callLocate(desk, actor, lineId, story);
}

function cardOf(postedOn: Day) {
  return { postedOn, postedBy: "Marek Łódź", postedPlace: "On the fence above the trench" };
}

function callLocate(desk: Desk, actor: Actor, lineId: string, { key, ticket }: Story): void {
  addRows(desk(actor, ticket.calledOn), { lineId, table: "locateTickets" }, [
    {
      id: `${key}-ticket`,
      ...ticket,
      whiteLinedOn: ticket.calledOn,
      whiteLinedBy: "Marek Łódź",
      whiteLinedHow: "paint",
      note: "",
    },
  ]);
}

/** What each utility answered to the ticket. */
function answerTicket(act: SeedAct, lineId: string, { key, responses }: Story): void {
  addRows(
    act,
    { lineId, table: "utilityResponses" },
    responses.map((each, index) => ({
      id: `${key}-utility${index + 1}`,
      ticketId: `${key}-ticket`,
      answeredOn: null,
      goodUntil: null,
      note: "",
      ...each,
    })),
  );
}

const NOT_HERE: Readonly<Record<string, string>> = {
  easement: "The line crosses no lot but those that it serves",
  street: "Nothing is dug in the street",
};
