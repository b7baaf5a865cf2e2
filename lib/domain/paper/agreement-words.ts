import type { Language } from "../say/language.ts";

/** What stands on a draft agreement besides its facts. */
export interface AgreementWords {
  readonly between: string;
  readonly of: (name: string, lots: string) => string;
  /** A title holder that does not sign itself, with who signs for it or a blank. */
  readonly by: (name: string, capacity: string) => string;
  /** The title as the office typed it: its language may be another. */
  readonly title: (typed: string) => string;
  readonly lots: string;
  readonly columns: readonly [string, string, string, string];
  readonly parts: (parts: number, all: number) => string;
  readonly pipe: string;
  readonly pipeIs: (line: string, town: string, more: string) => string;
  readonly long: (feet: string) => string;
  readonly wide: (inches: string) => string;
  readonly covers: {
    readonly whole: string;
    readonly up: (from: string) => string;
    readonly between: (from: string, to: string) => string;
  };
  readonly shares: string;
  readonly sharesAre: string;
  readonly terms: string;
  /** Over terms that stand in English in a paper that is not; empty in the English one. */
  readonly termsInEnglish: string;
  readonly draft: (day: string, authority: string | null) => string;
  readonly page: (number: number, of: number) => string;
}

const EN_WORDS: AgreementWords = {
  between: "Between",
  of: (name, lots) => `${name}, for ${lots}`,
  by: (name, capacity) => `${name}, by its ${capacity}`,
  title: (typed) => typed,
  lots: "The lots",
  columns: ["Address", "Parcel", "Legal description", "Share"],
  parts: (parts, all) => `${parts} of ${all} parts`,
  pipe: "The shared pipe",
  pipeIs: (line, town, more) =>
    `One private sewer line shared by the lots named above: “${line}”, ${town}${more}. Lengths are in feet along the pipe from its connection at the public main.`,
  long: (feet) => `, ${feet} ft long from the public main`,
  wide: (inches) => `, ${inches} in inside diameter`,
  covers: {
    whole: "This agreement covers the whole line.",
    up: (from) => `This agreement covers the line from ${from} ft up.`,
    between: (from, to) => `This agreement covers ${from} to ${to} ft.`,
  },
  shares: "Shares",
  sharesAre:
    "Each lot is responsible for its share, as stated in the table of lots, of the costs described below.",
  terms: "Terms",
  termsInEnglish: "",
  draft: (day, authority) =>
    `Draft of ${day}. Not binding. To be reviewed by ${authority ?? "the sewer authority"} and by each party’s own attorney or advisor before anyone signs; where the authority or the county has a form of its own, that form is used.`,
  page: (number, of) => `Page ${number} of ${of}`,
};

/** Who usually signs for a trust, firm or estate, with the English word of the deed. */
const CAPACITIES: Readonly<Record<string, string>> = {
  trustee: "fiduciario",
  trustees: "fiduciarios",
  member: "miembro",
  manager: "gerente",
  "managing member": "miembro gerente",
  president: "presidente",
  partner: "socio",
  "personal representative": "representante de la sucesión",
  executor: "albacea",
};

function capacityEs(typed: string): string {
  const word = CAPACITIES[typed.toLowerCase()];
  if (word !== undefined) return `${word} («${typed}»)`;
  return /\p{L}/u.test(typed) ? `«${typed}»` : typed;
}

const ES_WORDS: AgreementWords = {
  between: "Entre",
  of: (name, lots) => `${name}, por ${lots}`,
  by: (name, capacity) => `${name}, por medio de su ${capacityEs(capacity)}`,
  title: (typed) => (typed === "" ? "" : `«${typed}»`),
  lots: "Los lotes",
  columns: ["Dirección", "Parcela", "Descripción legal", "Parte"],
  parts: (parts, all) => `${parts} de ${all} partes`,
  pipe: "La tubería compartida",
  pipeIs: (line, town, more) =>
    `Una tubería de desagüe privada que comparten los lotes nombrados arriba: «${line}», ${town}${more}. Las distancias se dan en pies a lo largo de la tubería, desde su conexión con la tubería principal pública.`,
  long: (feet) => `, de ${feet} pies de largo desde la tubería principal pública`,
  wide: (inches) => `, de ${inches} pulgadas de diámetro interior`,
  covers: {
    whole: "Este acuerdo abarca toda la tubería.",
    up: (from) => `Este acuerdo abarca la tubería desde los ${from} pies hacia arriba.`,
    between: (from, to) => `Este acuerdo abarca de ${from} a ${to} pies.`,
  },
  shares: "Partes",
  sharesAre:
    "Cada lote responde por su parte, según la tabla de lotes, de los costos que se describen abajo.",
  terms: "Condiciones",
  termsInEnglish:
    "Las condiciones están aquí en inglés, tal como se escribieron. Pida que se las traduzcan antes de firmar.",
  draft: (day, authority) =>
    `Borrador del ${day}. No obliga a nadie. Antes de que alguien firme, deben revisarlo ${authority ?? "la autoridad del alcantarillado"} y el abogado o asesor de cada parte; si la autoridad o el condado tiene un formulario propio, se usa ese.`,
  page: (number, of) => `Página ${number} de ${of}`,
};

export const AGREEMENT_WORDS: Readonly<Record<Language, AgreementWords>> = {
  en: EN_WORDS,
  es: ES_WORDS,
};

/** What a reading copy is, for the reader and for a recorder into whose hands it comes. */
export const READING_COPY = {
  es: "Copia de lectura: no se firma ni se registra. El texto en inglés es el que se firma y se registra.",
  en: "Reading copy in Spanish: not to be signed or recorded. The English text is the one that is signed and recorded.",
} as const;
