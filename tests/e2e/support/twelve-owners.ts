// An invented line: three houses are on it, nine more are on the list of owners that the assessor sent.

import { threeHouses } from "./three-houses.ts";

/** The line file, to be brought in, with a drain shutdown on the day of the journey. */
export function foundryRow(name: string): string {
  const file = JSON.parse(threeHouses(name)) as {
    authority: object;
    properties: object[];
  } & Record<string, unknown>;
  return JSON.stringify({
    ...file,
    authority: {
      ...file.authority,
      requirements: [
        {
          id: "notice",
          title: "Proof of notice to every owner",
          sheet: "proof-of-notice",
          citation: "Larkmoor Code 7.09 (invented)",
          asOf: "2026-11-02",
        },
      ],
    },
    events: [
      {
        ...{ id: "shutdown", event: "drains-paused", on: "2026-11-25", at: "08:00" },
        ...{ until: "12:00", note: "" },
      },
    ],
  });
}

/** What the assessor and the office know of nine more owners: five have an email address, four read Spanish. */
export const OWNER_LIST = `Parcel ID,Owner Name,Situs Address,Situs City,Situs State,Situs Zip,Mail Address,Mail City State Zip,Connection,Email,Language
88-07,AGUIRRE MARISOL,7 LARKMOOR ROW,QUILLHAVEN,WA,98000,7 LARKMOOR ROW,QUILLHAVEN WA 98000,possibly connected,marisol@example.com,Spanish
88-09,VAN DORN PIETER,9 LARKMOOR ROW,QUILLHAVEN,WA,98000,9 LARKMOOR ROW,QUILLHAVEN WA 98000,possibly connected,pieter@example.com,English
88-11,QUISPE HILARIO,11 LARKMOOR ROW,QUILLHAVEN,WA,98000,PO BOX 118,QUILLHAVEN WA 98000,possibly connected,hilario@example.com,Spanish
88-13,ADEYEMI FOLA,13 LARKMOOR ROW,QUILLHAVEN,WA,98000,13 LARKMOOR ROW,QUILLHAVEN WA 98000,neighbor,fola@example.com,English
88-15,TARRANT GWEN,15 LARKMOOR ROW,QUILLHAVEN,WA,98000,15 LARKMOOR ROW,QUILLHAVEN WA 98000,neighbor,gwen@example.com,English
88-17,ZAMORA INES,17 LARKMOOR ROW,QUILLHAVEN,WA,98000,17 LARKMOOR ROW,QUILLHAVEN WA 98000,neighbor,,Spanish
88-19,HOLLOWAY REED,19 LARKMOOR ROW,QUILLHAVEN,WA,98000,900 SIGNAL HILL RD,QUILLHAVEN WA 98000,neighbor,,English
88-21,BUSTOS CELIA,21 LARKMOOR ROW,QUILLHAVEN,WA,98000,21 LARKMOOR ROW,QUILLHAVEN WA 98000,neighbor,,Spanish
88-23,PELLETIER JUNE,23 LARKMOOR ROW,QUILLHAVEN,WA,98000,23 LARKMOOR ROW,QUILLHAVEN WA 98000,neighbor,,English
`;
