import type { LinkWords } from "./words-en.ts";

/** The page behind a private link in Spanish, as it is written to neighbors in the United States. */
export const ES: LinkWords = {
  language: "Español",
  otherLanguage: "In English",
  title: "Su carta",
  heading: (office) => `Una carta para usted de ${office}`,
  about: (name, place) => `Para ${name}, sobre ${place}.`,
  until: (day) => `Esta página es solo para usted y sigue aquí hasta el ${day}.`,
  jump: "En esta página",
  letter: "La carta",
  letterIn: "La carta está en el idioma en que se envió.",
  letterUnreadable: "No se puede mostrar la carta en esta página",
  letterUnreadableNote: (office) =>
    `Lo que se guardó de ella no se puede leer. Use la copia en papel o en PDF que tenga y pida otra a ${office}. Puede responder abajo; aquí no se puede firmar nada.`,
  readHere: "léala en esta página",
  openLetter: "Abrir la carta en PDF",
  letterMade: "El PDF de la carta se está preparando; vuelva a cargar esta página en un minuto.",
  share: (place) => `Parte propuesta para ${place}`,
  shareNote:
    "Es una propuesta, no una decisión legal. Puede consultar a su propio abogado o asesor antes de responder. En la carta se ve paso a paso cómo sale el monto.",
  newAmount: (amount, place) =>
    `El monto de esta carta ya no vale. Tal como están las cosas, se pedirían ${amount} a ${place}. La oficina le enviará una carta nueva con las cuentas.`,
  noNewAmount:
    "El monto de esta carta ya no vale, porque han cambiado datos de la tubería o del trabajo. La oficina le enviará una carta nueva.",
  superseded: "Hay un monto más nuevo",

  say: "Su respuesta",
  sayNote: "La oficina lo lee y le responde. Decir que está de acuerdo todavía no es una firma.",
  sayFolded: "de acuerdo o no, una pregunta, una visita",
  sayLabel: "Elija una",
  replies: {
    agrees: "Estoy de acuerdo con la carta",
    disagrees: "No estoy de acuerdo",
    asks: "Tengo una pregunta",
    "offers-a-record": "Tengo un documento o un plano de esta tubería",
    "books-a-test": "Quisiera programar una prueba o una visita",
    "wants-another-day": "El día de la carta no me conviene; quisiera otro",
    "wants-paper": "Quiero esta carta en papel",
  },
  words: "En sus palabras",
  wordsHint: "Si pide que le llamemos, escriba también su teléfono.",
  day: "Un día que le convenga",
  dayHint: "Solo para una prueba o una visita. La oficina confirma la hora.",
  dayLine: (day) => `Día que conviene: ${day}.`,
  file: "Una foto o un documento",
  fileHint: "Un PDF, JPEG o PNG de 20 MB como máximo.",
  fileStoring: (name, percent) => `Enviando ${name}, ${percent}%.`,
  fileStored: (name) => `${name} está aquí.`,
  fileDrop: "Quitarlo",
  fileBroken: "El archivo no llegó: se cortó la conexión. Elíjalo otra vez.",
  send: "Enviarlo a la oficina",
  sending: "Enviando …",
  sent: "Enviado. Su respuesta aparece más arriba, con la fecha.",
  saidTitle: "Lo que nos ha dicho hasta ahora",
  said: (day, what) => `${day}: ${what}`,
  saidOther: "Respondió por correo, por teléfono o en persona",
  saidFile: "Con un archivo.",

  sign: "Firmar en pantalla",
  signNote: "Solo si usted quiere. La firma en papel vale lo mismo; pídala abajo, sin costo.",
  signFolded: "si quiere; abra antes el PDF",
  signAs: (name) => `Firma por ${name}.`,
  agreeTo: "Lo que acepta",
  intents: {
    enter: ({ office, place }) =>
      `Permito a ${office} entrar en ${place} para inspeccionar, medir y hacer pruebas, como dice la carta.`,
    dig: ({ office, place }) =>
      `Permito a ${office} excavar en ${place} en la zona marcada, en los términos de la carta.`,
    pay: ({ place }, amount, version) =>
      `Acepto pagar ${amount} como la parte de ${place}, versión ${version} del reparto. Me obliga en cuanto hayan firmado todos a quienes se pide pagar, o en cuanto empiecen las obras; hasta entonces puedo retirarlo.`,
  },
  intentLetter: ({ reference, date }) => `La carta es la ${reference} del ${date}.`,
  intentCapacity: (name, capacity) => `Firmo por ${name} en calidad de ${capacity}.`,
  name: "Su nombre completo",
  nameHint:
    "Escribirlo aquí es su firma. Si no es el nombre de arriba, una persona de la oficina lo revisa antes de que valga.",
  nameOf: (person) => `Nombre completo de ${person}`,
  nameEach: "Cada uno escribe su propio nombre; nadie firma por el otro.",
  openFirst:
    "Antes de firmar, abra la carta en PDF. Así se ve que puede leerla y guardarla; sin eso no se acepta la firma.",
  openedFirst: "Ya ha abierto la carta en PDF.",
  officeSession: (person) =>
    `Este navegador tiene abierta una sesión de la oficina, de ${person}. Se ve lo mismo que ve quien recibe la carta; no se anota nada, y aquí no se puede responder ni firmar hasta cerrar esa sesión.`,
  capacity: "En qué calidad firma",
  capacityHint: "Por un fideicomiso, una empresa o una herencia: fiduciario, gerente, albacea.",
  draw: "Si quiere, dibuje también su firma",
  drawNote: "Con el dedo, un lápiz o el mouse. Sin dibujo basta el nombre escrito.",
  drawPlace: "Lugar para dibujar su firma",
  drawClear: "Borrar el dibujo",
  records: "He leído cómo se firma en pantalla y acepto firmar esta carta en pantalla.",
  recordsTitle: "Cómo se firma en pantalla",
  signNow: "Firmar ahora",
  signing: "Firmando …",
  signDone: "Firmado. Su copia está abajo y sigue ahí mientras exista esta página.",
  paper: "Envíenme copias en papel",
  paperDone: "Recibimos su solicitud y le enviaremos las copias por correo.",
  onPaper: "Se firma en papel",
  onPaperNote:
    "Este acuerdo se inscribe en el registro de la propiedad. Se firma en papel ante un notary public (funcionario que certifica firmas); una firma en pantalla no basta. Indique arriba cuándo y dónde le convendría.",
  cannotSign: "La firma",

  signedTitle: "Lo que ha firmado",
  signedOn: (when) => `Firmado el ${when}.`,
  standing: {
    current: "Válido.",
    "superseded-amount":
      "Firmado sobre un monto reemplazado: hay un monto más nuevo, y esta firma no lo cubre.",
    withdrawn: "Usted lo ha retirado.",
    refused: "Después ha dicho que no.",
    asked: "La oficina se lo ha vuelto a preguntar.",
    "name-held":
      "Está firmado, pero todavía no cuenta: el nombre escrito no es el que tiene la oficina. Una persona de allí lo revisará y le avisará.",
    "name-refused":
      "La oficina no ha aceptado ese nombre como el suyo, así que no cuenta. Puede firmar otra vez, aquí o en papel.",
    replaced: "Lo reemplaza una respuesta suya posterior.",
  },
  copySent: (address) => `Una copia va a ${address}.`,
  copyHere: "Guarde una copia: abra la carta tal como la firmó e imprima esta página.",
  openSigned: "Abrir la carta tal como la firmó",
  withdraw: "Retirarlo",
  withdrawing: "Retirándolo …",
  withdrawConfirm: "¿Retirarlo? Se avisa a la oficina, con el día y la hora.",
  withdrawn: "Retirado. La oficina está avisada.",
  withdrawNote:
    "Puede retirarlo aquí en cualquier momento mientras exista esta página, o por escrito a la oficina.",
  withdrawPay:
    "Puede retirarlo aquí hasta que hayan firmado todos a quienes se pide pagar, o hasta que empiecen las obras. Desde entonces le obliga.",
  binding: {
    "all-signed": (day) => `Le obliga desde el ${day}: han firmado todos a quienes se pide pagar.`,
    "work-begun": (day) => `Le obliga desde el ${day}: las obras han empezado.`,
  },
  release: "Pedir que se le libere de este acuerdo",
  releasing: "Enviando …",
  releaseNote:
    "Ya le obliga, así que no se retira con un botón. Escriba por qué quiere quedar libre de este acuerdo; una persona de la oficina le responderá.",
  releaseWhy: "Por qué",
  releaseAsked: (day) =>
    `El ${day} pidió quedar libre de este acuerdo. La oficina todavía no ha respondido.`,
  releaseSent: "La oficina tiene su solicitud; una persona de allí le responderá.",
  withdrawDug: "Con la zanja ya abierta, la oficina primero la deja segura.",

  kept: "Qué se guarda",
  keptNote:
    "La oficina guarda lo que usted dice y firma aquí, y anota cuándo se abre esta página, con su dirección IP. Nadie más de la línea lo ve. No comparta el enlace: quien lo tenga puede responder por usted.",
  contact: "Hablar con la oficina",
  telephone: "Teléfono",
  email: "Correo electrónico",
  gas: "Una tubería de gas puede cruzar un desagüe. Si huele a gas, salga y después llame al 911 y a la compañía de gas.",
  goneTitle: "Este enlace no funciona",
  goneWords:
    "Puede que haya vencido, que lo reemplace otro más nuevo o que no se haya copiado entero. Pida un enlace nuevo a la oficina que le escribió.",
  tooManyTitle: "Demasiados intentos",
  noScripts:
    "Para agregar aquí una foto o un documento, el navegador debe tener JavaScript activado. También puede enviarlo por correo o llevarlo a la oficina.",
  refusedPlain: "No se guardó. Vuelva a cargar la página o llame a la oficina.",

  kinds: {
    enter: "Permiso para entrar",
    dig: "Permiso para excavar",
    pay: "Acuerdo de pago",
  },
  stops: {
    gone: "Este enlace ya no sirve. Pida uno nuevo a la oficina.",
    "too-many": "Demasiados intentos desde esta conexión. Espere 15 minutos e inténtelo de nuevo.",
    "bad-code":
      "Ese no es un código de nuestras cartas. Compárelo con la carta: tres grupos de cuatro.",
    closed: "La oficina ha cerrado el expediente de este trabajo. Llame o escriba.",
    "no-kind": "Elija una respuesta.",
    "bad-day": "Esa fecha no existe. Elíjala otra vez o déjela en blanco.",
    "no-words": "Escriba unas palabras, para que la oficina sepa a qué se refiere.",
    "too-long": "Es más largo de lo que aquí se puede guardar. Acórtelo o añádalo como archivo.",
    "bad-file": "El archivo no se guardó. Use un PDF, JPEG o PNG.",
    "too-large": "El archivo supera los 20 MB. Hágalo más pequeño o traiga una copia impresa.",
    "too-many-files": "Un enlace admite diez archivos. Envíe los demás por correo a la oficina.",
    "nothing-to-sign": "En esta carta no hay nada que firmar.",
    "on-paper":
      "Este acuerdo se firma en papel, ante un notary public (funcionario que certifica firmas).",
    "not-your-signature":
      "Solo pueden firmarlo los dueños que constan en el título. Aun así puede enviarnos sus comentarios.",
    superseded:
      "El monto de esta carta ya no vale y por eso no se puede firmar. La oficina le enviará el nuevo.",
    held: "Todavía falta aclarar algo de lo que depende este monto, por eso aún no se puede firmar. Puede contestar la carta igualmente; la oficina le avisará.",
    "nothing-asked": "Esta dirección no debe nada.",
    "area-open":
      "La carta todavía no dice dónde ni cuándo se excavaría, por eso aún no se puede firmar. Puede contestarla igualmente; la oficina le escribirá otra vez.",
    "signed-already": "Usted ya ha firmado esto.",
    "letter-not-ready":
      "El PDF de la carta todavía se está preparando. Vuelva a cargar esta página en un minuto.",
    "letter-unreadable":
      "No se puede leer lo que guardamos de esta carta; por eso no se puede firmar aquí. Pida a la oficina una carta nueva.",
    "letter-not-opened":
      "Abra primero el PDF de la carta. Así se ve que puede leerla y guardarla en este aparato.",
    "no-intent": "Marque lo que acepta.",
    "no-records": "Marque que acepta firmar en pantalla, o pida papel.",
    "no-name": "Escriba su nombre completo.",
    "no-capacity": "Escriba en qué calidad firma: fiduciario, gerente, albacea.",
    "bad-drawing":
      "No se pudo leer la firma dibujada. Bórrela y dibuje de nuevo, o déjela sin dibujar.",
    "office-session":
      "Este navegador tiene abierta una sesión de la oficina, y una carta solo la contesta y la firma quien la recibe. Cierre primero esa sesión, use otro aparato o pida papel.",
    "no-release-words": "Escriba por qué quiere quedar libre de este acuerdo.",
    "release-asked": "Ya lo ha pedido. Una persona de la oficina le responderá.",
    "nothing-to-withdraw": "No hay nada que retirar: no se dio, o ya se retiró.",
  },
  deeds: {
    opened: "Abrió esta página",
    "opened-letter": "Abrió el PDF de la carta",
    "added-file": "Añadió un archivo",
    answered: "Respondió",
    signed: "Firmó",
    withdrew: "Retiró un permiso",
  },

  certificate: {
    title: "Certificado de una firma hecha en pantalla",
    signed: "Nombre tal como se escribió",
    party: "Por",
    name: "Revisión del nombre",
    nameHeld: "no es el que consta; una persona de la oficina todavía tiene que revisarlo",
    nameAccepted: (by, day, why) => `aceptado por ${by}, de la oficina, el ${day}: ${why}`,
    nameRefused: (by, day, why) => `no aceptado por ${by}, de la oficina, el ${day}: ${why}`,
    consent: "Permiso o acuerdo",
    property: "Propiedad",
    amount: "Monto",
    version: (number) => `versión ${number} del reparto`,
    intent: "Lo que se marcó",
    when: "Firmado",
    zone: (zone) => `hora de la oficina (${zone})`,
    utc: "Hora UTC",
    address: "Dirección IP",
    agent: "Navegador",
    unknown: "no se sabe",
    document: "Documento firmado",
    documentHash: "Suma de comprobación (SHA-256)",
    bytes: (count) => `${count.toLocaleString("en-US")} bytes`,
    disclosure: "Acuerdo sobre documentos electrónicos",
    drawing: "Firma dibujada",
    drawn: "guardada como imagen",
    typedOnly: "ninguna; el nombre se escribió",
    views: "Lo que abrió y marcó antes",
    copy: "Copia",
    copySent: (messageId) => `enviada por correo electrónico, mensaje ${messageId}`,
    copyOnly: "se abre en la página privada",
    hash: "Suma de comprobación de esta firma",
    previous: "Suma de comprobación de la firma anterior",
    first: "ninguna; es la primera de la línea",
    note: "El documento es exactamente el archivo con esta suma de comprobación. Si se cambiara un solo byte o una palabra de esta firma, las sumas ya no coincidirían.",
  },
  ticks: { intent: "Marcó lo que acepta", records: "Marcó que acepta firmar en pantalla" },

  mail: {
    subject: (reference) => `Su copia de lo que firmó: ${reference}`,
    opening: (name) => `Para ${name}:`,
    words:
      "Con este mensaje van la carta que firmó en pantalla, exactamente como la firmó, y el certificado de su firma. Guarde los dos.",
    back: "Si no fue usted, o quiere retirarlo, avísenos enseguida.",
  },
  printed: {
    scan: "Escanee para leer y responder en su teléfono",
    type: (door) => `o vaya a ${door} y escriba este código`,
    until: (day) => `Vale hasta el ${day}`,
    own: "Es solo para usted; no lo comparta",
  },
  door: {
    title: "Abra su carta",
    note: "Escriba el código impreso junto al cuadro en la parte de arriba de su carta.",
    code: "Código de su carta",
    required: "obligatorio",
    hint: "Tres grupos de cuatro, por ejemplo K7QM-2XPD-9RT3. Da igual escribir con mayúsculas o con guiones.",
    open: "Abrir mi carta",
    opening: "Abriendo …",
    help: "¿No tiene código o no funciona? Llame a la oficina que le escribió: su teléfono está en la carta.",
  },
  linkInMail: (url, day) =>
    `Lea esta carta y respóndala en pantalla, hasta el ${day}:\n${url}\nEl enlace es solo para usted; por favor, no lo comparta.`,

  disclosure: (office, contact) => [
    "Puede firmar en esta pantalla o en papel. Si firma aquí, esta única carta, su firma y su copia son electrónicas. Vale para esta carta y para nada más.",
    `Puede tener la carta en papel, antes o después de firmar, sin costo: use el botón «Envíenme copias en papel» o dígalo a ${office}${contact}.`,
    "Puede cambiar de idea sobre firmar en pantalla. Antes de firmar, basta con pedir papel. Después, avísenos y todas las cartas siguientes irán en papel; no cuesta nada, y lo firmado hasta entonces sigue firmado.",
    "El permiso para entrar o para excavar se puede retirar en cualquier momento: con el botón que está a su lado en esta página, o por escrito. Cuenta desde que lo recibimos.",
    "Un acuerdo de pago se puede retirar del mismo modo hasta que hayan firmado todos a quienes se pide pagar, o hasta que empiecen las obras, lo que llegue antes. Desde entonces le obliga; si después pide quedar libre de él, le responderá una persona de la oficina. Cualquier derecho a cancelar que le dé la ley sigue en pie.",
    "Necesita un teléfono o una computadora con un navegador de los últimos años que muestre esta página y abra un PDF, y una manera de guardarlo o imprimirlo. Abrir aquí el PDF de la carta antes de firmar muestra que puede.",
    "Si cambia su dirección postal o de correo electrónico, avísenos, para que le lleguen sus copias.",
    "Con una firma guardamos: su nombre tal como lo escribe, el dibujo si lo hace, una copia exacta de la carta y su suma de comprobación, el día y la hora, su dirección IP, el tipo de navegador, y lo que abrió y marcó aquí antes. Si el nombre no es el que tenemos de usted, una persona de aquí lo revisa antes de que la firma valga.",
  ],
};
