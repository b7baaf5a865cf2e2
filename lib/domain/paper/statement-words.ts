import type { Language } from "../say/language.ts";

const EN = {
  title: "Statement of your share",
  subject: (place: string) => `Statement for ${place}`,
  version: "Version",
  chosenOn: "Chosen on",
  owner: (place: string) => `The owner of ${place}`,
  opening: (place: string, line: string, total: string) =>
    `How ${place}’s share of the work on the shared sewer “${line}” was calculated: ${total} total, split under one rule. You can check every step.`,
  stale:
    "The facts have changed since these amounts were set. The steps are left out until the office sets the amounts again; do not rely on this statement until then.",
  pipe: "The pipe and the part you use",
  joins: (label: string, at: string) =>
    `Your connection ${label} joins the shared pipe at ${at} from the city’s main.`,
  joinsUnknown: (label: string) => `Where your connection ${label} joins is not known yet.`,
  noConnection: "No connection of yours to the shared pipe is known.",
  passes: (where: string, length: string, of: string) =>
    `Your sewage flows through ${where} from the main: ${length} of the ${of} of shared pipe.`,
  passesNone: "As far as known, your sewage does not use the shared pipe.",
  sum: "Your calculation",
  itemHead: ["Work", "Feet from the city’s main", "Price", "Cost", "Shared", "Your share"],
  notYours: "not in your share",
  sumHead: ["Work, in feet from the city’s main", "Cost", "Shared", "Your share"],
  ofLength: (part: string, whole: string) => `${part} of ${whole}`,
  alone: "you only",
  alike: (many: number) => `by ${many} (÷ ${many})`,
  byPart: (part: string) => `× ${part}`,
  nothing: "You have no share of any work item.",
  together: "Total",
  follows:
    "A fraction (×) appears where work is not shared equally: by the rule’s basis or, for whole-job items, in proportion to your share of the work along the pipe above.",
  fraction: (part: string, own: string, all: string) =>
    `× ${part}: your ${own} of the ${all} for the work along the pipe.`,
  pieces:
    "Where the number of sharers changes along the pipe, the work is divided there, prorated by length.",
  up: "Rounded down like every share; one leftover cent was then added to yours by the fixed rule: the shares rounded down the most get them first, and ties go to the property farthest upstream.",
  down: "Rounded down. Leftover cents go one each to the shares rounded down the most; ties go to the property farthest upstream.",
  even: "It comes out in whole cents; nothing was rounded.",
  exact: "Appendix: exact amounts in cents and fractions",
  exactly: (what: string, amount: string) => `${what}: ${amount}`,
  adds: (total: string) => `All shares add up to exactly ${total}.`,
  recoverable: (amount: string, rest: string) =>
    `${amount} of your share covers connections whose owner is not known yet. If an owner is found, that part is to come back to you, and ${rest} remains.`,
  alone_: "Would you be better off on your own?",
  passesTest:
    "No group of neighbors pays more than it would cost to repair only the pipe they use. Every possible group was tested, including yours.",
  failsYou: (excess: string) =>
    `You would pay ${excess} more than it would cost to repair only the pipe you use. The office can see this too; ask about it before you agree.`,
  failsGroup:
    "A group of neighbors that includes you would together pay more than it would cost to repair only the pipe they use. The office can see this too; ask about it before you agree.",
  failsOthers:
    "Some neighbors, not including you, would pay more than it would cost to repair only the pipe they use. The office can see this too.",
  testUnknown:
    "This cannot be tested yet, because a connection or a work item has no location on the pipe.",
  others: "Other addresses",
  othersHead: ["Address", "Share"],
  othersOnly: (places: string) =>
    `The same rule and the same prices apply to ${places}. Each has its own statement; their amounts are not shown here.`,
  unknownOwner: (label: string) => `connection ${label}, owner unknown`,
  rules: "Your share under other rules",
  chosen: "this statement",
  changes: "What could change it",
  changeLine:
    "A newly found owner or connection; a changed price, scope or repair option; a recorded agreement; anything discovered once the ground is open. A change of your share is put to you in writing, unless safety cannot wait. Your agreement covers this amount only.",
  excluded: "Not included",
  check: "See a mistake, or know of a document or pipe that is missing here? Tell us:",
};

export type StatementWords = typeof EN;

const ES: StatementWords = {
  title: "Desglose de su parte",
  subject: (place) => `Desglose de la parte de ${place}`,
  version: "Versión",
  chosenOn: "Elegida el",
  owner: (place) => `El propietario de ${place}`,
  opening: (place, line, total) =>
    `Cómo se calculó la parte de ${place} en la obra del desagüe compartido «${line}»: ${total} en total, repartidos con una sola regla. Usted puede comprobar cada paso.`,
  stale:
    "Los hechos han cambiado desde que se fijaron estos montos. Los pasos no se muestran hasta que la oficina vuelva a fijarlos; hasta entonces no confíe en este desglose.",
  pipe: "La tubería y el tramo que usted usa",
  joins: (label, at) =>
    `Su conexión ${label} se une a la tubería compartida a ${at} de la tubería principal de la ciudad.`,
  joinsUnknown: (label) => `Aún no se sabe dónde se une su conexión ${label}.`,
  noConnection: "No se conoce ninguna conexión suya con la tubería compartida.",
  passes: (where, length, of) =>
    `Sus aguas pasan por ${where} desde la tubería principal: ${length} de los ${of} de tubería compartida.`,
  passesNone: "Por lo que se sabe, sus aguas no pasan por la tubería compartida.",
  sum: "Su cálculo",
  itemHead: [
    "Obra",
    "Pies desde la tubería principal",
    "Precio",
    "Costo",
    "Se reparte",
    "Su parte",
  ],
  notYours: "no le toca",
  sumHead: ["Obra, en pies desde la tubería principal", "Costo", "Se reparte", "Su parte"],
  ofLength: (part, whole) => `${part} de ${whole}`,
  alone: "solo usted",
  alike: (many) => `entre ${many} (÷ ${many})`,
  byPart: (part) => `× ${part}`,
  nothing: "No le toca ninguna parte de la obra.",
  together: "Total",
  follows:
    "Una fracción (×) aparece donde la obra no se reparte por igual: según la base de la regla o, en lo que es de toda la obra, en proporción a su parte de la obra en la tubería que está arriba.",
  fraction: (part, own, all) => `× ${part}: sus ${own} de los ${all} de la obra en la tubería.`,
  pieces:
    "Donde cambia el número de los que comparten, la obra se divide allí, en proporción a la longitud.",
  up: "Se redondeó hacia abajo como todas las partes; después se le sumó un centavo que sobraba por la regla fija: primero a las partes que más se redondearon hacia abajo y, si empatan, a la propiedad que está más aguas arriba.",
  down: "Se redondeó hacia abajo. Los centavos que sobran van de uno en uno a las partes que más se redondearon hacia abajo y, si empatan, a la propiedad que está más aguas arriba.",
  even: "Sale en centavos enteros; no se redondeó nada.",
  exact: "Apéndice: montos exactos en centavos y fracciones",
  exactly: (what, amount) => `${what}: ${amount}`,
  adds: (total) => `Todas las partes suman exactamente ${total}.`,
  recoverable: (amount, rest) =>
    `De su parte, ${amount} cubre conexiones cuyo propietario aún no se conoce. Si se encuentra al propietario, eso debe volver a usted y quedan ${rest}.`,
  alone_: "¿Le iría mejor por su cuenta?",
  passesTest:
    "Ningún grupo de vecinos paga más de lo que costaría reparar solo la tubería que usa. Se comprobó con todos los grupos posibles, incluido el suyo.",
  failsYou: (excess) =>
    `Usted pagaría ${excess} más de lo que costaría reparar solo la tubería que usa. La oficina también lo ve; pregunte por ello antes de aceptar.`,
  failsGroup:
    "Un grupo de vecinos, usted entre ellos, pagaría en conjunto más de lo que costaría reparar solo la tubería que usa. La oficina también lo ve; pregunte por ello antes de aceptar.",
  failsOthers:
    "Algunos vecinos, usted no, pagarían más de lo que costaría reparar solo la tubería que usan. La oficina también lo ve.",
  testUnknown:
    "Aún no se puede comprobar, porque una conexión o una parte de la obra no tiene lugar en la tubería.",
  others: "Otras direcciones",
  othersHead: ["Dirección", "Parte"],
  othersOnly: (places) =>
    `La misma regla y los mismos precios valen para ${places}. Cada uno tiene su propio desglose; aquí no se muestran sus montos.`,
  unknownOwner: (label) => `conexión ${label}, propietario desconocido`,
  rules: "Su parte con otras reglas",
  chosen: "este desglose",
  changes: "Qué podría cambiarlo",
  changeLine:
    "Que se encuentre a otro propietario u otra conexión; que cambie un precio, la obra o la opción de reparación; un acuerdo registrado; lo que se descubra cuando el suelo esté abierto. Un cambio de su parte se le consulta por escrito, salvo que la seguridad no pueda esperar. Lo que usted aceptó vale solo para este monto.",
  excluded: "Qué no está incluido",
  check: "¿Ve un error, o sabe de un documento o de una tubería que falte aquí? Díganoslo:",
};

/** The standing words of a statement, by the language of its reader. */
export const STATEMENT_WORDS: Record<Language, StatementWords> = { en: EN, es: ES };
