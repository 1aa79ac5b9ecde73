# Spanish, from memory: not yet read by a native founder.

# What stands on paper: pour sheet, pour card, cut templates. A row label has some 14
# letters before it is broken into two lines.

## On every paper

date = Fecha
# Under which conditions any figure here may be used.
limits = Leyes y fuentes: workings.pdf. Tablas, cálculos y modelos; los márgenes no son garantías. Antes valen la norma local y el profesional habilitado. Izaje, freno, presión: compruébelo por ensayo.
# Printed at the foot of each paper and at the end of each plan.
unread = Traducción aún no revisada por un fundidor de lengua española.
# Printed at the head of what is shown in English.
in-english = Esta página está entera en inglés: las leyes solo están descritas en inglés. (aún no revisado por un fundidor de lengua española)
between = { $low } a { $high }
paper-title = { $paper }: { $job }
check-bar-upper = Verifique la impresión con una regla: la barra de arriba mide 100 mm,
check-bar-lower = la barra de abajo 4 in.

## The pour sheet

sheet-title = Hoja de colada
sheet-stop = ALTO: no cuele este trabajo tal como está
sheet-red-lines = Líneas rojas: marque cada una antes de fundir
sheet-sources = Fuentes:
sheet-code = La tarjeta de taller de esta hoja, o sus cifras, para un teléfono.
level-stop = Alto
level-caution = Cuidado
level-note = Nota
remarks-more = y { $count } más: oddside plan { $count ->
    [one] la muestra
   *[other] las muestra
}.
remarks-left-off = Observaciones: { $count }; oddside plan { $count ->
    [one] la muestra
   *[other] las muestra
}.

red-line-dry = Molde, machos, útiles y lingotera secos y calientes
red-line-floor = Piso de arena seca; camino libre hasta el molde
red-line-clothes = Botas de cuero, pantalla facial, nada sintético
red-line-fume = Aire libre o campana; máscara; nunca solo
red-line-onlookers = Espectadores a 2 m como mínimo; palabra de alto
red-line-quartz = Arena húmeda o máscara: peligro del cuarzo

blank-sand = Lectura, arena
blank-heat = Temperatura o señal
blank-seconds = Segundos
blank-weather = Clima
blank-happened = Qué pasó
blank-photo = Foto número

block-metal = Metal y carga
block-sand = Arena y caja
block-pattern = Modelo
block-mould = Molde y alimentación
block-weights = Pesos en caja superior
block-pour = Colada

row-metal = Metal
row-one-casting = Una pieza
row-each-casting = Cada pieza
row-charge = Carga
row-crucible = Crisol
row-flask = Caja
row-sand = Arena lista
row-larger = Aumento
row-longest = Lado mayor
row-modulus = Módulo mayor
row-sprue-foot = Pie bebed. Ø
row-cut-with = corte con
row-sprue-top = Boca bebed. Ø
row-runner = Canal, total
row-gates = Ataques, total
row-feeder-diameter = Mazarota Ø
row-feeder = Mazarota
row-lay-on = Encima
row-irons = Tome
row-pour-at = Colada a
row-fill-in = Llene en
row-open-after = Abra tras

note-poured = { $poured } colados en total
note-rammed = de ella, { $sand } apisonados en la caja
note-frozen = { $time } hasta solidificar
note-feeder = tan alta como ancha, en la sección más gruesa
note-lift = empuje { $lift }, caja sup. { $cope }
note-nothing-to-lay = basta la caja superior; mordaza si se mueve; empuje { $lift }, caja sup. { $cope }
note-opening = { $alone } sin tocar, { $handled } hasta manipularla
note-or = o { $pipe }
nothing = nada

drawing-caption = { $count ->
    [one] El modelo
   *[other] { $count } modelos
} en la caja como se dibuja; bebedero, canal y mazarota los ubica usted.
drawing-rigged = { $count ->
    [one] El modelo está
   *[other] { $count } modelos están
} como se dibuja; el sistema de colada se coloca por regla, { drawing-moved }. B bebedero, C canal, A ataque, M mazarota, H macho; las líneas de trazos quedan fuera del corte.
drawing-moved = [mould.place] en job.toml mueve lo que se quiera
    .sheet = arrastre ataques y mazarotas en el plano para moverlos
letter-sprue = B
letter-runner = C
letter-gate = A
letter-feeder = M
letter-core = H
drawing-wanders = Donde la junta deja su nivel, la arena de la caja inferior va rayada; las curvas de nivel de la planta distan { $every }.
drawing-scale = Escala { $scale }; en mm.
drawing-plan = Planta
drawing-section = Corte
drawing-cope = sup. { $mm }
drawing-drag = inf. { $mm }
drawing-pour = colada { $mm }

## The pour card

card-title = Tarjeta de colada
card-stop-word = Palabra de alto
card-stop-default = ALTO
card-stop-told = todos se quedan quietos; quien cuela apoya el crisol o la cuchara, o termina de vaciar en la lingotera.
card-dry = Seco y caliente, marcado punto por punto antes de imprimir esta tarjeta
card-crew = Cuadrilla
card-path = Camino, recorrido una vez con el crisol vacío
card-order = Orden: primero lo que pide el metal más caliente
card-mould = molde
card-on-the-cope = en caja superior
card-metal-by-then = metal entonces
card-not-below = no menos de
card-takes = lleva
card-fill-in = llene en
card-loses = Se calcula que el metal pierde { $drop } de un molde al siguiente: mídalo. Con metal más frío que "no menos de", el molde espera a la próxima fusión.
card-next-heat = Próxima fusión: { $moulds }.
card-aloud = Dicho en voz alta antes de abrir el horno
card-foot = Cifras de tablas y cálculos a mano; antes valen la norma local y el profesional habilitado. Limpie y seque de nuevo después de cada colada.

rule-clothes = Botas de cuero con el pantalón por encima, pantalla facial, delantal de cuero, nada sintético.
rule-onlookers = Los espectadores quedan a 2 m como mínimo y detrás de quien cuela. Nadie cruza el camino.
rule-steady = Cuele con chorro constante y el pocillo lleno. Un molde empezado se llena, o se abandona para siempre.
rule-rest = Lo que sobra, y el metal que se ha enfriado demasiado, va de inmediato a las lingoteras calientes.
rule-floor = Metal en el piso: échele arena seca encima, nunca agua. Retroceda, no corra.
rule-burn = Quemadura: agua fresca sobre la piel durante 20 min, lejos del metal, y pida ayuda.

dry-floor = Piso: arena seca bajo camino y molde, sin hormigón (concreto) desnudo ni charcos
dry-ladle = Cuchara y pico: calentados al rojo, no solo secos a la vista
dry-tongs = Tenazas, horquilla: calientes, sin cascarilla de óxido ni envoltura húmeda
dry-skimmer = Espumadera, campana, agitador: calientes antes de tocar el metal
dry-ingot-moulds = Lingoteras: calentadas y pintadas, listas para lo que sobre
dry-crucible = Crisol: caliente del todo, sin grietas, no guardado en lugar húmedo
dry-charge = Carga: seca, caliente, sin tubo cerrado, no añada nada mojado después
dry-flux = Fundente y adiciones: de una lata seca, calentados
dry-mould = Molde: húmedo a punto o secado, respiraderos abiertos, no quedó a la lluvia
dry-cores = Machos: cocidos o gaseados, guardados en seco, con respiradero al aire; o no hay

## Cut templates

cut-title = Plantillas de corte
cut-told = Tamaño real, tal como está el metal. Imprima al 100 %, sin ajustar a la página, y verifique las dos barras del pie antes de cortar. Lo que cuenta es la sección: un canal de otra forma con igual sección corre igual de bien.
cut-larger = Mayor que el papel, trace con regla y compás: { $pieces }.
cut-picture = Plantillas en tamaño real con sus medidas.
cut-sprue-peg = estaca del bebedero, de lado
cut-sprue-foot = pie del bebedero
cut-sprue-top = boca del bebedero
cut-runner = canal, en sección
cut-gates = { $count ->
    [one] ataque, en sección
   *[other] cada uno de { $count } ataques, en sección
}
cut-feeder = mazarota
cut-peg-sizes = Ø { $thick } a Ø { $thin }, largo { $long }
cut-round-sizes = Ø { $across }
cut-channel-sizes = { $wide } de ancho, { $high } de alto
joint-title = La junta del molde
joint-told = Corte la arena de la caja inferior según esta línea y estas alturas antes de apisonar la superior. Alturas en mm sobre (+) o bajo (−) el borde de la caja; posiciones en mm desde su esquina interior delantera izquierda.
joint-picture = La línea de junta vista desde arriba con curvas de nivel, la misma línea desarrollada y una tabla de alturas.
joint-from-above = Alrededor de la primera pieza, desde arriba.
joint-straight = Las líneas que dejan el nivel, desarrolladas desde su número más bajo.
joint-table = posición: a lo largo de la caja, a través, altura
row-solved = Sólido, por calor
note-solved = bastante frío para abrir tras { $open }
