import type { ScopeKind } from "../facts/scope.ts";
import type { Cft } from "../length/station.ts";
import { plainFeet } from "../length/station.ts";
import { capital } from "../say/capital.ts";
import { letterDay, letterTime, letterWeekday } from "../time/letter-day.ts";
import type { LetterWords } from "./words-en.ts";

function feet(length: Cft): string {
  return `${plainFeet(length)} pies`;
}

function stretch(from: Cft, to: Cft): string {
  return `${plainFeet(from)} a ${plainFeet(to)} pies`;
}

function count(many: number, one: string, several: string): string {
  return `${many} ${many === 1 ? one : several}`;
}

/** Kinds of work; titles stay as the office wrote them, quoted. */
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
  dayAndNight: "Teléfono, día y noche",
  onCall: "Teléfono de guardia",
  unknown: "no se sabe",
  notSet: "aún sin fijar; le avisaremos",
  inches: (inches) => `${inches} pulg.`,
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
    closing: "Atentamente,",
    page: (page, of) => `Página ${page} de ${of}`,
    licence: (number) => `Licencia de contratista ${number}`,
    telephone: "Teléfono",
    email: "Correo electrónico",
    forOffice: (by, office) => `${by}, por ${office}`,
    slipTitle: "Su respuesta",
    slipCut:
      "Corte aquí y devuelva esta parte, o díganos lo mismo por teléfono o por correo electrónico.",
    slipBy: (day) => `Responda, por favor, a más tardar el ${day}.`,
    slipTo: "Envíe a",
    slipAbout: "Sobre",
    slipName: "Nombre",
    slipSignature: "Firma, como dueño / inquilino / por:",
    slipDate: "Fecha",
    slipPhone: "Teléfono",
    slipNote: "Qué más debemos saber",
    notToScale: "Las longitudes guardan proporción; el dibujo no está a una escala impresa.",
    drawnAs: "En palabras",
  },

  title: {
    finding: "Lo que la cámara encontró en una tubería de desagüe compartida",
    "tie-in-inquiry": "Una pregunta sobre una conexión de desagüe",
    "test-visit": "Una visita para probar adónde va cada desagüe",
    "proposed-split": "Propuesta de reparto del costo de la obra en el desagüe compartido",
    "entry-consent": "Solicitud para entrar y excavar",
    "joint-agreement": "Acuerdo sobre el desagüe compartido",
    "work-start": "Va a empezar la obra en el desagüe compartido",
    "drain-pause": "No use sus desagües",
    spill: "Derrame de aguas negras: manténgase lejos",
    "share-demand": "Solicitud de pago de su parte",
    "authority-response": "Respuesta sobre el desagüe privado compartido",
    "close-out": "Papeles de cierre del desagüe compartido",
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
    "bituminous-fibre": "fibra bituminosa",
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
    "on-record-and-seen": "en el registro y vista",
    "on-record-seen-elsewhere": "en el registro, vista en otro lugar",
    "on-record-not-seen": "en el registro, no vista",
    "on-record-not-inspected": "en el registro; la cámara no llegó",
    "on-record-place-unclear": "en el registro; no está claro en qué punto de la tubería",
    undocumented: "vista, no está en el registro",
    "accepted-by-ruling": "no está en el registro; la autoridad la aceptó",
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
      title: "Por viviendas y negocios",
      sentence: "Cada vivienda y cada negocio de la línea cuenta una vez.",
    },
    "portion-used": {
      title: "Por el tramo de tubería que usa cada uno",
      sentence:
        "El costo de cada pie de tubería se reparte por igual entre las propiedades cuyas aguas pasan por ahí.",
    },
    "upstream-of-fault": {
      title: "Quienes están aguas arriba de la falla",
      sentence: "Las propiedades cuyas aguas pasan por la falla pagan por partes iguales.",
    },
    "reach-owner": {
      title: "El responsable de cada tramo",
      sentence:
        "Cada tramo lo pagan los propietarios responsables de él según la regla aquí citada.",
    },
    weights: {
      title: "Por una medida acordada",
      sentence: "El costo se reparte en proporción a la medida anotada para cada propiedad.",
    },
    "recorded-shares": {
      title: "Por el acuerdo registrado",
      sentence: "El costo se reparte en las partes que nombra el acuerdo registrado.",
    },
    "single-payer": {
      title: "Un solo pagador",
      sentence: "Una sola propiedad paga la obra.",
    },
  },

  strip: {
    finding:
      "La tubería como la vio la cámara. La tubería principal pública está a la izquierda; los pies se cuentan desde ahí.",
    one: "Dónde se une a la tubería compartida la conexión en cuestión.",
    yours: "La tubería compartida. La franja muestra por dónde pasan las aguas de su propiedad.",
    work: "Dónde se hará la obra.",
    lot: "Dónde cruza la tubería su terreno y dónde se hará la obra.",
    done: "La tubería como la vio la cámara antes de la obra, con la obra marcada.",
    title: "Dibujo en franja de la tubería compartida",
    main: "Tubería principal pública (colector)",
    upperEnd: "Extremo superior",
    you: "su conexión",
    notKnown: "dueño aún no conocido",
    nobody: "ningún edificio",
    onRecord: (label) => `Registro: ${label}`,
    noRecord: "sin registro",
    asked: "por la que se pregunta",
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
      curb: "Bordillo",
      "property-line": "Lindero",
      cleanout: "Boca de limpieza (cleanout)",
      foundation: "Cimientos",
      manhole: "Pozo de visita",
      "easement-edge": "Borde de la servidumbre",
    },
    at: (label, station) => `${label} a ${feet(station)}.`,
    over: (label, from, to) => `${label} de ${stretch(from, to)}.`,
    tieIn: (label, station, who) => `${label} se une a ${feet(station)}: ${who}.`,
  },

  caution: {
    records: {
      title: "Hasta dónde es confiable esto",
      text: (day) =>
        `Basado en registros y cámara al ${day}. No se garantiza que los registros públicos sean exactos, y lo que hay en el terreno puede ser distinto.`,
    },
    proposal: {
      title: "Una propuesta, no una resolución",
      text: "Esto es una propuesta de reparto del costo. No es una determinación legal ni asesoría legal. No admite nada ni renuncia a ningún derecho, ni suyo ni nuestro. Usted puede consultar a su propio abogado o asesor antes de responder.",
    },
    drains: {
      title: "No use agua ni inodoros durante el tiempo indicado",
      text: "Las aguas negras pueden subir en su propio edificio y pueden correr a la zanja abierta donde trabajan personas.",
    },
    gas: {
      title: "Una tubería de gas puede atravesar un desagüe",
      text: "No limpie esta línea con herramientas de corte. Si huele a gas, salga primero del edificio, no toque allí ningún interruptor ni teléfono; después llame al 911 y a la compañía de gas.",
    },
    gasSeen: {
      title: "Algo atraviesa esta tubería",
      text: "La cámara vio, o no pudo descartar, algo que atraviesa la tubería. Nadie debe limpiarla hasta haber preguntado a la compañía de gas.",
    },
    sewage: {
      title: "Las aguas negras transmiten enfermedades",
      text: "Mantenga a niños y animales lejos de las aguas negras y del suelo mojado sobre la tubería. Lávese las manos después de cualquier contacto.",
    },
    cap: {
      title: "Por favor, no tape ni selle todavía ningún desagüe",
      text: "Por favor, no tape, no selle ni revista ningún ramal de esta tubería. Mientras no se pruebe que un ramal está fuera de uso, las aguas de alguien pueden depender de él.",
    },
    dye: {
      title: "Sobre el tinte",
      text: "El tinte no es tóxico y se fabrica para desagües. Puede verse algo de color en su inodoro o lavabo por poco tiempo. Puede manchar una superficie clara; enjuáguela. Una prueba sin color demuestra poco; puede repetirse.",
    },
    smoke: {
      title: "Si se usa humo",
      text: "Antes, eche agua en cada desagüe de piso y en cada lavabo sin uso. Avísenos enseguida si alguien allí tiene asma u otra enfermedad de los pulmones: entonces no se usa humo. Si ve humo adentro, abra las ventanas y salga.",
    },
    trench: {
      title: "Zanja abierta",
      text: "Quédese fuera de las barreras y mantenga lejos a niños y animales, también cuando nadie trabaja. Las paredes de una zanja pueden caer sin aviso.",
    },
    enterOnly: {
      title: "Lo que este permiso no es",
      text: "Permitirnos entrar o excavar no es un acuerdo de pago ni una declaración sobre de quién es la tubería. Esta carta no es asesoría legal.",
    },
    official: {
      title: "No es asesoría legal",
      text: "Esta carta presenta los hechos y montos tal como la oficina los tiene. No es una determinación legal ni asesoría legal. No admite nada ni renuncia a ningún derecho, ni suyo ni nuestro. Usted puede consultar a su propio abogado o asesor.",
    },
  },

  picture: {
    caption: (label, where, day) => `${label}, ${where}, como lo vio la cámara el ${day}`,
    alt: (caption) => `Imagen del interior de la tubería: ${caption}`,
  },

  finding: {
    opening: (office, days, pipe) =>
      `Somos ${office}, contratista de drenaje y alcantarillado. ${capital(days)} nuestra cámara recorrió ${pipe}. Esta carta dice qué se vio y qué aún no se sabe. No acusa a nadie ni pide dinero.`,
    openingNoRun: (office, pipe) =>
      `Somos ${office}, contratista de drenaje y alcantarillado. Estamos reuniendo los hechos sobre ${pipe}. La cámara todavía no la ha recorrido. Esta carta no acusa a nadie ni pide dinero.`,
    connected: (place, where) =>
      `${place} desagua en esta tubería en ${where}, hasta donde hoy se sabe.`,
    connectedAt: (label, where) => `${label}, a ${where}`,
    candidate: (place) => `${place} está junto a esta tubería. Aún no se sabe si desagua en ella.`,
    crossed: (place) =>
      `La tubería cruza el terreno de ${place}. Nada de lo visto hasta ahora indica que el edificio la use.`,
    neighbour: (place) => `${place} está cerca de esta tubería.`,
    seen: "Qué se vio, cuándo y quién lo vio",
    runHead: ["Día", "Quién", "La cámara entró por", "Pies en su contador"],
    runOpen: "hasta el final del recorrido",
    noRun: "No hay ningún recorrido de cámara en el expediente.",
    tieInHead: [
      "Marca",
      "Pies desde la tubería principal",
      "Lado",
      "Dirección",
      "Registro de permisos y cámara",
    ],
    explained: (standing) => `${standing}; explicado en el expediente`,
    faults: "En el camino, la cámara vio:",
    noFaults: "No hay fallas de la tubería en el informe.",
    faultLine: (fault, where) => `${where}: ${fault}`,
    relative: "en un lugar aún no medido desde la tubería principal",
    blocked: (where) => `${where}: obstruida; la cámara no pudo seguir`,
    stations:
      "Los pies se miden a lo largo de la tubería desde la tubería principal pública, la de la ciudad, en la que desemboca, sin importar hacia dónde avanzó la cámara. Los lados son mirando aguas arriba, desde la tubería principal.",
    notKnown: "Qué aún no se sabe",
    undocumented: (labels, many) =>
      many === 1
        ? `Vimos una conexión, ${labels}; no se encontró ningún permiso para ella en los registros que tenemos. No sabemos de quién es.`
        : `Vimos ${many} conexiones, ${labels}; no se encontró ningún permiso para ellas en los registros que tenemos. No sabemos de quién son.`,
    notSeen: (labels, many) =>
      many === 1
        ? `El registro muestra una conexión que la cámara no vio: ${labels}.`
        : `El registro muestra conexiones que la cámara no vio: ${labels}.`,
    notInspected: (labels, many) =>
      many === 1
        ? `El registro muestra una conexión donde la cámara no llegó o no pudo ver: ${labels}.`
        : `El registro muestra conexiones donde la cámara no llegó o no pudo ver: ${labels}.`,
    placeUnclear: (labels, many) =>
      many === 1
        ? `El registro muestra una conexión y aún no está claro en qué punto de la tubería queda: ${labels}.`
        : `El registro muestra conexiones y aún no está claro en qué punto de la tubería quedan: ${labels}.`,
    undecided:
      "Algunas coincidencias entre el registro y el video son nuestra mejor estimación. Todavía hay que confirmarlas.",
    gap: (where, why) => `No sabemos cómo está la tubería de ${where}: ${why}.`,
    unclear: (where) => `No está claro quién es responsable de la tubería de ${where}.`,
    noBoundary: "Aún no se ha determinado quién es responsable de cada tramo.",
    settled: "Hoy no hay puntos abiertos en el expediente. Hechos nuevos pueden abrir alguno.",
    ask: "Qué le pedimos",
    asks: [
      "Vea el video con nosotros; llame o escriba y se lo mostramos.",
      "Envíenos cualquier papel sobre el desagüe: permisos, planos, acuerdos, facturas de obras anteriores.",
      "Díganos si otra persona es dueña o vive en esta dirección, para que también se entere.",
    ],
    choices: [
      "He leído esta carta.",
      "Quiero ver el video.",
      "Tengo papeles sobre esta tubería.",
      "Veo algo de otra manera; llámeme, por favor.",
    ],
  },

  inquiry: {
    opening: (station, side) =>
      `Nuestra cámara vio un ramal, a ${station} de la tubería de la ciudad, que se une a la tubería de desagüe compartida, ${side}. No aparece en ningún registro de permisos que tengamos.`,
    openingUnplaced:
      "Nuestra cámara vio un ramal que se une a la tubería de desagüe compartida en un lugar aún no medido desde la tubería principal. No aparece en ningún registro de permisos que tengamos.",
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
      `un registro de permisos muestra una conexión de ${place} que la cámara no encontró`,
    groundCrossed: (place) => `la tubería cruza allí el terreno de ${place}`,
    groundPlace: (place) => `se une a la tubería cerca de ${place}`,
    groundUnknown: (place) => `aún no sabemos adónde van los desagües de ${place}`,
    whyMatters:
      "Importa porque un ramal no debe cerrarse ni cubrirse con revestimiento mientras puedan pasar por él las aguas de alguien.",
    facts: "Qué se sabe del ramal",
    factHead: ["", "Según lo visto"],
    station: "Pies desde la tubería principal",
    side: "Lado",
    size: "Diámetro",
    material: "Material",
    evidence: "Pruebas hasta ahora",
    level: [
      "ninguna",
      "solo la posición",
      "un indicio en un registro",
      "un rastreo que señala una parcela",
      "una prueba, vista una vez",
      "una prueba repetida con una dirección de control",
      "excavada, o aceptada por escrito",
    ],
    ask: "Qué le pedimos",
    asks: [
      "Díganos lo que sepa sobre adónde van los desagües de su edificio. Piense en un desagüe de patio, una bajante del techo, una bomba de sumidero, y un baño, una lavandería o un desagüe de piso en el sótano.",
      "Díganos qué se agregó o cambió: cuándo, y qué plomero lo hizo.",
      "Envíenos cualquier permiso, plano o factura que lo muestre.",
      "Permita una prueba con tinte. Le avisamos antes qué día y a qué hora. Dejarnos entrar no es un acuerdo de pago.",
    ],
    choices: [
      "Creo que el ramal sirve a mi edificio.",
      "Creo que no; mis desagües van por otro lado.",
      "No lo sé.",
      "Pueden venir a probar. Abajo escribo los días y horas que me convienen.",
      "Tengo papeles sobre eso.",
    ],
  },

  visit: {
    opening: (place) =>
      `Queremos averiguar adónde van los desagües de ${place}. Para eso, uno de nosotros pone un poco de tinte en un desagüe del edificio mientras otro mira la tubería con una cámara.`,
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
      `Vamos a probar con tinte qué desagües llevan a qué ramal de la tubería compartida. Nadie entra en ${place}. Pero sus aguas pasan, o pueden pasar, por el lugar que observamos y se llevarían el tinte.`,
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
    drainsIn: (drains) => `${drains}; en cada piso que haya`,
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
      "Esté allí, o que esté alguien que pueda abrir la puerta.",
      "No use nada de agua desde que empecemos hasta que digamos que terminamos, salvo que se lo pidamos.",
      "Díganos antes si el día no le conviene o si alguien allí está enfermo.",
    ],
    tenant:
      "Si usted alquila: su arrendador también debe avisarle de la entrada. Esta carta no reemplaza ese aviso.",
    owner:
      "Si usted alquila la propiedad a otros: debe avisar a tiempo de la entrada a quienes viven allí. Esta carta no reemplaza ese aviso.",
    choices: [
      "El día me conviene.",
      "El día no me conviene; abajo escribo otros días.",
      "Alguien aquí necesita cuidado especial; llámeme, por favor.",
      "No quiero una prueba; llámeme, por favor.",
    ],
  },

  split: {
    opening: (place) =>
      `Esta carta propone cómo repartir el costo de la obra en el desagüe compartido y qué parte le toca a ${place}. Usted puede comprobar cada paso con lápiz y papel. Díganos, por favor, si está de acuerdo.`,
    yourShare: "Su parte",
    enclosed: "Adjunto: el desglose de su parte, con cada paso de la cuenta.",
    amount: (place) => `Parte de ${place}`,
    noShare: (place) => `Con esta regla no le toca ninguna parte a ${place}.`,
    rule: "La regla usada y por qué",
    ruleLine: (title, sentence) => `${title}. ${sentence}`,
    reason: (reason) => `Por qué esta regla: «${reason}»`,
    answers: "Quién es responsable de cada tramo, según la regla del expediente",
    answersHead: ["Tramo", "Responsable", "Dónde está escrito"],
    nothingWritten: "no se encontró regla",
    cited: (source, day) => `${source}, al ${day}`,
    unit: (unit, many) => UNITS[unit.toLowerCase()]?.[many ? 1 : 0] ?? unit,
    work: "La obra",
    workHead: ["Obra", "Dónde", "Precio", "Monto"],
    markup: (percent) => ` + ${percent} de recargo`,
    tax: (percent) => ` + ${percent} de impuesto`,
    total: "Total de toda la obra",
    general: "toda la obra",
    branch: (label) => `ramal en ${label}`,
    steps: "La cuenta, paso a paso",
    stepsHead: ["Obra", "La cuenta", "Su parte"],
    stepsNote: "Las partes de centavo se escriben completas; solo se redondea la última línea.",
    stepsSum: "Total",
    stepsRounded: "Redondeado al centavo",
    stepSum: (amount, numerator, denominator) =>
      numerator === denominator ? amount : `${amount} × ${numerator}/${denominator}`,
    stepsMissing:
      "Aquí no se muestran los pasos porque desde que se fijaron los montos han cambiado hechos de la línea.",
    carried: (amount) =>
      `De esto, ${amount} cubre una conexión cuyo dueño aún no se conoce. Si se encuentra al dueño, esa parte debe volver a usted.`,
    odd: "Después de redondear pueden sobrar unos centavos. Se reparten de uno en uno, primero a quien más perdió al redondear.",
    others: "Quién más comparte",
    othersLine: (places) =>
      `La misma regla se propone a los dueños de ${places}. Cada uno recibe una carta solo con su propia parte.`,
    noOthers: "No se conoce otra dirección que comparta.",
    excluded: "Qué no está incluido",
    excludedAuthority: (where) =>
      `La tubería de ${where}, de la que es responsable la autoridad del alcantarillado.`,
    excludedUnclear: (where) =>
      `Una decisión sobre la tubería de ${where}, donde no está claro quién es responsable.`,
    excludedUnknown: (labels) =>
      `Una parte para las conexiones cuyo dueño aún no se conoce (${labels}); vea la nota junto a su parte.`,
    excludedHidden:
      "Lo que salga a la luz cuando el suelo esté abierto. Le preguntamos por escrito antes de hacer trabajo extra que cambie su parte, salvo que la seguridad no pueda esperar.",
    excludedCause:
      "La cuestión de quién o qué causó la falla. Eso se mantiene aparte de este reparto.",
    alternatives: "Qué le pedirían otras reglas",
    alternativesHead: ["Regla", "Su parte sería"],
    alternativesNote: "Cada línea muestra toda su parte con esa regla.",
    payment: "Cómo se pagaría",
    payDays: (days) => `Con factura, a ${days} días de la fecha de la factura.`,
    deposit: (percent) =>
      percent === 0
        ? "No se pide ningún depósito."
        : `Antes de empezar la obra se pide un depósito del ${percent}% de la parte.`,
    ifNo: "Esta carta no hace exigible ningún pago. Si no está de acuerdo, escriba sus razones en la hoja de respuesta; nada se debe por causa de esta carta.",
    choices: (amount) => [
      `Estoy de acuerdo con la parte de ${amount}, tal como se propone.`,
      "No estoy de acuerdo; abajo escribo mis razones.",
      "Tengo una pregunta; llámeme, por favor.",
      "Tengo un registro o un acuerdo sobre esta tubería.",
    ],
  },

  entry: {
    opening: (place) =>
      `Hay que reparar la tubería de desagüe compartida. Para eso necesitamos el permiso del dueño para entrar en ${place} y, donde esté marcado, excavar allí.`,
    area: "Dónde",
    areaCross: (where, easement) =>
      `La tubería cruza el terreno de ${where}, contados desde la tubería principal. Servidumbre: ${easement}.`,
    easement: { recorded: "registrada", none: "no se encontró", unknown: "no se sabe" },
    recordedAs: (number) => `registrada con el número ${number}`,
    areaWork: (title, where) => `${title}, ${where}`,
    areaDig: (size, place) => `Planeamos excavar en un área de unos ${size}: ${place}.`,
    areaEnter: (place) => `Solo entramos a ver y medir: ${place}.`,
    areaSize: (length, width) => `${length} por ${width}`,
    areaUnset: "tamaño aún sin fijar",
    placeUnset: "lugar aún sin fijar",
    areaNone: "aún sin fijar",
    when: "Cuándo",
    whenOver: (first, last) => `Del ${first} al ${last}`,
    whenFrom: (day) => `Desde el ${day}.`,
    whenOpen: "Los días aún no están fijados.",
    terms: "En estas condiciones",
    contact: (name, phone) =>
      `A quién llamar ese día: ${[name, phone].filter((part) => part !== "").join(", ")}.`,
    larger: "Si el área debe ser más grande, le preguntamos primero.",
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
    notRestored: (what) => `No reponemos: ${what}.`,
    insured: (insurance, until) =>
      `Tenemos seguro de responsabilidad civil («${insurance}»), vigente hasta el ${until}. Mostramos el certificado a quien lo pida.`,
    termLines: [
      "Usted puede retirar este permiso por escrito en cualquier momento antes de que empiece la obra en su terreno. Una vez abierto el suelo, primero lo dejamos seguro.",
    ],
    tenant:
      "Si alguien alquila allí, también se enterará por nosotros; avisarle de la entrada le sigue correspondiendo a usted.",
    choices: [
      "Permito entrar para ver y medir.",
      "Permito excavar en el área arriba indicada, en estas condiciones.",
      "No lo permito; abajo escribo mis razones.",
      "Llámeme primero, por favor.",
    ],
  },

  agreement: {
    opening:
      "Esta carta trata de un acuerdo escrito entre los dueños que comparten esta tubería de desagüe: quién puede usarla, quién la cuida, cómo se reparte el costo y quién puede entrar para repararla. Para inscribirlo en el registro de la propiedad del condado, lo firman todos los dueños y se certifica ante un notary public (funcionario que certifica firmas).",
    parties: "Propiedades que nombra",
    steps: "Cómo se hace",
    stepLines: (authority) => [
      `Primero se envía un borrador a ${authority}, si quiere verlo, en su propio formulario si lo tiene.`,
      "Firma cada dueño que figure en el título, también cónyuges, fiduciarios y compradores bajo contrato.",
      "Las firmas se certifican ante un notary public (funcionario que certifica firmas). Un clic o un correo no bastan para un documento que se registra.",
      "Si un banco tiene una hipoteca o escritura de fideicomiso, pregunte si debe dar su consentimiento.",
      "El número de registro va a los papeles del permiso.",
    ],
    authority: "la autoridad del alcantarillado",
    existing: (title, number) =>
      `Ya en el expediente: ${title}${number === "" ? "" : `, registrado con el número ${number}`}.`,
    choices: [
      "Firmaré; envíeme, por favor, el borrador.",
      "Tengo preguntas; llámeme, por favor.",
      "Hay otras personas en el título; abajo escribo sus nombres.",
      "No quiero firmar; abajo escribo mis razones.",
    ],
  },

  start: {
    opening: (pipe) => `Va a empezar la obra en ${pipe}.`,
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
    work: "Qué se hace",
    expect: "Qué esperar",
    expects: [
      "Ruido y vehículos en horas de trabajo. Díganos si necesita un auto en la puerta.",
      "Por favor, mantenga los autos lejos de las barreras y los letreros.",
    ],
    drains: "Cuándo no usar sus desagües se le dice en una carta aparte.",
    choices: [
      "He leído esta carta.",
      "Alguien aquí necesita la entrada libre; llámeme, por favor.",
    ],
  },

  pause: {
    opening: (place) =>
      `La tubería de desagüe compartida estará abierta. Durante ese tiempo no debe ir agua por ningún desagüe de ${place}.`,
    from: "No use los desagües el",
    hours: "De qué hora a qué hora",
    openHours: "horas aún sin fijar: pregúntenos antes de guiarse por esta hoja",
    why: "Por qué: las aguas de su edificio pasan, o pueden pasar, por el lugar donde trabajan personas.",
    counts: "Eso quiere decir",
    countLines: [
      "ni inodoro, ni lavabo, ni ducha, ni tina;",
      "ni lavadora, ni lavaplatos, tampoco los que tienen temporizador;",
      "ni bomba ni ablandador que vacíe en un desagüe.",
    ],
    happens:
      "Si de todos modos se usa agua: las aguas negras pueden subir en su propio edificio o en el de un vecino, y pueden correr a la zanja abierta donde trabajan personas.",
    help: "Si no puede estar sin agua (enfermedad, niños pequeños, guardería, un negocio), llámenos ahora, antes de ese día.",
    over: "Hasta que sepa por nosotros que se pueden volver a usar los desagües, espere, por favor, también después de la hora indicada. Llámenos si no sabe nada.",
    choices: [
      "Todos en esta dirección lo saben y no usarán ningún desagüe en ese tiempo.",
      "Necesitamos ayuda durante ese tiempo; llámenos, por favor.",
    ],
  },

  spill: {
    reportTitle: "Informe de un derrame de aguas negras",
    happened: "Qué pasó",
    known: (moment, place) =>
      `Se notó por primera vez el ${moment}${place === "" ? "" : `, ${place}`}.`,
    called: (office, moment) => `Se llamó a ${office} el ${moment}.`,
    onSite: (moment) => `Nuestra cuadrilla llegó el ${moment}.`,
    stopped: (moment) => `El flujo se detuvo el ${moment}.`,
    notStopped: "Aún no consta en el expediente que el flujo se haya detenido.",
    reported: (to, moment, number) =>
      `Lo informamos a ${to} el ${moment}${number === "" ? "" : ` (núm. ${number})`}.`,
    cleaned: (moment) => `El lugar se limpió el ${moment}.`,
    volume: (gallons) =>
      gallons === null ? "Volumen: no se sabe." : `Volumen estimado: unos ${gallons} galones.`,
    reached: (what) => (what === "" ? "Adónde llegó: no se sabe." : `Llegó a: ${what}.`),
    opening: (where) => `Han salido aguas negras en o cerca de ${where}.`,
    do: "Qué hacer",
    doLines: [
      "Manténgase lejos, y mantenga lejos a niños y animales.",
      "Use el agua lo menos posible hasta que le avisemos que la tubería vuelve a funcionar.",
      "No las arrastre con agua hacia el desagüe de la calle ni hacia una zanja.",
      "Tire los alimentos que hayan tenido contacto con ellas. Lávese las manos con jabón después de cualquier contacto.",
      "Si se siente mal después de un contacto, llame a un médico y diga lo que pasó.",
    ],
    choices: ["He leído esta carta.", "He tenido contacto o daños; llámeme, por favor."],
  },

  demand: {
    opening: (place) =>
      `Le pedimos que pague la parte de ${place} en el costo de la obra en el desagüe compartido.`,
    basis: "En qué se basa",
    agreed: (day, amount) =>
      `En el expediente está su consentimiento del ${day} para pagar ${amount}.`,
    notAgreed:
      "En el expediente no hay consentimiento suyo a este monto. Si lo ve de otra manera, escríbanos.",
    version: (number, day) => `Reparto núm. ${number}, elegido el ${day}.`,
    tieIn: (label, reason) => `Conexión ${label}: ${reason}.`,
    reasonAccepted: "aceptada por escrito por su dueño",
    reasonRecord: "en el registro de permisos, y encontrada allí por la cámara",
    reasonTested: "mostrada por pruebas repetidas o por excavación",
    reasonRuled: "aceptada por escrito por la autoridad, aunque no está en el registro",
    due: "Pague, por favor, a más tardar el",
    dueOpen: "El día de pago aún no está fijado.",
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
      `Si no está de acuerdo con el cobro, escríbanos a más tardar el ${day}: qué disputa y por qué.`,
    disputeOpen: "Si no está de acuerdo con el cobro, escríbanos: qué disputa y por qué.",
    enclosed: "Se adjunta",
    enclosedLines: [
      "la cuenta de su parte, paso a paso (abajo)",
      "el dibujo en franja de la tubería (abajo)",
      "a solicitud: el video, los informes de las pruebas y los papeles del permiso",
    ],
    choices: (amount) => [
      `Pago ${amount}.`,
      "Quiero pagar en partes; llámeme, por favor.",
      "No estoy de acuerdo; abajo escribo mis razones.",
    ],
  },

  response: {
    opening: (name) =>
      `Esta es nuestra respuesta sobre el desagüe privado compartido “${name}”. Escribimos como contratista.`,
    order: (day, note) => `Su orden del ${day}${note === "" ? "" : `: ${note}`}`,
    corrections: (day, note) => `Sus correcciones del ${day}${note === "" ? "" : `: ${note}`}`,
    noOrder: "No tenemos en el expediente ninguna orden ni corrección de ustedes.",
    about: "A qué responde",
    state: "Cómo están las cosas",
    connections: (total, undocumented) =>
      `${count(total, "conexión", "conexiones")} en la línea; ${undocumented} sin permiso en el registro.`,
    owners: (properties) =>
      `${count(properties, "propiedad está", "propiedades están")} en nuestra lista de la línea.`,
    permits: (list) => `Permisos: ${list}.`,
    noPermit: "Permisos: ninguno todavía.",
    holds: (open) =>
      open === 0
        ? "Ningún punto abierto de nuestro expediente detiene la obra."
        : `${count(open, "punto abierto detiene", "puntos abiertos detienen")} parte de la obra por nuestra parte; están en el paquete del permiso.`,
    plan: "Qué se planea",
    dates: "Fechas",
    start: (day) => `Se planea empezar la obra el ${day}.`,
    noStart: "Aún no hay día fijado para la obra.",
    choices: [],
  },

  done: {
    opening: (pipe) =>
      `La obra en ${pipe} ha terminado. Guarde, por favor, esta carta con los papeles de la propiedad.`,
    openingDug: (pipe) =>
      `La obra en ${pipe} fue inspeccionada; su permiso aún no es final. Guarde, por favor, esta carta con los papeles de la propiedad.`,
    openingOpen: (pipe) =>
      `Estos son los papeles sobre ${pipe} tal como están hoy; su permiso aún no es final.`,
    openingNoPermit: (pipe) =>
      `Estos son los papeles sobre ${pipe} tal como están hoy; no hay ningún permiso de obra en el expediente.`,
    planned: "La obra según lo planeado",
    whole: "Toda la obra",
    built: (what, day, said) => `${what}; se hizo el ${day}${said === "" ? "" : `: «${said}»`}`,
    account: (settled, open) =>
      `De eso, ${settled} ya se recibió o se abonó; quedan pendientes ${open}.`,
    invoiced: (place) => `Facturado a ${place}`,
    asBuilt: (day) => `Plano de lo construido, entregado a la autoridad el ${day}`,
    work: "Qué se hizo",
    cost: "Cuánto costó",
    total: (amount) => `Toda la obra junta: ${amount}.`,
    share: (place) => `Parte de ${place}`,
    papers: "Papeles para guardar",
    recorded: (title, number) => `${title}, registrado con el número ${number}`,
    unrecorded: (title) => `${title}, sin registrar`,
    noAgreement: "No hay en el expediente un acuerdo registrado sobre esta tubería.",
    permit: (number, state) =>
      number === ""
        ? `Permiso sin número en el expediente: ${state}`
        : `Permiso ${number}: ${state}`,
    final: "final",
    open: "aún no final",
    inspection: (title, day) => `${title}, aprobada el ${day}`,
    next: "Quién es responsable de la tubería, según la regla o el acuerdo del expediente",
    nextLine: (where, who) => `De ${where}: ${who}`,
    nextUnknown: "No se ha determinado.",
    warranty: "Garantía",
    warrantyNone: "No hay en el expediente una garantía aparte.",
    warrantyLine: (months, from, covers) =>
      `${count(months, "mes", "meses")}${from === "" ? "" : ` desde el ${from}`}${covers === "" ? "" : `, sobre: ${covers}`}.`,
    choices: [],
  },
};
