import type { Language } from "../say/language.ts";

const EN = {
  title: "Statement of your share",
  subject: (place: string) => `Statement for ${place}`,
  version: "Version",
  chosenOn: "Chosen on",
  owner: (place: string) => `The owner of ${place}`,
  opening: (place: string, line: string, total: string) =>
    `This statement shows how the share of ${place} in the work on the shared sewer “${line}” comes about: ${total} in all, shared by one rule. Every step can be checked with a pencil.`,
  stale:
    "Facts of the line have changed since these amounts were set. The steps are left out until the office sets the amounts again; do not rely on this statement until then.",
  pipe: "The pipe, and the part that you use",
  joins: (label: string, at: string) => `Your connection ${label} joins the shared pipe at ${at}.`,
  joinsUnknown: (label: string) => `Where your connection ${label} joins is not known yet.`,
  noConnection: "No connection of yours to the shared pipe is known.",
  passes: (where: string, length: string, of: string) =>
    `Your sewage passes ${where}: ${length} of the ${of} of shared pipe.`,
  passesNone: "As far as is known, your sewage passes no part of the shared pipe.",
  sum: "Your sum",
  sumHead: ["Work and place", "It costs", "Shared", "Your part"],
  ofLength: (part: string, whole: string) => `${part} of ${whole}`,
  alone: "you alone",
  alike: (many: number) => `by ${many}: ÷ ${many}`,
  byPart: (part: string) => `× ${part}`,
  nothing: "No piece of the work falls to you.",
  together: "Together",
  rounded: "In whole cents",
  follows:
    "A fraction (×) stands where the work is not shared alike: by the measure of the rule, or, for work on the whole job, like the placed work above, at your part of it.",
  fraction: (part: string, own: string, all: string) =>
    `× ${part}: your ${own} of the ${all} for the work that has a place.`,
  pieces:
    "Where the number of those who share changes along the pipe, the work is cut there; each piece costs its part of the length.",
  up: "Your sum is not in whole cents. It was rounded down like everybody’s, and one of the cents left over then fell to you, by the fixed rule: to those who lost most by rounding, among equals to the one farthest upstream.",
  down: "Your sum is not in whole cents and was rounded down. The cents left over went one each to those who lost most by rounding, among equals to the one farthest upstream.",
  even: "Your sum comes out in whole cents; nothing was rounded.",
  adds: (total: string) => `All shares together come to ${total} exactly.`,
  recoverable: (amount: string, rest: string) =>
    `Of your share, ${amount} is carried for connections whose owner is not yet known. If an owner is found, that part is to come back to you, and ${rest} remains.`,
  alone_: "Would you be better off alone?",
  passesTest:
    "No group of neighbors pays more than mending only the pipe that it uses would cost. That was tested for every possible group, yours among them.",
  failsYou: (excess: string) =>
    `You would pay ${excess} more than mending only the pipe that you use would cost. The office sees this too; ask about it before you agree.`,
  failsGroup:
    "A group of neighbors, you among them, would together pay more than mending only the pipe that it uses would cost. The office sees this too; ask about it before you agree.",
  failsOthers:
    "Some neighbors, not you, would pay more than mending only the pipe that they use would cost. The office sees this too.",
  testUnknown:
    "This cannot be tested yet, because a connection or a piece of work has no place on the pipe.",
  others: "The others",
  othersHead: ["Address", "Share"],
  othersOnly: (places: string) =>
    `The same rule and the same prices apply to ${places}. Each has a statement of its own; their amounts are not shown here.`,
  unknownOwner: (label: string) => `connection ${label}, owner not yet known`,
  rules: "What other rules would ask of you",
  chosen: "this statement",
  changes: "What would change it",
  changeLines: [
    "the owner of a connection becomes known, or another connection is found;",
    "a price changes, work is added or dropped, or another way of doing it is chosen;",
    "a recorded agreement on this pipe comes to light, or a stretch turns out to be the authority’s;",
    "what comes to light when the ground is open; a change of your share is put to you in writing, unless safety cannot wait.",
  ],
  after: "Then you get a new statement. What you agreed to covers this amount and no other.",
  excluded: "What is not in it",
  check:
    "Do you find a mistake, or do you know of a paper or a pipe that is missing here? Tell us:",
};

export type StatementWords = typeof EN;

const ES: StatementWords = {
  title: "Desglose de su parte",
  subject: (place) => `Desglose de la parte de ${place}`,
  version: "Versión",
  chosenOn: "Elegida el",
  owner: (place) => `El dueño de ${place}`,
  opening: (place, line, total) =>
    `Este desglose muestra cómo resulta la parte de ${place} en la obra del desagüe compartido “${line}”: ${total} en total, repartidos con una sola regla. Cada paso se puede comprobar con un lápiz.`,
  stale:
    "Desde que se fijaron estos montos han cambiado hechos de la línea. Los pasos no se muestran hasta que la oficina vuelva a fijarlos; hasta entonces no confíe en este desglose.",
  pipe: "La tubería y el tramo que usted usa",
  joins: (label, at) => `Su conexión ${label} se une a la tubería compartida a ${at}.`,
  joinsUnknown: (label) => `Aún no se sabe dónde se une su conexión ${label}.`,
  noConnection: "No se conoce ninguna conexión suya con la tubería compartida.",
  passes: (where, length, of) =>
    `Sus aguas pasan por ${where}: ${length} de los ${of} de tubería compartida.`,
  passesNone: "Por lo que se sabe, sus aguas no pasan por la tubería compartida.",
  sum: "Su cuenta",
  sumHead: ["Obra y lugar", "Cuesta", "Se reparte", "Su parte"],
  ofLength: (part, whole) => `${part} de ${whole}`,
  alone: "solo usted",
  alike: (many) => `entre ${many}: ÷ ${many}`,
  byPart: (part) => `× ${part}`,
  nothing: "Ninguna parte de la obra le toca a usted.",
  together: "Total",
  rounded: "En centavos enteros",
  follows:
    "Una fracción (×) está donde la obra no se reparte por igual: según la medida de la regla o, en lo que es de toda la obra, como la obra situada de arriba, según su parte en ella.",
  fraction: (part, own, all) => `× ${part}: sus ${own} de los ${all} de la obra que tiene lugar.`,
  pieces:
    "Donde cambia el número de los que comparten, la obra se corta allí; cada pedazo cuesta su parte de la longitud.",
  up: "Su cuenta no sale en centavos enteros. Se redondeó hacia abajo como todas, y uno de los centavos que sobraron le tocó a usted por la regla fija: a quienes más perdieron al redondear y, entre iguales, al que está más aguas arriba.",
  down: "Su cuenta no sale en centavos enteros y se redondeó hacia abajo. Los centavos que sobraron fueron uno a cada parte que más perdió al redondear y, entre iguales, a la que está más aguas arriba.",
  even: "Su cuenta sale en centavos enteros; no se redondeó nada.",
  adds: (total) => `Todas las partes juntas suman exactamente ${total}.`,
  recoverable: (amount, rest) =>
    `De su parte, ${amount} cubre conexiones cuyo dueño aún no se conoce. Si se encuentra al dueño, eso debe volver a usted y quedan ${rest}.`,
  alone_: "¿Le iría mejor por su cuenta?",
  passesTest:
    "Ningún grupo de vecinos paga más de lo que costaría arreglar solo la tubería que usa. Se comprobó con todos los grupos posibles, también con los suyos.",
  failsYou: (excess) =>
    `Usted pagaría ${excess} más de lo que costaría arreglar solo la tubería que usa. La oficina también lo ve; pregunte por ello antes de aceptar.`,
  failsGroup:
    "Un grupo de vecinos, usted entre ellos, pagaría en conjunto más de lo que costaría arreglar solo la tubería que usa. La oficina también lo ve; pregunte por ello antes de aceptar.",
  failsOthers:
    "Algunos vecinos, usted no, pagarían más de lo que costaría arreglar solo la tubería que usan. La oficina también lo ve.",
  testUnknown:
    "Aún no se puede comprobar, porque una conexión o una parte de la obra no tiene lugar en la tubería.",
  others: "Los demás",
  othersHead: ["Dirección", "Parte"],
  othersOnly: (places) =>
    `La misma regla y los mismos precios valen para ${places}. Cada uno tiene su propio desglose; aquí no se muestran sus montos.`,
  unknownOwner: (label) => `conexión ${label}, dueño aún no conocido`,
  rules: "Qué le pedirían otras reglas",
  chosen: "este desglose",
  changes: "Qué lo cambiaría",
  changeLines: [
    "que se conozca al dueño de una conexión o se encuentre otra conexión;",
    "que cambie un precio, se añada o quite obra, o se elija otra manera de hacerla;",
    "que aparezca un acuerdo registrado sobre esta tubería, o que un tramo resulte ser de la autoridad;",
    "lo que salga a la luz cuando el suelo esté abierto; un cambio de su parte se le consulta por escrito, salvo que la seguridad no pueda esperar.",
  ],
  after:
    "Entonces recibe un desglose nuevo. Lo que usted aceptó vale para este monto y para ningún otro.",
  excluded: "Qué no está incluido",
  check: "¿Encuentra un error, o sabe de un papel o de una tubería que falte aquí? Díganoslo:",
};

/** The standing words of a statement, by the language of its reader. */
export const STATEMENT_WORDS: Record<Language, StatementWords> = { en: EN, es: ES };
