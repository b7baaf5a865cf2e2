import { saveApplication } from "#lib/operations/save-application.ts";
import { addRows, type deskAt, must } from "./desk.ts";

type Act = ReturnType<ReturnType<typeof deskAt>>;

/** What the application for the alley says beside its facts; nobody has signed it yet. */
export function applyForFennel(act: Act, lineId: string): void {
  must(
    saveApplication(act, {
      lineId,
      facts: {
        permitKind: "side-sewer",
        applicant: "Ruth Lindqvist, Harrow & Teal",
        applicantIs: "contractor",
        workType: "repair",
        traffic: "The alley is closed from No. 12 to No. 18; the street stays open",
        pedestrians: "Back gates stay reachable over plates",
        insuredAs: "Quillhaven Sewer District",
      },
    }),
  );
  addRows(act, { lineId, table: "proposedPipes" }, [
    pipe("fr-s1", { slope: 200 }),
    pipe("fr-s2", { slope: 200 }),
    pipe("fr-s3", { length: 400, slope: null, connection: "" }),
    pipe("fr-s7", {
      material: "cured-in-place-liner",
      method: "liner",
      slope: null,
      bedding: "",
      joint: "",
      connection: "Each tie-in opened again from inside",
    }),
  ]);
  addRows(act, { lineId, table: "surfaceCuts" }, [
    cut("fr-cut1", { from: 1_300, to: 1_700, surface: "asphalt", restoration: "Hot mix, 4 in" }),
    cut("fr-cut2", {
      from: 2_800,
      to: 3_600,
      surface: "gravel",
      restoration: "Crushed rock, 6 in",
    }),
    cut("fr-cut3", {
      from: 4_000,
      to: 4_800,
      surface: "gravel",
      restoration: "Crushed rock, 6 in",
    }),
  ]);
}

function pipe(itemId: string, rest: object) {
  return {
    id: `pipe-${itemId}`,
    itemId,
    material: "pvc",
    diameter: 6,
    method: "open-trench",
    bedding: "6 in of crushed rock",
    joint: "rubber gasket",
    connection: "shielded couplings",
    ...rest,
  };
}

function cut(id: string, rest: object) {
  return { id, trenchWidth: 300, walls: "shored", ...rest };
}
