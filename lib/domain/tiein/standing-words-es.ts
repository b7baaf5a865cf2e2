import type { Side, TieInKind } from "../facts/line.ts";
import type { PermitRecord } from "../facts/record.ts";
import type { Ruling, RulingKind } from "../facts/ruling.ts";
import type { CoverageSpan } from "../findings/report.ts";
import { type Cft, plainFeet } from "../length/station.ts";
import type { CompassPoint } from "../plan/compass.ts";
import type { DoubtWhy } from "../reconcile/doubt.ts";
import type { AxisGap } from "../record/axis.ts";
import { capital } from "../say/capital.ts";
import { letterDay } from "../time/letter-day.ts";
import {
  type ComparedSaid,
  type SeenSaid,
  type SettledSaid,
  type ShownSaid,
  type SideSaid,
  type StandingWords,
  settledPart,
  stopped,
} from "./standing-said.ts";

const GAP_WORDS: Record<AxisGap, string> = {
  "no-record": "no pertenece a ningún registro",
  "no-distance": "no tiene distancia en el registro",
  "measured-from-unknown": "está en un registro que no dice desde dónde mide",
  "no-length": "está medida desde el extremo superior, y no se conoce el largo de la línea",
  "beyond-length":
    "está medida desde el extremo superior, y queda más allá del largo que da el registro",
  "below-main": "tiene una distancia por debajo de la unión con la red pública",
  "not-a-length": "tiene una distancia que no es una medida",
};

const UNSEEN_WORDS: Record<CoverageSpan["state"], string> = {
  seen: "se vio",
  "under-water": "estaba bajo agua",
  blocked: "estaba obstruida",
  "not-in-view": "quedó fuera de la vista de la cámara",
  "not-recorded": "no se grabó",
  "not-inspected": "no la alcanzó ningún recorrido de la cámara",
};

const KIND_WORDS: Record<TieInKind, string> = {
  unknown: "Un ramal de uso desconocido",
  building: "El ramal de un edificio",
  "yard-drain": "Un desagüe de patio",
  "roof-drain": "Un desagüe de techo",
  "cleanout-riser": "El tubo de un registro de limpieza",
  "capped-stub": "Un ramal corto y tapado",
  "old-septic-line": "El tubo de una fosa séptica antigua",
};

const SIDE_WORDS: Record<Side, string> = {
  left: "a la izquierda",
  right: "a la derecha",
  crown: "por arriba",
  unknown: "sin lado conocido",
};

const WINDS: Record<CompassPoint, string> = {
  north: "norte",
  northeast: "noreste",
  east: "este",
  southeast: "sureste",
  south: "sur",
  southwest: "suroeste",
  west: "oeste",
  northwest: "noroeste",
};

const IF_WORDS: Record<Exclude<DoubtWhy, "not-established">, string> = {
  zero: "si el registro mide desde otro punto",
  mirrored: "si los lados del registro son los de quien mira aguas abajo",
  meters: "si el registro está en metros",
  "other-end": "si el registro mide desde el otro extremo",
  "meters-from-other-end": "si el registro está en metros y mide desde el otro extremo",
};

const RECORD_WORDS: Record<PermitRecord["kind"], string> = {
  card: "La ficha",
  drawing: "El plano",
  permit: "El permiso",
  "as-built": "El plano de obra terminada",
  other: "El registro",
};

/** Standings in Spanish, in the words of the letters. Names and reasons stay as people wrote them. */
export const STANDING_ES: StandingWords = {
  inactive: ({ settled }) =>
    `Fuera de uso${settledWords(settled) || "; no consta quién lo comprobó"}.`,
  "not-sanitary": ({ tieInKind, settled }) =>
    `${KIND_WORDS[tieInKind]}; no es el ramal de un edificio${settledWords(settled)}.`,
  linked: ({ shown, seen, compared, acceptedBy }) =>
    `${shown ? shownWords(shown) : "El registro la muestra"}; ${seenWords(seen)}${comparedWords(compared)}. ${saidWords(acceptedBy)}`,
  "no-record-yet": ({ seen }) =>
    `${capital(seenWords(seen))}; todavía no se ha anotado ningún registro.`,
  "never-tied": ({ seen }) =>
    `${capital(seenWords(seen))}; su recorrido aún no se ha medido desde la red pública, así que todavía no puede compararse con el registro.`,
  conflict: ({ seen, entry, off }) =>
    `${capital(seenWords(seen))}; la conexión más cercana del registro, ${entry || "sin nombre"}, queda a ${feet(off)}: demasiado lejos para ser la misma sin una razón.`,
  doubtful: ({ seen, why, entry }) =>
    why === "not-established"
      ? `${capital(seenWords(seen))}; el registro coincide demasiado poco con la cámara para decir que ninguna conexión le corresponde.`
      : `${capital(seenWords(seen))}; podría ser ${entry || "una del registro"} ${IF_WORDS[why]}, pero faltan datos para decirlo.`,
  "unplaced-entry": ({ seen, entry }) =>
    `${capital(seenWords(seen))}; podría ser ${entry || "una conexión del registro"}, que el registro no ubica.`,
  "near-tie": ({ seen, entry }) =>
    `${capital(seenWords(seen))}; ${entry || "una conexión del registro"} le corresponde casi tan bien como a la conexión para la que se propone.`,
  "no-entry": ({ seen }) =>
    `${capital(seenWords(seen))}; ninguna conexión del registro corresponde a ella.`,
  "no-station": ({ entry, gap }) =>
    `${entry || "La conexión"} ${GAP_WORDS[gap]}, así que no puede decirse que la cámara haya mirado allí.`,
  "beyond-end": ({ shown, upperEnd }) =>
    `${shownWords(shown)}; eso queda más allá del extremo superior de la línea, que está a ${feet(upperEnd)}.`,
  "not-inspected": ({ shown, unseen }) =>
    `${shownWords(shown)}; la tubería de ${plainFeet(unseen.from)} a ${feet(unseen.to)} ${UNSEEN_WORDS[unseen.state]}, así que puede estar allí sin que se haya visto.`,
  "not-seen": ({ shown, from, to, nearly }) =>
    `${shownWords(shown)}; la cámara vio la tubería de ${plainFeet(from)} a ${feet(to)} y no halló allí ningún ramal que le corresponda${nearly === "" ? "" : `, aunque ${nearly} le corresponde casi tan bien como a la conexión para la que se propone`}.`,
  "place-unclear": ({ shown, why, tieIn }) =>
    why === "not-established"
      ? `${shownWords(shown)}; el registro coincide demasiado poco con la cámara para decir qué punto de la tubería es.`
      : `${shownWords(shown)}; podría ser ${tieIn || "una conexión vista"} ${IF_WORDS[why]}, así que aún no puede decirse qué punto de la tubería es.`,
  "written-twice": () => "Está anotada dos veces en el registro y se toma como una sola.",
  ruled: ({ ruling }) => `${ruledWords(ruling)}.`,
  explained: ({ by, explanation }) =>
    `Explicación${by === "" ? "" : ` de ${by}`}: ${stopped(explanation)}`,
};

function feet(length: Cft): string {
  return `${plainFeet(length)} pies`;
}

function recordName({ title, kind, number }: NonNullable<ShownSaid["record"]>): string {
  return title.trim() || `${RECORD_WORDS[kind]} ${number}`.trim();
}

/** `Card 1184 muestra House 14 a 34.0 pies (36.3 pies al corregir desde dónde mide)`. */
function shownWords({ record, label, station, off, moved }: ShownSaid): string {
  const name = record ? recordName(record) : "El registro";
  const what = `${name} muestra ${label.trim() || "una conexión"}`;
  if (station === null) return what;
  const allowed = moved === null ? "" : ` (${feet(moved)} al corregir desde dónde mide)`;
  const unsure = off === 0 ? "" : `, con un margen de ${feet(off)}`;
  return `${what} a ${feet(station)}${unsure}${allowed}`;
}

/** `vista a 36.5 pies, con un margen de 1.0 pies, en Run 1 y Run 2`. */
function seenWords(seen: SeenSaid | null): string {
  if (seen === null) return "vista";
  const runs = seen.runs.map((name) => name || "un recorrido").join(" y ");
  const where = runs === "" ? "" : ` en ${runs}`;
  if (seen.station === null) return `vista${where}, sin distancia conocida`;
  const at = feet(seen.station);
  if (seen.uncertainty === 0) return `a ${at}, según medida`;
  return `vista a ${at}, con un margen de ${feet(seen.uncertainty)},${where || " por la cámara"}`;
}

/** `a la derecha (lado norte)` */
function sideSaid({ side, compass }: SideSaid): string {
  const words = SIDE_WORDS[side];
  return compass === null ? words : `${words} (lado ${WINDS[compass]})`;
}

function comparedWords(compared: ComparedSaid | null): string {
  if (compared === null) return ", sin una distancia con que comparar";
  const { off, tolerance, allowedFor, sides } = compared;
  const allowed = allowedFor ? " al corregir desde dónde mide el registro" : "";
  const limit = off <= tolerance ? "dentro" : "fuera";
  const opposite = sides
    ? `; ${sideSaid(sides.recorded)} en el registro, ${sideSaid(sides.seen)} en la tubería`
    : "";
  return `: ${feet(off)} de diferencia${allowed}, ${limit} de los ${feet(tolerance)} en que pueden diferir las lecturas${opposite}`;
}

function saidWords(acceptedBy: string | null): string {
  return acceptedBy === null
    ? "Es una propuesta; nadie la ha aceptado todavía."
    : `${acceptedBy || "Alguien"} aceptó que son la misma conexión.`;
}

function settledWords(settled: SettledSaid): string {
  return settledPart(settled, (name) => `, según determinó ${name}`);
}

const RULED_WORDS: Record<RulingKind, string> = {
  legalise: "puede quedarse, con permiso, tarifas y un acuerdo",
  disconnect: "tiene que desconectarse hasta que cumpla",
  "own-connection": "tiene que tener una conexión propia",
  "accepted-as-legacy": "se acepta como está, por ser anterior a la regla",
  cap: "se va a tapar, por estar comprobado que no se usa",
  "record-corrected": "es correcta; el registro se corrige con el plano de lo construido",
  "evidence-asked": "queda pendiente: la autoridad pide más pruebas",
};

/** `Según City of Quillhaven, 20 de noviembre de 2026 (caso 26-114), puede quedarse, …`. */
function ruledWords({ kind, decidedBy, decidedOn, reference }: Ruling): string {
  const where = reference.trim() === "" ? "" : ` (${reference.trim()})`;
  return `Según ${decidedBy.trim() || "la autoridad"}, ${letterDay(decidedOn, "es")}${where}, ${RULED_WORDS[kind]}`;
}
