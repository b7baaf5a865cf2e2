import type { ScopeKind } from "../facts/scope.ts";
import type { Cft } from "../length/station.ts";
import { plainFeet } from "../length/station.ts";
import { capital } from "../say/capital.ts";
import { letterDay, letterTime, letterWeekday } from "../time/letter-day.ts";
import type { LetterWords } from "./words-en.ts";
import { NOTICE_ES } from "./words-notice.ts";
import { STATUTORY_ES } from "./words-statutory.ts";

function feet(length: Cft): string {
  return `${plainFeet(length)} pies`;
}

function stretch(from: Cft, to: Cft): string {
  return `${plainFeet(from)} a ${plainFeet(to)} pies`;
}

function count(many: number, one: string, several: string): string {
  return `${many} ${many === 1 ? one : several}`;
}

/** What a plan calls a building, as its owner would read it. */
const BUILDINGS: Readonly<Record<string, string>> = {
  house: "casa",
  garage: "garaje",
  shed: "cobertizo",
  shop: "local",
  bakery: "panadería",
  church: "iglesia",
  apartments: "edificio de apartamentos",
};

/** Kinds of work; titles stay as the office wrote them, quoted. */
const WORK: Readonly<Record<ScopeKind, string>> = {
  unknown: "Trabajo",
  "dig-and-replace": "Excavación y reemplazo",
  "spot-repair": "Reparación puntual",
  line: "Revestimiento interior",
  burst: "Reemplazo por fragmentación (pipe bursting)",
  cap: "Tapado de un ramal",
  clear: "Corte de raíces u obstrucciones",
  clean: "Limpieza con agua a presión",
  reconnect: "Reconexión de un ramal",
  test: "Prueba",
  restore: "Restauración de la superficie",
  "permit-fee": "Tarifa de permiso",
  other: "Otro trabajo",
};

/** Usual units, one and several; any other stays as the office wrote it. */
const UNITS: Readonly<Record<string, readonly [string, string]>> = {
  ft: ["pie", "pies"],
  feet: ["pie", "pies"],
  "sq ft": ["pie cuadrado", "pies cuadrados"],
  "cu yd": ["yarda cúbica", "yardas cúbicas"],
  each: ["unidad", "unidades"],
  ea: ["unidad", "unidades"],
  hour: ["hora", "horas"],
  hours: ["hora", "horas"],
  day: ["día", "días"],
  days: ["día", "días"],
  job: ["obra", "obras"],
  "lump sum": ["suma global", "sumas globales"],
};

/** Every standing word of a letter in Spanish, as it is written to neighbors in the United States. */
export const ES: LetterWords = {
  day: (day) => letterDay(day, "es"),
  onDay: (day) => `el ${letterDay(day, "es")}`,
  weekday: (day) => letterWeekday(day, "es"),
  feet,
  stretch,
  fromMain: (where) => `${where} desde la tubería principal`,
  list: (names) => {
    const last = names.at(-1) ?? "";
    if (names.length < 2) return last;
    const and = /^(i|hi(?!e))/i.test(last) ? "e" : "y";
    return `${names.slice(0, -1).join(", ")} ${and} ${last}`;
  },
  time: (time) => letterTime(time, "es"),
  span: (from, to) => `de ${letterTime(from, "es")} a ${letterTime(to, "es")}`,
  moment: (day, time) =>
    time === "" ? letterDay(day, "es") : `${letterDay(day, "es")}, ${letterTime(time, "es")}`,
  openDays: {
    "every-day": "todos los días",
    "monday-to-friday": "de lunes a viernes",
    "monday-to-saturday": "de lunes a sábado",
  },
  phoneAt: (number, hours) => (hours === "" ? number : `${number}; ${hours}`),
  dayAndNight: "Teléfono (las 24 horas)",
  onCall: "Teléfono de guardia",
  unknown: "no se sabe",
  notSet: "aún no se ha fijado; le avisaremos",
  inches: (inches) => `${inches} pulg.`,
  typed: (text) => `«${text}»`,
  about: (station, off) => (off === 0 ? feet(station) : `${feet(station)} ± ${feet(off)}`),
  pipe: {
    serves: (place) => `la tubería de desagüe privada que da servicio a ${place}`,
    "may-serve": (place) => `una tubería de desagüe privada que quizá da servicio a ${place}`,
    crosses: (place) => `una tubería de desagüe privada que cruza el terreno de ${place}`,
    near: (place) => `una tubería de desagüe privada cercana a ${place}`,
  },
  workTitle: (title, kind) => `${WORK[kind]} («${title}»)`,

  frame: {
    date: "Fecha",
    reference: "Referencia",
    answerBy: "Responda a más tardar el",
    greeting: (name, isPerson) =>
      isPerson ? `Estimado/a ${name}:` : `Estimados señores de ${name}:`,
    greetingResident: "Estimado/a residente:",
    closing: "Atentamente,",
    page: (page, of) => `Página ${page} de ${of}`,
    license: (number) => `Licencia de contratista ${number}`,
    telephone: "Teléfono",
    email: "Correo electrónico",
    forOffice: (by, office) => `${by}, por ${office}`,
    slipTitle: "Su respuesta",
    slipCut:
      "Corte aquí y envíe esta parte por correo, o responda por teléfono o por correo electrónico.",
    slipBy: (day) => `Responda, por favor, a más tardar el ${day}.`,
    slipTo: "Envíe a",
    slipAbout: "Sobre",
    slipName: "Nombre",
    slipSignature: "Firma, como propietario / inquilino / por:",
    slipDate: "Fecha",
    slipPhone: "Teléfono",
    slipNote: "Algo más que debamos saber",
    notToScale: "No está a escala.",
    alsoHere: ["En español", "Después del texto en inglés"],
    below: "vea más abajo",
    sameText: "El mismo texto en español",
    to: "Para",
    drawnAs: "En palabras",
  },

  lead: {
    by: (day) => (day === "" ? "" : ` a más tardar el ${day}`),
    finding: (by) => `Díganos, por favor,${by} qué sabe de esta tubería. No hay que pagar nada.`,
    inquiry: (place, by) => `Díganos, por favor,${by} adónde van los desagües de ${place}.`,
    visit: (place, by) =>
      `Díganos, por favor,${by} si podemos ir a ${place} a la hora indicada abajo.`,
    water: (by) =>
      `Por favor, no use agua a la hora indicada abajo, y díganos${by} si eso no es posible.`,
    split: (place, amount, by) =>
      `Díganos, por favor,${by} si está de acuerdo con una parte de ${amount} para ${place}.`,
    enter: (place, by) => `Díganos, por favor,${by} si podemos entrar en ${place}.`,
    dig: (place, by) => `Díganos, por favor,${by} si podemos entrar en ${place} y excavar allí.`,
    agreement: (by) => `Díganos, por favor,${by} si va a firmar.`,
    demand: (place, amount, by) => `Pague, por favor, ${amount} por ${place}${by}.`,
    start: (day) => `La obra empieza el ${day}.`,
    pause: (place, day, hours) =>
      `No deje correr agua por ningún desagüe de ${place} el ${day}${hours === "" ? "" : `, ${hours}`}.`,
  },
  subject: (title, place) => (place === "" ? title : `${title}: ${place}`),

  material: {
    "vitrified-clay": "barro vitrificado",
    concrete: "concreto",
    "cast-iron": "hierro fundido",
    "ductile-iron": "hierro dúctil",
    pvc: "PVC",
    abs: "ABS",
    polyethylene: "polietileno",
    "bituminous-fibre": "tubo de fibra bituminosa (cartón alquitranado)",
    "asbestos-cement": "asbesto-cemento",
    "cured-in-place-liner": "revestimiento interior",
    unknown: "material desconocido",
  },
  fault: {
    crack: "una grieta",
    broken: "tubería rota",
    hole: "un agujero",
    "offset-joint": "una junta desalineada",
    "open-joint": "una junta abierta",
    roots: "raíces",
    belly: "un hundimiento que retiene agua",
    deformed: "tubería deformada",
    collapsed: "tubería derrumbada",
    infiltration: "agua que entra",
    "protruding-tie-in": "una conexión que sobresale dentro de la tubería",
    "worn-surface": "pared desgastada",
  },
  side: {
    left: "a la izquierda mirando aguas arriba, es decir, desde la tubería principal",
    right: "a la derecha mirando aguas arriba, es decir, desde la tubería principal",
    crown: "en la parte superior de la tubería",
    unknown: "no se sabe de qué lado",
  },
  sideShort: {
    left: "izquierda",
    right: "derecha",
    crown: "arriba",
    unknown: "no se sabe",
  },
  compass: {
    north: "norte",
    northeast: "noreste",
    east: "este",
    southeast: "sureste",
    south: "sur",
    southwest: "suroeste",
    west: "oeste",
    northwest: "noroeste",
  },
  onSide: (compass) => `del lado ${compass} de la tubería`,
  shortSide: (compass) => `lado ${compass}`,
  toward: (side, what) => `${side}, hacia ${what}`,
  yourBuilding: (name) => `su ${BUILDINGS[name] ?? "edificio"}`,
  buildingAt: (place) => `el edificio de ${place}`,
  standing: {
    "on-record-and-seen": "en el expediente y vista",
    "on-record-seen-elsewhere": "en el expediente, vista en otro lugar o del otro lado",
    "on-record-not-seen": "en el expediente, no vista",
    "on-record-not-inspected": "en el expediente; la cámara no llegó",
    "on-record-place-unclear": "en el expediente; no está claro en qué punto de la tubería",
    undocumented: "vista, no está en el expediente",
    "accepted-by-ruling": "no está en el expediente; la autoridad la aceptó",
    inactive: "fuera de uso, según las pruebas",
    "not-a-sanitary-branch": "no es el desagüe de un edificio",
  },
  coverage: {
    "under-water": "bajo agua",
    blocked: "obstruida",
    "not-in-view": "fuera de la vista de la cámara",
    "not-recorded": "sin grabar",
    "not-inspected": "sin inspeccionar",
  },
  holder: {
    owners: "los propietarios que la usan",
    authority: "la autoridad del alcantarillado",
    unclear: "no está claro",
  },
  rule: {
    equal: {
      title: "Partes iguales",
      sentence: "Cada propiedad conectada paga lo mismo.",
    },
    "per-unit": {
      title: "Por número de viviendas y negocios",
      sentence: "Cada vivienda y cada negocio de la línea cuenta una vez.",
    },
    "portion-used": {
      title: "Por el tramo de tubería que usa cada uno",
      sentence:
        "El costo de cada pie de tubería se reparte por igual entre las propiedades cuyas aguas pasan por ahí.",
    },
    "upstream-of-fault": {
      title: "Propiedades aguas arriba de la falla",
      sentence: "Las propiedades cuyas aguas pasan por la falla pagan por partes iguales.",
    },
    "reach-owner": {
      title: "El responsable de cada tramo",
      sentence:
        "Cada tramo lo pagan los propietarios responsables de él según la regla aquí citada.",
    },
    weights: {
      title: "Por una base acordada",
      sentence: "El costo se reparte en proporción a la base anotada para cada propiedad.",
    },
    "recorded-shares": {
      title: "Por el acuerdo registrado",
      sentence: "El costo se reparte en las partes que fija el acuerdo registrado.",
    },
    "single-payer": {
      title: "Un solo pagador",
      sentence: "Una sola propiedad paga la obra.",
    },
  },

  strip: {
    finding:
      "La tubería como la vio la cámara. La tubería principal de la ciudad está a la izquierda; los pies se cuentan desde ahí. Arriba, el expediente; abajo, lo que vio la cámara.",
    one: "Dónde se une a la tubería compartida la conexión en cuestión, en pies desde la tubería principal de la ciudad.",
    yours:
      "La tubería compartida, en pies desde la tubería principal; la franja muestra por dónde pasan sus aguas.",
    work: "Dónde se hará la obra, en pies desde la tubería principal de la ciudad.",
    lot: "Dónde cruza la tubería su terreno y dónde se hará la obra, en pies desde la tubería principal de la ciudad.",
    done: "La tubería como la vio la cámara antes de la obra, con la obra marcada, en pies desde la tubería principal de la ciudad.",
    title: "Dibujo en franja de la tubería compartida",
    main: "Tubería principal pública",
    upperEnd: "Extremo superior",
    you: "su conexión",
    notKnown: "propietario desconocido",
    nobody: "ningún edificio",
    onRecord: (label) => `Expediente: ${label}`,
    noRecord: "no está en el expediente",
    asked: "la conexión en cuestión",
    seen: "Vista por la cámara",
    seenYes: "vista",
    pipe: "Tubería",
    passes: "Por aquí pasan sus aguas",
    passesYes: "sí",
    passesNo: "no",
    work_: "Obra",
    crossing: "Su terreno",
    crossed: "la tubería cruza",
    boundary: {
      "right-of-way-line": "Límite de la vía pública",
      curb: "Bordillo de la banqueta",
      "property-line": "Lindero",
      cleanout: "Boca de limpieza (cleanout)",
      foundation: "Cimientos",
      manhole: "Pozo de visita",
      "easement-edge": "Borde de la servidumbre",
    },
    at: (label, station) => `${label} a los ${feet(station)}.`,
    over: (label, from, to) => `${label} de ${stretch(from, to)}.`,
    tieIn: (label, station, who) => `${label} se une a los ${feet(station)}: ${who}.`,
  },

  caution: {
    records: {
      title: "Qué tan confiable es esta información",
      text: (day) =>
        `Se basa en expedientes públicos y en la inspección con cámara al ${day}. No se garantiza que los expedientes públicos sean exactos; las condiciones reales pueden ser distintas.`,
    },
    proposal: {
      title: "Una propuesta, no una decisión",
      text: "Esto es una propuesta de reparto del costo. No es una determinación legal ni asesoría legal. No admite nada ni renuncia a ningún derecho, ni suyo ni nuestro. Usted puede consultar a su propio abogado o asesor antes de responder.",
    },
    drains: {
      title: "No use agua ni inodoros durante el tiempo indicado",
      text: "Las aguas negras pueden subir en su edificio o en el de un vecino, e inundar la zanja donde hay personas trabajando.",
    },
    drainsLater: {
      title: "No use agua ni inodoros cuando se lo avisemos",
      text: "Un aviso aparte le dirá el día y las horas. Las aguas negras pueden subir en su edificio o en el de un vecino, e inundar la zanja donde hay personas trabajando.",
    },
    gas: {
      title: "Una tubería de gas puede atravesar un desagüe",
      text: "No limpie esta línea con herramientas de corte. Si huele a gas, salga enseguida. No use interruptores ni teléfonos adentro. Ya lejos del edificio, llame al 911 y a la compañía de gas.",
    },
    gasSeen: {
      title: "Algo atraviesa esta tubería",
      text: "La cámara vio, o no pudo descartar, algo que atraviesa la tubería. Nadie debe limpiar esta línea hasta que la compañía de gas la haya revisado.",
    },
    sewage: {
      title: "Las aguas negras transmiten enfermedades",
      text: "Mantenga a niños y animales lejos de las aguas negras y del suelo mojado sobre la tubería. Lávese las manos después de cualquier contacto.",
    },
    cap: {
      title: "Por favor, no tape ni selle todavía ningún desagüe",
      text: "Por favor, no tape, no selle ni revista ningún ramal de esta tubería. Mientras no se pruebe que un ramal está fuera de uso, alguien puede estar usándolo.",
    },
    dye: {
      title: "Sobre el tinte",
      text: "El tinte no es tóxico y se fabrica para desagües. Puede verse algo de color en su inodoro o lavabo por poco tiempo. Puede manchar una superficie clara; enjuáguela. Una prueba sin color demuestra poco; puede repetirse.",
    },
    smoke: {
      title: "Si se usa humo",
      text: "Antes de la prueba, eche agua en cada desagüe de piso y en cada lavabo sin uso. Avísenos enseguida si alguien allí tiene asma u otra enfermedad de los pulmones; en ese caso no usaremos humo. Si ve humo adentro, abra las ventanas y salga.",
    },
    trench: {
      title: "Zanja abierta",
      text: "Quédese fuera de las barreras y mantenga lejos a niños y animales, aunque nadie esté trabajando. Las paredes de una zanja pueden derrumbarse sin aviso.",
    },
    enterOnly: {
      title: "Lo que este permiso no hace",
      text: "Permitirnos entrar o excavar no es un acuerdo de pago ni una declaración sobre de quién es la tubería. Esta carta no es asesoría legal.",
    },
    official: {
      title: "No es asesoría legal",
      text: "Esta carta presenta hechos y montos de nuestros archivos. No es una determinación legal ni asesoría legal. No admite nada ni renuncia a ningún derecho, ni suyo ni nuestro. Usted puede consultar a su propio abogado o asesor.",
    },
  },

  picture: {
    tag: "[foto]",
    caption: (label, where, day) => `${label}, ${where}, como lo vio la cámara el ${day}`,
    alt: (caption) => `Imagen del interior de la tubería: ${caption}`,
  },

  finding: {
    opening: (office, days, pipe) =>
      `Somos ${office}, contratista de drenaje y alcantarillado. ${capital(days)} pasamos una cámara por ${pipe}. Esta carta dice qué vimos y qué aún no se sabe. No acusa a nadie ni pide dinero.`,
    openingNoRun: (office, pipe) =>
      `Somos ${office}, contratista de drenaje y alcantarillado. Estamos reuniendo los hechos sobre ${pipe}. Todavía no hemos pasado la cámara. Esta carta no acusa a nadie ni pide dinero.`,
    connected: (place, where) =>
      `Hasta donde hoy se sabe, ${place} desagua en esta tubería en ${where} desde la tubería principal de la ciudad.`,
    connectedAt: (label, where) => `${label}, a ${where}`,
    candidate: (place) => `${place} está junto a esta tubería. Aún no se sabe si desagua en ella.`,
    crossed: "Nada de lo visto hasta ahora indica que el edificio la use.",
    neighbor: (place) => `${place} está cerca de esta tubería.`,
    seen: "Qué se vio, cuándo y quién lo vio",
    run: (day, by, access, feet) =>
      `${day}: ${[by, access === "" ? "" : `la cámara entró por «${access}»`, feet].filter((part) => part !== "").join(", ")}`,
    runFeet: (from, to) => `de ${stretch(from, to)} desde ahí`,
    runFeetFromMain: (from, to) =>
      `de ${stretch(from, to)} desde la tubería principal de la ciudad`,
    noRun: "Todavía no se ha pasado la cámara.",
    tieInHead: [
      "Marca",
      "Pies desde la principal",
      "Lado",
      "Dirección",
      "Expediente de permisos y cámara",
    ],
    noSide: "ninguno",
    begins: "en el expediente; aquí comienza la tubería compartida, no es un ramal",
    explained: (standing) => `${standing}; explicado en nuestros archivos`,
    faults: (list) =>
      `La cámara también vio (pies desde la tubería principal de la ciudad): ${list}.`,
    noFaults: "No se anotaron fallas.",
    faultLine: (fault, where) => `${where}: ${fault}`,
    standingWater: "agua estancada",
    deep: (what, inches) =>
      `${what}, con ${inches} ${inches === 1 ? "pulgada" : "pulgadas"} de agua cuando se vio`,
    relative: "en un lugar aún no medido desde la tubería principal",
    blocked: (where) => `${where}: obstruida; la cámara no pudo seguir`,
    stations:
      "Los pies se miden a lo largo de la tubería desde la tubería principal de la ciudad, la pública en la que desemboca. Los lados son mirando aguas arriba, es decir, desde la tubería principal.",
    notKnown: "Qué aún no se sabe",
    undocumented: (labels, many) =>
      many === 1
        ? `Vimos una conexión, ${labels}, que no aparece en ningún expediente de permisos que tengamos. No sabemos de quién es.`
        : `Vimos ${many} conexiones, ${labels}, que no aparecen en ningún expediente de permisos que tengamos. No sabemos de quién son.`,
    notSeen: (labels, many) =>
      many === 1
        ? `El expediente muestra una conexión que la cámara no vio: ${labels}.`
        : `El expediente muestra conexiones que la cámara no vio: ${labels}.`,
    notInspected: (labels, many) =>
      many === 1
        ? `El expediente muestra una conexión donde la cámara no llegó o no pudo ver: ${labels}.`
        : `El expediente muestra conexiones donde la cámara no llegó o no pudo ver: ${labels}.`,
    placeUnclear: (labels, many) =>
      many === 1
        ? `El expediente muestra una conexión y aún no está claro en qué punto de la tubería queda: ${labels}.`
        : `El expediente muestra conexiones y aún no está claro en qué punto de la tubería quedan: ${labels}.`,
    undecided:
      "Algunas coincidencias entre el expediente y el video son nuestra mejor estimación y todavía hay que confirmarlas.",
    gap: (where, why) =>
      `No sabemos en qué estado está la tubería de ${where} desde la tubería principal: ${why}.`,
    unclear: (where) =>
      `No está claro quién es responsable de la tubería de ${where} desde la tubería principal.`,
    noBoundary: "Aún no se ha determinado quién es responsable de cada tramo.",
    settled: "Hoy no hay preguntas abiertas. Hechos nuevos pueden abrir alguna.",
    ask: "Qué le pedimos",
    asks: [
      "Envíenos cualquier documento sobre el desagüe: permisos, planos, acuerdos, facturas de obras anteriores.",
      "Díganos si otra persona es propietaria o vive en esta dirección, para avisarle también.",
      "Pida ver el video; llame o escriba y se lo mostramos.",
    ],
    choices: [
      "He leído esta carta.",
      "Quiero ver el video.",
      "Tengo documentos sobre esta tubería.",
      "No estoy de acuerdo con algo; llámeme, por favor.",
    ],
  },

  inquiry: {
    opening: (station, side) =>
      `Nuestra cámara encontró un ramal que se une a la tubería de desagüe compartida a ${station} de la tubería principal de la ciudad, ${side}. No aparece en ningún expediente de permisos que tengamos.`,
    openingUnplaced:
      "Nuestra cámara encontró un ramal que se une a la tubería de desagüe compartida en un lugar aún no medido desde la tubería principal. No aparece en ningún expediente de permisos que tengamos.",
    why: (grounds) =>
      `Le preguntamos porque ${grounds}. El ramal también puede llevar a otra dirección. No decimos que sea suyo.`,
    ground: {
      excavation: (place, day) => `una excavación del ${day} mostró que lleva a ${place}`,
      dye: (place, day) => `el tinte puesto en un desagüe de ${place} salió por él el ${day}`,
      flow: (place, day) => `el agua que se hizo correr en ${place} salió por él el ${day}`,
      trace: (place, day) => `una señal rastreada desde él el ${day} llevó a ${place}`,
      smoke: (place, day) => `el humo que se sopló en él el ${day} salió en ${place}`,
      statement: (place, day) => `el ${day} nos dijeron que da servicio a ${place}`,
    },
    groundRecord: (place) =>
      `un expediente de permisos muestra una conexión de ${place} que la cámara no encontró`,
    groundCrossed: (place) => `la tubería cruza allí el terreno de ${place}`,
    groundPlace: (place) => `se une a la tubería cerca de ${place}`,
    groundUnknown: (place) => `aún no sabemos adónde van los desagües de ${place}`,
    whyMatters:
      "Importa porque un ramal no debe taparse ni cubrirse con revestimiento mientras alguien pueda estar usándolo.",
    facts: "Qué se sabe del ramal",
    factHead: ["", "Según lo visto"],
    station: "Pies desde la tubería principal de la ciudad",
    side: "Lado",
    size: "Diámetro",
    material: "Material",
    evidence: "Indicios hasta ahora",
    level: [
      "ninguna",
      "solo la posición",
      "un indicio en un expediente",
      "un rastreo que señala una parcela",
      "una prueba, vista una vez",
      "una prueba repetida con una dirección de control",
      "excavada, o aceptada por escrito",
    ],
    ask: "Qué le pedimos",
    asks: [
      "Díganos adónde van los desagües de su edificio. Piense en un desagüe de patio, una bajante del techo, una bomba de sumidero, y un baño, una lavandería o un desagüe de piso en el sótano.",
      "Díganos qué se agregó o cambió: cuándo, y qué plomero lo hizo.",
      "Envíenos cualquier permiso, plano o factura que lo muestre.",
      "Permita una prueba con tinte. Le avisaremos antes el día y la hora. Dejarnos entrar no es un acuerdo de pago.",
    ],
    choices: [
      "Creo que el ramal sirve a mi edificio.",
      "Creo que no; mis desagües van por otro lado.",
      "No lo sé.",
      "Pueden venir a probar. Abajo están los días y horas que me convienen.",
      "Tengo documentos sobre eso.",
    ],
  },

  visit: {
    opening: (place) =>
      `Queremos averiguar adónde van los desagües de ${place}. Uno de nosotros pone un poco de tinte en un desagüe del edificio mientras otro mira la tubería con una cámara.`,
    openingControl: (place) =>
      `Vamos a probar con tinte qué desagües llevan a qué ramal de la tubería compartida. Adónde van los desagües de ${place} ya se sabe, y quisiéramos comparar con ellos: uno de nosotros pone un poco de tinte en un desagüe del edificio mientras otro mira la tubería con una cámara.`,
    head: ["", ""],
    day: "Día",
    hours: "Horas",
    slot: "Cuándo venimos",
    slotOf: (span, unit) => (unit === "" ? span : `${span} (${unit})`),
    waterOff: "Por favor, sin agua",
    titleWater: "Por favor, no use agua durante una prueba de desagües",
    openingWater: (place) =>
      `Vamos a probar con tinte qué desagües llevan a qué ramal de la tubería compartida. Nadie entrará en ${place}. Pero sus aguas pasan, o pueden pasar, por el lugar que observamos y se llevarían el tinte.`,
    asksWater: [
      "No use agua durante ese tiempo: ni inodoro, ni lavabo, ni ducha, ni máquinas.",
      "Díganos antes si no puede estar sin agua o si alguien allí está enfermo.",
    ],
    choicesWater: [
      "No usaremos agua durante ese tiempo.",
      "No podemos estar sin agua entonces; llámeme, por favor.",
    ],
    floor: {
      outside: "afuera",
      basement: "en el sótano",
      "first-floor": "en la planta baja",
      "upper-floor": "en el piso de arriba",
    },
    drain: {
      "floor-drain": "desagüe de piso",
      "laundry-sink": "pileta de lavar",
      toilet: "inodoro",
      "kitchen-sink": "fregadero de la cocina",
      "bathroom-sink": "lavabo",
      "tub-or-shower": "tina o ducha",
      "yard-drain": "desagüe de patio",
      downspout: "bajante del techo",
      sump: "sumidero",
    },
    floorDrain: (floor, drain) => `${drain} ${floor}`,
    drainsIn: (drains) => drains,
    flush: (gallons) => `Un poco de tinte y luego unos ${gallons} galones de agua en cada desagüe`,
    put: "Qué se echa",
    who: "Quién viene",
    whoWords: (office) => `dos personas de ${office}, que se identificarán`,
    inside: "Dónde",
    insideWords: "en un lavabo, una tina o un inodoro de cada piso que tenga desagües",
    filmed: "Qué se filma",
    filmedWords: "solo el interior de la tubería, nunca sus habitaciones",
    ask: "Qué le pedimos",
    asks: [
      "Por favor, esté en casa o que haya alguien que abra la puerta. Díganos antes si alguien allí está enfermo.",
      "No use nada de agua desde que empecemos hasta que digamos que terminamos, salvo que se lo pidamos.",
    ],
    tenant:
      "Si usted es inquilino: su arrendador también debe avisarle de la entrada. Esta carta no reemplaza ese aviso.",
    owner:
      "Si usted da la propiedad en alquiler: debe avisar debidamente de la entrada a sus inquilinos. Esta carta no reemplaza ese aviso.",
    choices: [
      "El día me conviene.",
      "El día no me conviene; abajo están otros días.",
      "Alguien aquí necesita cuidado especial; llámeme.",
      "No quiero una prueba; llámeme, por favor.",
    ],
  },

  split: {
    opening:
      "Esta carta propone cómo repartir el costo de la obra. Usted puede comprobar cada paso.",
    enclosed: "Adjunto: el desglose de su parte, con cada trabajo y el cálculo exacto.",
    amount: (place) => `Parte de ${place}`,
    noShare: (place) => `Con esta regla no le toca ninguna parte a ${place}.`,
    rule: "La regla usada y por qué",
    ruleLine: (title, sentence) => `${title}. ${sentence}`,
    reason: (reason) => `Por qué esta regla: «${reason.replace(/\.$/, "")}».`,
    answersLine: (where, who, source) =>
      `La tubería de ${where} desde la tubería principal: ${who} (${source}).`,
    answers: "Quién es responsable de cada tramo, según la regla en nuestros archivos",
    answersHead: ["Tramo, desde la tubería principal", "Responsable", "Fuente"],
    nothingWritten: "no hay regla en nuestros archivos",
    cited: (source, day) => `${source}, al ${day}`,
    unit: (unit, many) => UNITS[unit.toLowerCase()]?.[many ? 1 : 0] ?? unit,
    work: "La obra",
    workHead: ["Obra", "Pies desde la tubería principal", "Precio", "Monto"],
    markup: (percent) => ` + ${percent} de recargo`,
    tax: (percent) => ` + ${percent} de impuesto`,
    total: "Total de toda la obra",
    general: "toda la obra",
    branch: (label) => `ramal en ${label}`,
    steps: "El cálculo, paso a paso",
    stepsOf: (total) => `Total de toda la obra: ${total}.`,
    stepsMissing:
      "Aquí no se muestran los pasos porque los hechos han cambiado desde que se fijaron los montos.",
    carried: (amount) =>
      `De esto, ${amount} cubre una conexión cuyo propietario aún no se conoce. Si se encuentra al propietario, esa parte debe volver a usted.`,
    odd: "Los montos se redondean al centavo. Un centavo que sobra va a las partes que más se redondearon hacia abajo.",
    others: "Quién más comparte",
    othersLine: (places) =>
      `Los propietarios de ${places}, con la misma regla. Cada uno recibe una carta solo con su propia parte.`,
    noOthers: "No se conoce otra dirección que comparta.",
    excluded: "Qué no está incluido",
    excludedAuthority: (where) =>
      `La tubería de ${where} desde la tubería principal, de la que es responsable la autoridad del alcantarillado.`,
    excludedUnclear: (where) =>
      `Una decisión sobre la tubería de ${where} desde la tubería principal, donde no está claro quién es responsable.`,
    excludedUnknown: (labels) =>
      `Una parte para las conexiones cuyo propietario aún no se conoce (${labels}); vea la nota junto a su parte.`,
    excludedHidden:
      "Lo que se descubra cuando el suelo esté abierto. Le preguntaremos por escrito antes de cualquier trabajo extra que cambie su parte, salvo por seguridad.",
    excludedCause: "La cuestión de quién o qué causó la falla. Eso es aparte de este reparto.",
    alternatives: "Su parte con otras reglas",
    alternativesHead: ["Regla", "Su parte sería"],
    payment: "Cómo pagaría usted",
    payDays: (days) => `Con factura, a ${days} días de la fecha de la factura.`,
    deposit: (percent) =>
      percent === 0
        ? "No se requiere depósito."
        : `Antes de empezar la obra se paga un depósito del ${percent}% de la parte.`,
    ifNo: "Esta carta no hace exigible ningún pago. Si no está de acuerdo, escriba sus razones en el talón de respuesta.",
    choices: (amount) => [
      `Estoy de acuerdo con la parte propuesta de ${amount}.`,
      "No estoy de acuerdo; abajo están mis razones.",
      "Tengo una pregunta; llámeme, por favor.",
      "Tengo un documento o un acuerdo sobre esta tubería.",
    ],
  },

  entry: {
    opening: (place) =>
      `Hay que reparar la tubería de desagüe compartida. Para hacerlo necesitamos el permiso del propietario para entrar en ${place} y, donde esté marcado, excavar allí.`,
    area: "Dónde",
    areaCross: (where, easement) =>
      `La tubería cruza el terreno de ${where} desde la tubería principal de la ciudad. Servidumbre: ${easement}.`,
    easement: { recorded: "registrada", none: "no se encontró", unknown: "no se sabe" },
    recordedAs: (number) => `registrada con el número ${number}`,
    areaWork: (title, where) => `${title}, ${where}`,
    areaDig: (size, place) => `Planeamos excavar en un área de unos ${size}: ${place}.`,
    areaEnter: (place) => `Solo entraremos a inspeccionar y medir: ${place}.`,
    areaSize: (length, width) => `${length} por ${width}`,
    areaUnset: "tamaño por fijar",
    placeUnset: "lugar por fijar",
    areaNone: "por fijar",
    when: "Cuándo",
    whenOver: (first, last) => `Del ${first} al ${last}`,
    whenFrom: (day) => `Desde el ${day}.`,
    whenOpen: "Los días aún no están fijados.",
    terms: "En estas condiciones",
    contact: (name, phone) =>
      `A quién llamar ese día: ${[name, phone].filter((part) => part !== "").join(", ")}.`,
    larger: "Si el área debe ser más grande, le preguntaremos primero.",
    restoration: {
      "not-set": "",
      "nothing-dug": "",
      backfill: "Rellenamos y compactamos el suelo.",
      seed: "Rellenamos, compactamos y volvemos a sembrar el césped.",
      sod: "Rellenamos y compactamos el suelo y ponemos césped en rollo.",
      gravel: "Rellenamos y compactamos el suelo y reponemos la grava.",
      asphalt: "Rellenamos y compactamos el suelo y parchamos el asfalto.",
      concrete: "Rellenamos y compactamos el suelo y parchamos el concreto.",
      "by-owner": "Rellenamos y compactamos el suelo; usted repone la superficie.",
    },
    mayDiffer: "El césped nuevo, las plantas y los parches pueden no verse iguales.",
    noPlantings: "En el área no hay árboles ni plantas.",
    plantingsUnset: "sin definir",
    plantings: {
      stay: (plants) =>
        `Los árboles y las plantas se quedan como están${plants === "" ? "" : `: ${plants}`}.`,
      replanted: (plants) => `Sacamos y volvemos a plantar: ${plants}.`,
      removed: (plants) => `Sacamos y no volvemos a plantar: ${plants}.`,
    },
    notRestored: (what) => `No reponemos: ${what}.`,
    insured: (insurance, until) =>
      `Tenemos seguro de responsabilidad civil («${insurance}»), vigente hasta el ${until}. El certificado se muestra si lo pide.`,
    termLines: [
      "Usted puede retirar este permiso por escrito en cualquier momento antes de que empiece la obra en su terreno. Una vez abierto el suelo, primero lo dejaremos seguro.",
    ],
    tenant:
      "Si tiene inquilinos, también les avisaremos; avisarles de la entrada sigue siendo responsabilidad suya.",
    choices: [
      "Permito entrar para inspeccionar y medir.",
      "Permito excavar en el área arriba indicada, en estas condiciones.",
      "No lo permito; abajo están mis razones.",
      "Llámeme primero, por favor.",
    ],
  },

  agreement: {
    opening:
      "Esta carta trata de un acuerdo escrito entre los propietarios que comparten esta tubería de desagüe: quién puede usarla, quién la mantiene, cómo se reparten los costos y quién puede entrar para repararla. Para inscribirlo en el registro de la propiedad del condado, todos los propietarios lo firman ante un notary public (funcionario que certifica firmas).",
    parties: "Propiedades que abarca",
    steps: "Cómo funciona",
    stepLines: (authority) => [
      `Primero se envía un borrador a ${authority}, si quiere verlo, en su formulario si lo tiene.`,
      "Firma cada titular de la propiedad, incluidos cónyuges, fiduciarios y compradores bajo contrato.",
      "Un clic o un correo no bastan para firmar un documento que se inscribe en el registro.",
      "Si un banco tiene una hipoteca o escritura de fideicomiso, pregunte si debe dar su consentimiento.",
      "El número de registro va en la solicitud de permiso.",
    ],
    authority: "la autoridad del alcantarillado",
    existing: (title, number) =>
      `Ya en nuestros archivos: «${title}»${number === "" ? "" : `, registrado con el número ${number}`}.`,
    choices: [
      "Firmaré; envíeme, por favor, el borrador.",
      "Tengo preguntas; llámeme, por favor.",
      "Hay otras personas en el título, nombradas abajo.",
      "No quiero firmar; abajo están mis razones.",
    ],
  },

  start: {
    opening: (pipe) => `La obra es en ${pipe}.`,
    day: "Primer día de obra",
    end: "Cuánto dura",
    until: (day) => `hasta el ${day}`,
    hours: "Horas",
    contractor: "Contratista",
    permits: "Permisos",
    permit: (number) => `núm. ${number}`,
    tickets: "Avisos de localización",
    inspections: "Inspecciones",
    inspection: (title, moment) => `${title}, ${moment}`,
    none: "ninguno vigente todavía",
    work: "Obra por hacer",
    expect: "Qué esperar",
    expects: [
      "Ruido y vehículos durante las horas de trabajo. Díganos si necesita acceso para un vehículo.",
      "Por favor, mantenga los autos lejos de las barreras y los letreros.",
    ],
    choices: [
      "He leído esta carta.",
      "Alguien aquí necesita la entrada libre; llámeme, por favor.",
    ],
  },

  ...NOTICE_ES,
  statutory: STATUTORY_ES,

  pause: {
    opening:
      "La tubería compartida estará abierta, y las aguas de su edificio pasan, o pueden pasar, por donde hay personas trabajando.",
    from: "No use los desagües el",
    hours: "De qué hora a qué hora",
    openHours: "horas por fijar: llámenos antes de guiarse por este aviso",
    counts: "Eso quiere decir",
    countLines: [
      "no descargue inodoros ni use lavabos, duchas o tinas;",
      "no ponga la lavadora ni el lavaplatos (revise los temporizadores);",
      "no haga funcionar bombas ni ablandadores que vacíen en un desagüe.",
    ],
    help: "Si no puede estar sin agua (enfermedad, niños pequeños, guardería, un negocio), llámenos ahora, antes de ese día.",
    over: "Espere nuestro aviso antes de volver a usar los desagües, aunque ya haya pasado la hora. Si no sabe nada, llámenos.",
    choices: [
      "Todos en esta dirección lo saben y no usarán ningún desagüe durante ese tiempo.",
      "Necesitamos ayuda durante ese tiempo; llámenos, por favor.",
    ],
  },

  spill: {
    reportTitle: "Informe de un derrame de aguas negras",
    happened: "Qué pasó",
    known: (moment) => `Se notó por primera vez el ${moment}.`,
    called: (office, moment) => `Se llamó a ${office} el ${moment}.`,
    onSite: (moment) => `Nuestra cuadrilla llegó el ${moment}.`,
    stopped: (moment) => `El flujo se detuvo el ${moment}.`,
    notStopped: "Aún no consta en nuestros archivos que el flujo se haya detenido.",
    notReported: "Aún no consta en nuestros archivos que se haya avisado a una autoridad.",
    reported: (to, moment, number) =>
      `Lo informamos a ${to} el ${moment}${number === "" ? "" : ` (núm. ${number})`}.`,
    cleaned: (moment) => `El lugar se limpió el ${moment}.`,
    volume: (gallons) =>
      gallons === null ? "Volumen: no se sabe." : `Volumen estimado: unos ${gallons} galones.`,
    reached: (what) => (what === "" ? "Adónde llegó: no se sabe." : `Llegó a: ${what}.`),
    opening: (where) => `Hubo un derrame de aguas negras en o cerca de ${where}.`,
    do: "Qué hacer",
    doLines: [
      "Manténgase lejos, y mantenga lejos a niños y animales.",
      "Use el agua lo menos posible hasta que le avisemos que la línea vuelve a fluir.",
      "No arrastre el derrame con agua hacia el desagüe de la calle ni hacia una zanja.",
      "Tire los alimentos que hayan tocado el derrame. Lávese las manos con jabón después de cualquier contacto.",
      "Si se siente mal después de un contacto, llame a un médico y diga lo que pasó.",
    ],
    choices: ["He leído esta carta.", "He tenido contacto o daños; llámeme, por favor."],
  },

  demand: {
    opening: (place) =>
      `Esta es la parte de ${place} en el costo de la obra en el desagüe compartido.`,
    basis: "En qué se basa",
    agreed: (day, amount) =>
      `En nuestros archivos está su consentimiento del ${day} para pagar ${amount}.`,
    notAgreed:
      "No tenemos en nuestros archivos un consentimiento suyo a este monto. Si no está de acuerdo, escríbanos.",
    version: (number, day) => `Reparto núm. ${number}, elegido el ${day}.`,
    tieIn: (label, reason) => `Conexión ${label}: ${reason}.`,
    reasonAccepted: "aceptada por escrito por su propietario",
    reasonRecord: "en el expediente de permisos, y encontrada allí por la cámara",
    reasonTested: "mostrada por pruebas repetidas o por excavación",
    reasonRuled:
      "aceptada por escrito por la autoridad, aunque no está en el expediente de permisos",
    due: "Pague, por favor, a más tardar el",
    dueOpen: "La fecha de pago aún no está fijada.",
    payTo: (payee, methods) =>
      `Pague a ${payee}${methods === "" ? "" : `, con ${methods}`}. Escriba en el pago la referencia de esta carta.`,
    method: {
      check: "cheque",
      card: "tarjeta",
      "bank-transfer": "transferencia bancaria",
      cash: "efectivo",
      other: "otro medio",
    },
    or: "o",
    dispute: (day) =>
      `Si no está de acuerdo con el cobro, escríbanos a más tardar el ${day}: con qué monto y por qué. No responder no cuenta como aceptar.`,
    disputeOpen:
      "Si no está de acuerdo con el cobro, escríbanos: con qué monto y por qué. No responder no cuenta como aceptar.",
    enclosed: "Se adjunta",
    enclosedLines: [
      "el cálculo de su parte, paso a paso (abajo)",
      "el dibujo de la tubería (abajo)",
      "si lo pide: el video, los informes de las pruebas y los documentos del permiso",
    ],
    choices: (amount) => [
      `Pagaré ${amount}.`,
      "Quiero pagar a plazos; llámeme, por favor.",
      "No estoy de acuerdo; abajo están mis razones.",
    ],
  },

  response: {
    opening: (name) => `Escribimos como contratista del desagüe privado compartido «${name}».`,
    order: (day, note) => `Su orden del ${day}${note === "" ? "" : `: ${note}`}`,
    corrections: (day, note) => `Sus correcciones del ${day}${note === "" ? "" : `: ${note}`}`,
    noOrder: "No tenemos en nuestros archivos ninguna orden ni corrección de ustedes.",
    about: "En respuesta a",
    state: "Estado actual",
    connections: (total, undocumented) =>
      `${count(total, "conexión", "conexiones")} en la línea; ${undocumented === 0 ? "ninguna sin documentar" : `${undocumented} sin expediente de permiso`}.`,
    owners: (properties) =>
      `${count(properties, "propiedad está", "propiedades están")} en nuestra lista de la línea.`,
    permits: (list) => `Permisos: ${list}.`,
    noPermit: "Permisos: ninguno todavía.",
    holds: (open) =>
      open === 0
        ? "Nada de nuestra parte detiene la obra."
        : `De nuestro lado, ${count(open, "punto abierto detiene", "puntos abiertos detienen")} parte de la obra; vea el paquete del permiso.`,
    plan: "Obra planeada",
    dates: "Fechas",
    start: (day) => `Se planea empezar la obra el ${day}.`,
    begun: (day) => `La obra debía empezar el ${day}.`,
    noStart: "Aún no hay día fijado para la obra.",
    choices: [],
  },

  done: {
    opening: (pipe) =>
      `La obra en ${pipe} ha terminado. Guarde, por favor, esta carta con los documentos de su propiedad.`,
    openingDug: (pipe) =>
      `La obra en ${pipe} fue inspeccionada; su permiso todavía no tiene la aprobación final. Guarde, por favor, esta carta con los documentos de su propiedad.`,
    openingOpen: (pipe) =>
      `Estos son los documentos de ${pipe} al día de hoy; su permiso todavía no tiene la aprobación final.`,
    openingNoPermit: (pipe) =>
      `Estos son los documentos de ${pipe} al día de hoy; no hay ningún permiso de obra en nuestros archivos.`,
    planned: "La obra según lo planeado",
    whole: "Toda la obra",
    built: (what, day, said) => `${what}; se hizo el ${day}${said === "" ? "" : `: «${said}»`}`,
    measured: "Lo construido, medido en pies desde la tubería principal",
    measuredHead: ["Obra", "Dónde", "Largo", "Tubería", "Medido"],
    piece: {
      replaced: "Reemplazo",
      lined: "Revestimiento",
      burst: "Reemplazo por fragmentación",
      repaired: "Reparación",
      reconnected: "Reconexión",
      capped: "Cierre con tapón",
      cleanout: "Registro de limpieza nuevo",
      other: "Otro trabajo",
    },
    account: (settled, open) =>
      open === "$0.00"
        ? `Pagado o abonado: ${settled}; pagado por completo.`
        : `Pagado o abonado: ${settled}; saldo pendiente: ${open}.`,
    invoiced: (place) => `Facturado a ${place}`,
    asBuilt: (day) => `Plano de lo construido, entregado a la autoridad el ${day}`,
    work: "Qué se hizo",
    cost: "Costo final",
    total: (amount) => `Costo total: ${amount}.`,
    share: (place) => `Parte de ${place}`,
    papers: "Documentos para guardar",
    recorded: (title, number) => `${title}, registrado con el número ${number}`,
    unrecorded: (title) => `${title}, sin registrar`,
    noAgreement: "No tenemos en nuestros archivos un acuerdo registrado sobre esta tubería.",
    permit: (number, state) =>
      number === ""
        ? `Permiso sin número en nuestros archivos: ${state}`
        : `Permiso ${number}: ${state}`,
    final: "con aprobación final",
    open: "todavía sin aprobación final",
    inspection: (title, day) => `Inspección ${title}, aprobada el ${day}`,
    pipe: (wide, material) =>
      wide === "" ? material : `${material === "" ? "" : `${material}, `}${wide}`,
    next: "Quién es responsable de la tubería, según la regla o el acuerdo en nuestros archivos",
    nextLine: (where, who) => `De ${where} desde la tubería principal: ${who}`,
    nextUnknown: "No se ha determinado.",
    warranty: "Garantía",
    warrantyNone: "No hay en nuestros archivos una garantía aparte.",
    warrantyLine: (months, from, covers) =>
      `${count(months, "mes", "meses")}${from === "" ? "" : ` desde el ${from}`}${covers === "" ? "" : `, sobre: ${covers}`}.`,
    choices: [],
  },
};
