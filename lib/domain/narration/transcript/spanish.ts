/**
 * Spanish words of the trade, each with the English that the rest of this room reads. Crews mix the
 * two in one sentence; a word that is also English (`no`, `me`, `once` …) stands here only within a
 * longer phrase, or where it is written as English never is.
 */
const PHRASES = `
a la derecha=on the right; al lado derecho=on the right side; lado derecho=right side; derecha=on the right; del lado derecho=on the right side
a la izquierda=on the left; al lado izquierdo=on the left side; lado izquierdo=left side; izquierda=on the left; del lado izquierdo=on the left side
arriba=on the top; en la corona=at the crown; abajo=on the bottom; en el fondo=on the bottom; el fondo=the bottom; en el piso=on the bottom
a los=at; a las=at; desde los=from; de los=from; hasta los=to; hasta el=to; hasta la=to the; hasta=to; entre=between; desde=from
pies=feet; pie=foot; pulgadas=inches; pulgada=inch; por ciento=percent; porciento=percent; grados=degrees; en punto=o'clock
con=with; una=a; un=a; unas=some; unos=about; hay=there's; aquí=here; aqui=here; ahí=there; también=also; tambien=also; otra=another; otro=another
y medio=and a half; y media=and a half; y cuarto=and a quarter; y tres cuartos=and three quarters; punto=point
contador en cero=counter at zero; contador=counter; marca=reading; qué marca=counter; en cero=at zero; la cuenta=the counter
conexión=connection; conexion=connection; conexiones=connections; entronque=tap; toma=tap; acometida=lateral; ramal=branch line; derivación=branch; silleta=saddle
raíces=roots; raices=roots; raíz=root; raiz=root; grieta=crack; grietas=cracks; fisura=crack; rajadura=crack; rajado=cracked; rajada=cracked; agrietado=cracked; agrietada=cracked
roto=broken; rota=broken; quebrado=broken; quebrada=broken; hoyo=hole; hueco=hole; agujero=hole; colapsado=collapsed; colapsada=collapsed; aplastado=squashed; aplastada=squashed
abierta=open; abierto=open; abiertas=open; está=is; están=are; eso es=that is; esa es=that is; ese es=that is; nomás=just; nada más=just; pedazo=piece; falta un pedazo=a piece missing; faltando=missing; junta abierta=open joint; junta separada=separated joint; junta desplazada=offset joint; junta corrida=offset joint; junta recorrida=offset joint; junta=joint; desfase=offset; desalineada=offset joint; desalineado=offset joint
agua estancada=standing water; se mete el agua=water coming in; se mete agua=water coming in; entra agua=water coming in; entra el agua=water coming in; gotea=dripping; goteando=dripping; filtración=infiltration; filtra=seeping; agua=water; panza=belly; columpio=belly; grasa=grease; lodo=mud; sedimento=sediment; tierra=dirt; sarro=scale; tapado=blocked; tapada=blocked; obstrucción=obstruction
registro de limpieza=cleanout; registro=cleanout; en la principal=at the main; en el principal=at the main; en la línea principal=at the main; la principal=the main; el principal=the main; línea principal=the main; del principal=from the main; de la principal=from the main; drenaje principal=the main; colector=the main; pozo de visita=manhole; pozo=manhole; cloaca=the main
barro=clay; arcilla=clay; hierro fundido=cast iron; hierro=iron; fierro=iron; concreto=concrete; plástico=plastic; plastico=plastic; cemento=concrete; tubería=pipe; tuberia=pipe; tubo=pipe
sigue=continues; siguen=continue; seguimos=going on; continúa=continues; continúan=continue; acaba=ends; se acaba=ends; se acaba el=end of the; se acaba la=end of the; se acaban=ends; se termina=ends; se terminan=ends
otro trabajo=other job; la semana pasada=last week; el mes pasado=last month; el año pasado=last year; ayer=yesterday; había=there was; hicieron=they made; hizo=he made; jabón=soap; jabon=soap; échale agua=run water; echale agua=run water; ponle agua=run water; ponle ahí el agua=run water; abre el agua=run water; ábrele al agua=run water; nada=nothing
cambia a=changes to; cambia de=changes from; se cambia=changes; empieza=starts; comienza=starts; termina=ends; fuera del agua=out of the water; sale del agua=out of the water; sale el agua=out of the water; salimos del agua=out of the water
dice que está a=says it at; dice que está en=says it at; no está en el permiso=not on the permit; no esta en el permiso=not on the permit; no está en la tarjeta=not on the card; no está en el plano=not on the drawing; permiso=permit; tarjeta=card; plano=drawing
entramos por=going in at; entrando por=going in at; entré por=going in at; hasta la principal=to the main; hasta el principal=to the main; hasta la línea principal=to the main; empujé=pushed; empujamos=pushed; empujando=pushing; bajé=went down; llegué=got; estamos en el=we're at number; estamos en la=we're at number; estamos en=we're in; calle=street; número=number; numero=number; casa=house
no hay=no; no veo=don't see; parece=looks like; creo=i think; tal vez=maybe; quizás=maybe; como=about; casi=almost; más o menos=about; mas o menos=about
perdón=sorry; perdon=sorry; corrección=correction; digo=i mean
ligero=light; ligera=light; ligeras=light; leve=slight; moderado=moderate; moderadas=moderate; mucho=heavy; muchas=heavy; muchos=heavy; pesadas=heavy; grande=big; grave=severe
minutos=minutes; horas=hours; años=years; dólares=dollars; dolares=dollars; casas=houses; la mitad=half; un tercio=a third; lleno=full; llena=full
cero=zero; uno=one; dos=two; tres=three; cuatro=four; cinco=five; seis=six; siete=seven; ocho=eight; nueve=nine; diez=ten; doce=twelve; trece=thirteen; catorce=fourteen; quince=fifteen; dieciséis=sixteen; dieciseis=sixteen; diecisiete=seventeen; dieciocho=eighteen; diecinueve=nineteen
veinte=twenty; veintiuno=twenty one; veintiún=twenty one; veintidós=twenty two; veintidos=twenty two; veintitrés=twenty three; veintitres=twenty three; veinticuatro=twenty four; veinticinco=twenty five; veintiséis=twenty six; veintiseis=twenty six; veintisiete=twenty seven; veintiocho=twenty eight; veintinueve=twenty nine
treinta=thirty; cuarenta=forty; cincuenta=fifty; sesenta=sixty; setenta=seventy; ochenta=eighty; noventa=ninety; cien=one hundred; ciento=one hundred; doscientos=two hundred; trescientos=three hundred; cuatrocientos=four hundred; quinientos=five hundred; seiscientos=six hundred; setecientos=seven hundred; ochocientos=eight hundred; novecientos=nine hundred
a los once=at eleven; once pies=eleven feet; once y medio=eleven and a half
y=and; a=to; de=from; del=from the; en=at; la=the; el=the; los=the; las=the; por=by; muy=very; por todos lados=all around
ye=wye; una ye=a wye; i griega=wye; rompieron el tubo=broke in; rompió el tubo=broke in; metieron=ran; metió=ran; se conectó=tied in; se conectaron=tied in; no sale en el plano=not on the drawing; no sale en la tarjeta=not on the card; no aparece en el plano=not on the drawing; no tiene permiso=no permit; sin permiso=no permit
se bajó el tubo=dropped joint; se hundió=dropped; hundido=sagged; hundida=sagged; hundimiento=sag; se cayó el tubo=collapsed; derrumbado=collapsed; derrumbe=collapse; desfasado=offset; desfasada=offset; desplazado=offset; desplazada=offset; escalón=a step down; escalon=a step down; separada=separated; separado=separated; se abrió=opened; se separó=separated; rajadas=cracked; rajados=cracked; rajaduras=cracks; fisuras=cracks; fisurado=cracked; fisurada=cracked; estrellado=cracked; partido=split; partida=split
deformado=deformed; deformada=deformed; ovalado=oval; ovalada=oval; aplastados=squashed; chueco=offset; corroído=corroded; corroída=corroded; oxidado=corroded; oxidada=corroded; carcomido=eaten away; carcomida=eaten away; gastado=worn; gastada=worn; picado=pitted; perforado=hole; perforada=hole; falta el piso=the bottom is missing; sin piso=no bottom; le falta=missing a; se ve la tierra=see dirt; se ve tierra=see dirt; pura tierra=bare dirt; pura piedra=bare rock; piso=bottom; techo=top
agua parada=standing water; agua encharcada=standing water; encharcado=ponded; charco=puddle; bajo el agua=under water; sumergida=submerged; fuga=leak; escurre=dripping; se filtra=seeping; piedra=rock; piedras=rocks; basura=debris; toallitas=wipes; papel=paper; trapos=rags; arena=sand; óxido=rust; taponado=blocked; taponada=blocked; obstruido=obstructed; obstruida=obstructed; no pasa la cámara=can't get past; ya no pasa=can't get past; no puedo pasar=can't get past; codo=elbow; curva=bend; vuelta=bend; tapón=cap; llegamos al main=at the main; llegamos a la principal=at the main; la calle=the street
`;

interface Phrase {
  readonly from: readonly string[];
  readonly to: readonly string[];
}

const BY_FIRST: ReadonlyMap<string, readonly Phrase[]> = byFirst(
  PHRASES.split(/[;\n]/)
    .map((each) => each.trim())
    .filter((each) => each !== "")
    .map((each) => {
      const [from = "", to = ""] = each.split("=");
      return { from: from.split(" "), to: to.split(" ") };
    }),
);

function byFirst(phrases: readonly Phrase[]): Map<string, Phrase[]> {
  const map = new Map<string, Phrase[]>();
  for (const one of phrases) {
    const first = one.from[0] ?? "";
    map.set(first, [...(map.get(first) ?? []), one]);
  }
  for (const list of map.values()) list.sort((a, b) => b.from.length - a.from.length);
  return map;
}

/** Small words that are letters or words of English as well: read as Spanish beside Spanish only. */
const SHARED: ReadonlySet<string> = new Set([
  "quince",
  "y",
  "a",
  "de",
  "en",
  "la",
  "el",
  "no",
  "como",
  "con",
]);
const TENS = /^(twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)$/;

/** A word with what it came from. */
export interface Source {
  readonly text: string;
  readonly sentence?: number;
}

/**
 * The words with what is Spanish put into English; each new word keeps the place of the one that it
 * stands for. `treinta y cinco` is thirty five.
 */
export function inEnglish<W extends Source>(words: readonly W[]): W[] {
  const out: W[] = [];
  const throughout = isMostlySpanish(words);
  for (let at = 0; at < words.length; ) {
    const word = words[at];
    if (word === undefined) break;
    const found = phraseAt(words, at, throughout);
    if (!found) {
      out.push(word);
      at += 1;
      continue;
    }
    const [texts, taken] = specialAt(words, at, { found, out });
    if (taken > 0) {
      for (const text of texts) out.push({ ...word, text });
      at += taken;
      continue;
    }
    const joins = found.from.join(" ") === "y" && TENS.test(out.at(-1)?.text ?? "");
    if (!joins) out.push(...found.to.map((text) => ({ ...word, text })));
    at += found.from.length;
  }
  return out;
}

/** What `a las` and `a los` mean by what stands around them, and the words that it takes. */
function specialAt(
  words: readonly Source[],
  at: number,
  { found, out }: { readonly found: Phrase; readonly out: readonly Source[] },
): readonly [texts: readonly string[], taken: number] {
  const from = found.from.join(" ");
  // `de los cuarenta y dos a los cuarenta y seis`
  if (/^a l[oa]s$/.test(from) && isRange(out)) return [["to"], found.from.length];
  // `tubo de seis`
  const size =
    from === "de" && OF_PIPE.test(out.at(-1)?.text ?? "") ? hourBehind(words, at + 1) : null;
  const goesOn =
    words[at + 2]?.sentence === words[at]?.sentence &&
    /^(a|hasta)$/.test(words[at + 2]?.text ?? "");
  if (size !== null && !goesOn) return [[size, "inch"], 2];
  // `veintiséis con ocho`: tenths
  const tenths =
    from === "con" && NUMBER.test(out.at(-1)?.text ?? "") ? hourBehind(words, at + 1) : null;
  if (tenths !== null) return [["point", tenths], 2];
  // `a las doce`: hours are feminine, feet are not.
  const hour = from === "a las" ? hourBehind(words, at + 2) : null;
  return hour === null ? [[], 0] : [["at", hour, "o'clock"], HOUR_WORDS];
}

const NUMBER =
  /^(\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred)$/;
const OF_PIPE = /^(pipe|clay|concrete|plastic|iron|pvc|abs|wye|tap)$/;
const HOUR_WORDS = 3;
const HOURS = /^(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)$/;

/** The hour behind `a las`, in English; null where more than an hour follows. */
function hourBehind(words: readonly Source[], at: number): string | null {
  const own = words[at]?.text ?? "";
  const found = own === "once" ? "eleven" : (phraseAt(words, at)?.to.join(" ") ?? "");
  const next = words[at + 1]?.text ?? "";
  if (!HOURS.test(found) || /^(pies|pie|punto|y|feet|foot)$/.test(next)) return null;
  return found;
}

/** So many words after `from`, a range is still open. */
const OPEN = 4;

function isRange(out: readonly Source[]): boolean {
  return out.slice(-OPEN).some(({ text }) => text === "from" || text === "between");
}

/** Of the shared ones, those that no English sentence has. */
const ONLY_SPANISH = /^(y|de|en|el|la|quince)$/;

/** So many of a hundred words are Spanish where nobody mixes in more than a word of English. */
const MOSTLY = 30;

function isMostlySpanish(words: readonly Source[]): boolean {
  const own = words.filter(({ text }) => BY_FIRST.has(text) && !SHARED.has(text));
  return own.length * 100 > words.length * MOSTLY;
}

function phraseAt(words: readonly Source[], at: number, throughout = false): Phrase | null {
  const found = BY_FIRST.get(words[at]?.text ?? "")?.find((one) =>
    one.from.every((text, index) => words[at + index]?.text === text),
  );
  if (!found) return null;
  const alone = found.from.length === 1 && SHARED.has(found.from[0] ?? "");
  return alone &&
    !(throughout && ONLY_SPANISH.test(found.from[0] ?? "")) &&
    !besideSpanish(words, at)
    ? null
    : found;
}

function besideSpanish(words: readonly Source[], at: number): boolean {
  return [at - 1, at + 1].some((beside) => {
    const text = words[beside]?.text ?? "";
    return BY_FIRST.has(text) && !SHARED.has(text);
  });
}
