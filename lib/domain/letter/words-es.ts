import type { Cft } from "../line/station.ts";
import { plainFeet } from "../line/station.ts";
import { letterDay, letterWeekday } from "./letter-day.ts";
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

/** Every standing word of a letter in Spanish, as it is written to neighbours in the United States. */
export const ES: LetterWords = {
  day: (day) => letterDay(day, "es"),
  weekday: (day) => letterWeekday(day, "es"),
  feet,
  stretch,
  list: (names) => {
    const last = names.at(-1) ?? "";
    if (names.length < 2) return last;
    const and = /^(i|hi(?!e))/i.test(last) ? "e" : "y";
    return `${names.slice(0, -1).join(", ")} ${and} ${last}`;
  },
  unknown: "no se sabe",
  notSet: "aún sin fijar; le avisaremos",
  inches: (inches) => `${inches} pulg.`,

  frame: {
    date: "Fecha",
    reference: "Referencia",
    answerBy: "Responda a más tardar el",
    greeting: (name) => `A la atención de ${name}:`,
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
    slipSignature: "Firma",
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
    "close-out": "La obra en el desagüe compartido ha terminado",
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
    left: "por la izquierda, mirando aguas arriba",
    right: "por la derecha, mirando aguas arriba",
    crown: "por arriba",
    unknown: "no se sabe de qué lado",
  },
  sideShort: {
    left: "izquierda",
    right: "derecha",
    crown: "arriba",
    unknown: "no se sabe",
  },
  standing: {
    "on-record-and-seen": "en el registro y vista",
    "on-record-seen-elsewhere": "en el registro, vista en otro lugar",
    "on-record-not-seen": "en el registro, no vista",
    "on-record-not-inspected": "en el registro; la cámara no llegó",
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
      title: "Quien responde por cada tramo",
      sentence:
        "Cada tramo lo pagan los propietarios que responden por él según la regla arriba citada.",
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
      "La tubería según lo visto: la red pública está a la izquierda y las distancias aumentan aguas arriba.",
    one: "Dónde se une a la tubería compartida la conexión en cuestión.",
    yours: "La tubería compartida. La franja muestra por dónde pasan las aguas de su propiedad.",
    work: "Dónde se hará la obra.",
    lot: "Dónde cruza la tubería su terreno y dónde se hará la obra.",
    done: "La tubería después de la obra.",
    title: "Dibujo en franja de la tubería compartida",
    main: "Red pública",
    upperEnd: "Extremo superior",
    you: "su conexión",
    notKnown: "dueño aún no conocido",
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
      cleanout: "Registro de limpieza",
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
      title: "Hasta dónde puede fiarse de esto",
      text: (day) =>
        `Basado en registros y cámara al ${day}. No se garantiza que los registros públicos sean exactos, y lo que hay en el terreno puede ser distinto.`,
    },
    proposal: {
      title: "Una propuesta, no una resolución",
      text: "Esto es una propuesta de reparto del costo. No es una determinación legal ni asesoría legal. Usted puede pedir su propio consejo antes de responder.",
    },
    drains: {
      title: "No use agua ni inodoros durante el tiempo indicado",
      text: "Las aguas negras pueden subir en su propio edificio y pueden inundar a quienes trabajan en la tubería abierta.",
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
      title: "No cierre nada todavía",
      text: "Por favor, no tape, no selle ni revista ningún ramal de esta tubería. Mientras no se pruebe que un ramal está fuera de uso, las aguas de alguien pueden depender de él.",
    },
    dye: {
      title: "Sobre el tinte",
      text: "El tinte es del tipo inofensivo que se fabrica para desagües. Puede verse algo de color en su inodoro o lavabo por poco tiempo. Una prueba sin color demuestra poco; puede repetirse.",
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
      text: "Esta carta da hechos y cantidades tal como la oficina los tiene. No es una determinación legal ni asesoría legal. Usted puede pedir su propio consejo.",
    },
  },

  picture: {
    caption: (label, where, day) => `${label}, ${where}, como lo vio la cámara el ${day}`,
    alt: (caption) => `Imagen del interior de la tubería: ${caption}`,
  },

  finding: {
    opening: (office, days, place) =>
      `Somos ${office}, contratista de drenaje y alcantarillado. El ${days} nuestra cámara recorrió una tubería de desagüe privada que tiene que ver con ${place}. Esta carta dice qué se vio y qué aún no se sabe. No pide dinero.`,
    openingNoRun: (office, place) =>
      `Somos ${office}, contratista de drenaje y alcantarillado. Estamos reuniendo los hechos sobre una tubería de desagüe privada que tiene que ver con ${place}. La cámara todavía no la ha recorrido. Esta carta no pide dinero.`,
    connected: (place, where) =>
      `${place} desagua en esta tubería a ${where}, hasta donde hoy se sabe.`,
    candidate: (place) => `${place} está junto a esta tubería. Aún no se sabe si desagua en ella.`,
    crossed: (place) =>
      `La tubería cruza el terreno de ${place}. Nada de lo visto hasta ahora indica que el edificio la use.`,
    neighbour: (place) => `${place} está cerca de esta tubería.`,
    seen: "Qué se vio, cuándo y quién lo vio",
    runHead: ["Día", "Quién", "La cámara entró por", "Su contador"],
    runOpen: "hasta el final del recorrido",
    noRun: "No hay ningún recorrido de cámara en el expediente.",
    tieInHead: ["Marca", "Distancia", "Lado", "Dirección", "Registro de permisos y cámara"],
    faults: "En el camino, la cámara vio:",
    noFaults: "No hay fallas de la tubería en el informe.",
    faultLine: (fault, where) => `${where}: ${fault}`,
    relative: "en un lugar aún no medido desde la red",
    stations: "Las distancias son pies a lo largo de la tubería, contados desde la red pública.",
    notKnown: "Qué aún no se sabe",
    undocumented: (labels, many) =>
      many === 1
        ? `De quién es la conexión ${labels}: se vio, pero no se halló permiso de ella.`
        : `De quién son las conexiones ${labels}: se vieron, pero no se halló permiso de ellas.`,
    notSeen: (labels) =>
      `Dónde están estas conexiones del registro, que la cámara no vio: ${labels}.`,
    notInspected: (labels) =>
      `Si existen estas conexiones del registro; la cámara no llegó o no pudo ver: ${labels}.`,
    undecided:
      "Algunas comparaciones entre registro y cámara son propuestas que nadie ha confirmado todavía.",
    gap: (where, why) => `Cómo está la tubería de ${where}: ${why}.`,
    unclear: (where) => `Quién responde por la tubería de ${where}.`,
    noBoundary: "Aún no se ha determinado quién responde por cada tramo.",
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
      `Nuestra cámara vio un ramal que se une a la tubería de desagüe compartida a ${station}, ${side}. No hallamos permiso de él.`,
    openingUnplaced:
      "Nuestra cámara vio un ramal que se une a la tubería de desagüe compartida en un lugar aún no medido desde la red. No hallamos permiso de él.",
    why: (place) =>
      `Le preguntamos porque ${place} es una de las direcciones adonde, por su posición, podría llevar el ramal. Los dueños y ocupantes de cada una reciben esta misma pregunta. No decimos que el ramal sea suyo.`,
    whyMatters:
      "Importa porque un ramal no debe cerrarse ni cubrirse con revestimiento mientras puedan pasar por él las aguas de alguien, y porque a nadie se le debe pedir que pague por una tubería que no es suya.",
    facts: "Qué se sabe del ramal",
    factHead: ["", "Según lo visto"],
    station: "Distancia",
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
      "Díganos lo que sepa sobre adónde van los desagües de su edificio.",
      "Envíenos cualquier permiso, plano o factura que lo muestre.",
      "Permita una prueba con tinte: dos personas, unas dos horas, sin costo para usted.",
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
    head: ["", ""],
    day: "Día",
    hours: "Horas",
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
      "Si usted da en alquiler: debe avisar a tiempo de la entrada a quienes viven allí. Esta carta no reemplaza ese aviso.",
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
    enclosed: "Adjunto: el estado de su parte, con cada paso de la cuenta.",
    amount: (place) => `Parte de ${place}`,
    noShare: (place) => `Con esta regla no le toca ninguna parte a ${place}.`,
    rule: "La regla usada y por qué",
    ruleLine: (title, sentence) => `${title}. ${sentence}`,
    reason: (reason) => `Por qué esta regla: ${reason}`,
    answers: "Quién responde por cada tramo",
    answersHead: ["Tramo", "Quién responde", "Dónde está escrito"],
    nothingWritten: "no se halló regla",
    work: "La obra",
    workHead: ["Obra", "Dónde", "Precio", "Cantidad"],
    markup: (percent) => ` + ${percent} de recargo`,
    tax: (percent) => ` + ${percent} de impuesto`,
    total: "Total de toda la obra",
    general: "toda la obra",
    branch: (label) => `ramal en ${label}`,
    steps: "La cuenta, paso a paso",
    stepsHead: ["Obra", "La cuenta", "Su parte"],
    stepsNote: "Las partes de centavo se escriben completas; solo se redondea la última línea.",
    stepsSum: "Juntos",
    stepsRounded: "Redondeado al centavo",
    stepSum: (amount, numerator, denominator) =>
      numerator === denominator ? amount : `${amount} × ${numerator}/${denominator}`,
    stepsMissing:
      "Aquí no se muestran los pasos porque desde que se fijaron las cantidades han cambiado hechos de la línea.",
    carried: (amount) =>
      `De esto, ${amount} cubre una conexión cuyo dueño aún no se conoce. Si se halla al dueño, esa parte debe volver a usted.`,
    odd: "Los centavos sueltos van por una regla fija, uno a cada parte que más perdió al redondear hacia abajo.",
    others: "Quién más comparte",
    othersLine: (places) =>
      `La misma regla se propone a los dueños de ${places}. Cada uno recibe una carta solo con su propia parte.`,
    noOthers: "No se conoce otra dirección que comparta.",
    excluded: "Qué no está incluido",
    excludedAuthority: (where) =>
      `La tubería de ${where}, por la que responde la autoridad del alcantarillado.`,
    excludedUnclear: (where) =>
      `Una decisión sobre la tubería de ${where}, donde no está claro quién responde.`,
    excludedUnknown: (labels) =>
      `Una parte para las conexiones cuyo dueño aún no se conoce (${labels}); vea la nota junto a su parte.`,
    excludedHidden:
      "Lo que salga a la luz cuando el suelo esté abierto. Primero se le consultaría.",
    excludedCause:
      "La cuestión de quién o qué causó la falla. Eso se mantiene aparte de este reparto.",
    alternatives: "Qué le pedirían otras reglas",
    alternativesHead: ["Regla", "Su parte sería"],
    alternativesNote: "Cada línea muestra toda su parte con esa regla.",
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
      `La tubería cruza el terreno de ${where} (distancias). Servidumbre: ${easement}.`,
    easement: { recorded: "registrada", none: "no se halló", unknown: "no se sabe" },
    recordedAs: (number) => `registrada con el número ${number}`,
    areaWork: (title, where) => `${title}, ${where}`,
    areaNone: "El lugar se muestra en el dibujo; se marcará con usted en el terreno.",
    when: "Cuándo",
    whenFrom: (day) => `Desde el ${day}. Antes le decimos las horas.`,
    whenOpen: "El día aún no está fijado. No vendremos antes de que usted lo sepa.",
    terms: "Lo que prometemos",
    termLines: (insurance) => [
      "Excavamos solo donde esté marcado y no más de lo que la obra necesita.",
      "Dejamos el suelo, las plantas, las cercas y el pavimento como estaban. Se toman fotografías antes y después.",
      `Tenemos seguro de responsabilidad${insurance === "" ? "; el certificado se muestra a quien lo pida." : ` (${insurance}).`}`,
      "Usted puede retirar este permiso por escrito en cualquier momento antes de que empiece la obra en su terreno. Una vez abierto el suelo, primero lo dejamos seguro.",
    ],
    tenant:
      "Si alguien alquila allí, también se enterará por nosotros; avisarle de la entrada le sigue correspondiendo a usted.",
    choices: [
      "Permito entrar para ver y medir.",
      "Permito excavar en el área marcada, en las condiciones de arriba.",
      "No lo permito; abajo escribo mis razones.",
      "Llámeme primero, por favor.",
    ],
  },

  agreement: {
    opening:
      "Los dueños que comparten esta tubería de desagüe necesitan un solo acuerdo escrito: quién puede usarla, quién la cuida, cómo se reparte el costo y quién puede entrar para repararla. Lo firman todos los dueños, se reconoce ante notario y se registra con los títulos de propiedad.",
    parties: "Propiedades que nombra",
    steps: "Cómo se hace",
    stepLines: (authority) => [
      `Primero se envía un borrador a ${authority}, si quiere verlo, en su propio formulario si lo tiene.`,
      "Firma cada dueño que figure en el título, también cónyuges, fiduciarios y compradores bajo contrato.",
      "Las firmas se reconocen ante notario. Un clic o un correo no bastan para un documento que se registra.",
      "El número de registro va a los papeles del permiso, y todos reciben copia.",
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
    opening: (place) =>
      `Va a empezar la obra en el desagüe compartido que tiene que ver con ${place}.`,
    day: "Primer día de obra",
    end: "Cuánto dura",
    hours: "Horas",
    hoursOpen: "se avisa en la puerta el día antes",
    contractor: "Contratista",
    phone: "Teléfono, día y noche",
    permits: "Permisos",
    permit: (number) => `n.º ${number}`,
    tickets: "Avisos de localización",
    inspections: "Inspecciones",
    none: "ninguno en el expediente",
    work: "Qué se hace",
    expect: "Qué esperar",
    expects: [
      "Ruido y vehículos en horas de trabajo. A su puerta se puede llegar a pie; díganos si necesita un auto en la puerta.",
      "Por favor, mantenga los autos lejos de las barreras y los letreros.",
      "Antes de abrir la tubería recibirá otra carta que dice cuándo no usar sus desagües.",
    ],
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
    openHours: "horas aún sin fijar: pregúntenos antes de fiarse de esta hoja",
    why: "Por qué: cada edificio de esta tubería desagua por el lugar donde trabajan personas.",
    counts: "Eso quiere decir",
    countLines: [
      "ni inodoro, ni lavabo, ni ducha, ni tina;",
      "ni lavadora, ni lavaplatos, tampoco los que tienen temporizador;",
      "ni bomba ni ablandador que vacíe en un desagüe.",
    ],
    happens:
      "Si de todos modos se usa agua: las aguas negras pueden subir en su propio edificio o en el de un vecino, y pueden inundar a las personas en la zanja.",
    help: "Si no puede estar sin agua (enfermedad, niños pequeños, guardería, un negocio), llámenos ahora. Buscaremos una solución con usted.",
    over: "Le avisamos en la puerta cuando se puedan volver a usar los desagües. Hasta que sepa de nosotros, espere, por favor.",
    choices: [
      "Todos en esta dirección lo saben y no usarán ningún desagüe en ese tiempo.",
      "Necesitamos ayuda durante ese tiempo; llámenos, por favor.",
    ],
  },

  spill: {
    opening: (where) => `Han salido aguas negras en o cerca de ${where}.`,
    do: "Qué hacer",
    doLines: [
      "Manténgase lejos, y mantenga lejos a niños y animales.",
      "Use la menor cantidad de agua posible hasta que digamos que la tubería vuelve a correr.",
      "No la lave hacia el desagüe de la calle ni hacia una zanja.",
      "Tire los alimentos que haya tocado. Lávese las manos con jabón después de cualquier contacto.",
      "Si se siente mal después de un contacto, llame a un médico y diga lo que pasó.",
    ],
    doing: "Qué se está haciendo",
    doingLines: (office) => [
      `Se llamó a ${office}, que está deteniendo el flujo.`,
      "Se avisa a la autoridad del alcantarillado y al departamento de salud donde la ley lo pide.",
    ],
    when: (day) => `Se supo por primera vez el ${day}.`,
    choices: ["He leído esta carta.", "He tenido contacto o daños; llámeme, por favor."],
  },

  demand: {
    opening: (place) =>
      `Le pedimos que pague la parte de ${place} en el costo de la obra en el desagüe compartido.`,
    basis: "En qué se basa",
    agreed: (day, amount) =>
      `En el expediente está su consentimiento del ${day} para pagar ${amount}.`,
    notAgreed:
      "En el expediente no hay consentimiento suyo a esta cantidad. Si lo ve de otra manera, escríbanos.",
    version: (number, day) => `Reparto n.º ${number}, elegido el ${day}.`,
    tieIn: (label, reason) => `Conexión ${label}: ${reason}.`,
    reasonAccepted: "aceptada por escrito por su dueño",
    reasonRecord: "en el registro de permisos, y hallada allí por la cámara",
    reasonTested: "mostrada por pruebas repetidas o por excavación",
    reasonRuled: "aceptada por escrito por la autoridad, aunque no está en el registro",
    due: "Pague, por favor, a más tardar el",
    dueOpen: "La oficina le dirá el día.",
    enclosed: "Se adjunta",
    enclosedLines: [
      "la cuenta de su parte, paso a paso (abajo)",
      "el dibujo en franja de la tubería (abajo)",
      "a pedido: el video, los informes de las pruebas y los papeles del permiso",
    ],
    choices: (amount) => [
      `Pago ${amount}.`,
      "Quiero pagar en partes; llámeme, por favor.",
      "No estoy de acuerdo; abajo escribo mis razones.",
    ],
  },

  response: {
    opening: (name) =>
      `Esta es nuestra respuesta sobre el desagüe privado compartido “${name}”, por los dueños que nos han pedido trabajar en él.`,
    order: (day, note) => `Su orden del ${day}${note === "" ? "" : `: ${note}`}`,
    corrections: (day, note) => `Sus correcciones del ${day}${note === "" ? "" : `: ${note}`}`,
    noOrder: "No tenemos en el expediente ninguna orden ni corrección de ustedes.",
    about: "A qué responde",
    state: "Cómo están las cosas",
    connections: (total, undocumented) =>
      `${count(total, "conexión", "conexiones")} en la línea; ${undocumented} sin permiso en el registro.`,
    owners: (properties) =>
      `${count(properties, "propiedad tiene", "propiedades tienen")} que ver con la línea.`,
    permits: (list) => `Permisos: ${list}.`,
    noPermit: "Permisos: ninguno todavía.",
    holds: (open) =>
      open === 0
        ? "Por nuestra parte nada detiene la solicitud."
        : `${count(open, "punto abierto detiene", "puntos abiertos detienen")} parte de la obra por nuestra parte; están en el paquete del permiso.`,
    plan: "Qué se planea",
    dates: "Fechas",
    start: (day) => `Se planea empezar la obra el ${day}.`,
    noStart: "Aún no hay día fijado para la obra.",
    choices: [],
  },

  done: {
    opening: (place) =>
      `La obra en el desagüe compartido que tiene que ver con ${place} ha terminado. Guarde, por favor, esta carta con los papeles de la propiedad.`,
    work: "Qué se hizo",
    cost: "Cuánto costó",
    total: (amount) => `Toda la obra junta: ${amount}.`,
    share: (place) => `Parte de ${place}`,
    papers: "Papeles para guardar",
    recorded: (title, number) => `${title}, registrado con el número ${number}`,
    unrecorded: (title) => `${title}, sin registrar`,
    noAgreement: "No hay en el expediente un acuerdo registrado sobre esta tubería.",
    permit: (number, state) => `Permiso ${number}: ${state}`,
    final: "final",
    open: "aún no final",
    inspection: (title, day) => `${title}, aprobada el ${day}`,
    next: "Quién cuida la tubería de ahora en adelante",
    nextLine: (where, who) => `De ${where}: ${who}`,
    nextUnknown: "No se ha determinado.",
    warranty: "Garantía",
    warrantyLine: (office) =>
      `Para la garantía de la obra, pregunte a ${office} con la referencia que encabeza esta carta.`,
    choices: [],
  },
};
