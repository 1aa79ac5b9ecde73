# Spanish, from memory: not yet read by a native founder.

# The sand bench: cards, drying, mixes, tests, and the book of a heap.

## What stands on top

bench-card-head = { $name }: la ficha de esta arena
bench-water-head = agua en la arena
bench-dry-head = secado hasta un peso
bench-stand-head = un molde apisonado que queda abierto
bench-pucks-head = { $name }, según { $count } pastillas
bench-mixes-head = mezclas: oddside sand recipe NOMBRE pesa una
bench-recipe-head = { $mix }
bench-tests-head = ensayos: oddside sand test NOMBRE clave=valor calcula uno
bench-test-head = ensayo: { $test }
bench-watch-head = { $test }, { $count } lecturas
bench-pour-head = { $name }, colada del { $day }
bench-state-head = { $name } tras { $count } coladas
bench-rescue-head = recuperar el montón

## Figures

bench-fineness = índice de finura
bench-mean-grain = la mitad de los granos es más fina que
bench-openness = permeabilidad si estuviera limpia y seca, unos
bench-uniformity = uniformidad d60/d10
bench-sieves-with-a-tenth = tamices que retienen un décimo o más
bench-dust = polvo por debajo de 75 µm
bench-suits = sirve para
bench-suits-coarse = piezas grandes, hierro; áspera para aluminio pequeño
bench-suits-non-ferrous = aluminio, latón y bronce
bench-suits-fine = arena de contacto y trabajo fino; respira poco
bench-moisture-of-wet = humedad, de la masa húmeda
bench-moisture-of-dry = humedad, de la arena seca
bench-moisture-off-by = error, a uno y otro lado
bench-jar = capa fina del frasco, en volumen
bench-washable = finos lavables, en masa
bench-burning-loss = pérdida al fuego
bench-density = densidad apisonada
bench-voids = aire entre los granos
bench-shape = forma de los granos
bench-shape-rounded = redondeada: fluye y respira bien, pide menos arcilla
bench-shape-sub-angular = subangular: un buen término medio
bench-shape-angular = angular: traba bien, pide más arcilla y apisonado
bench-shape-compound = compuesta: se deshace en polvo con el uso
bench-water-to-add = agua a añadir
bench-water-each-spray = cada una de tres rociadas
bench-stop-weight = parar el secado a
bench-water-to-lose = agua a perder
bench-drying-rate = velocidad de secado, kg/h m²
bench-surface = la superficie mojada queda a
bench-drying-time = tiempo de secado
bench-drying-own = tiempo de secado según su propio diario
bench-drying-book = el tiempo del libro, arriba, es el que se anota en el diario: planned_drying=
bench-time-left = tiempo restante
bench-done-at = listo hacia las
bench-stands = aguanta al menos
bench-taken-up = agua tomada, de la masa seca
bench-by = según
bench-by-line = la recta entre pastillas
bench-by-curve = la curva de sorción de las pastillas
bench-air-up-to = aire hasta
bench-mix = mezcla
bench-part = parte
bench-sand = arena tal como está
bench-water-brought = agua que traen la arena y el aglutinante
bench-mix-in-all = la mezcla en total
bench-cost = coste de lo que tiene precio
bench-test = ensayo
bench-reading = lectura
bench-verdict = veredicto
bench-squeeze-dry = demasiado seca, o la arcilla está muerta
bench-squeeze-right = bien
bench-squeeze-wet = demasiado húmeda
bench-good-days = sus días buenos
bench-test-noise = un solo ensayo se desvía (desviación típica)
bench-limits = límites de una lectura
bench-step-limits = límites de un paso
bench-chart-readings = { $test }: lecturas
bench-chart-means = { $test }: medias ponderadas
bench-crust = costra quemada
bench-clay-burnt = montón más caliente de lo que aguanta la arcilla
bench-organic-share = montón más caliente de lo que aguantan azúcar y aceite
bench-clay-killed = arcilla muerta en la colada
bench-organic-burnt = aglutinante quemado
bench-steam = agua ida en vapor
bench-thrown-out = tirado
bench-top-up = arcilla para volver al comienzo
bench-pours-left = coladas así que quedan
bench-holds-sand = arena
bench-holds-live-clay = arcilla viva
bench-holds-dead-clay = arcilla muerta
bench-holds-organic = aglutinante orgánico
bench-holds-ash = ceniza
bench-holds-core-sand = arena de machos
bench-holds-parting = polvo separador
bench-holds-fines = limo y granos rotos
bench-holds-water = agua
bench-of-dry = { $share } % del montón seco
bench-dead-share = materia muerta
bench-dilution = arena y arcilla secas que harían lo mismo
bench-out-and-in = arena vieja fuera, nueva dentro
bench-clay-to-add = arcilla nueva a añadir
bench-fines-after = finos lavables después

## What to mind

bench-silica = el polvo de arena seca es sílice, daña los pulmones: humedézcalo o use mascarilla de polvo fino (P100, FFP3), al aire libre; nunca barra en seco
bench-by-freezing = el calor en la arena es el que se siguió en el molde de { $job }, hasta que se abre
bench-short-stack = los tamices que faltan dejan abierta la finura: está en el intervalo
bench-one-size = granos casi de un solo tamaño: se dilatan y pandean; se desean tres o cuatro tamices con un décimo
bench-wash-dust = mucho polvo: lave la arena en cuatro o cinco aguas
bench-jar-volume = la capa es en volumen y tiene mucha agua: no es porcentaje de arcilla en masa; para eso lave y seque una muestra
bench-washable-all = lo que se lava es arcilla viva, arcilla muerta y limo juntos
bench-natural-temper = las arenas naturales moldean mejor con 8 a 9 % de agua, mucho más que la arena con bentonita: no corrija una con la cifra de la otra
bench-clay-loses = la propia arcilla pierde de { $low } a { $high } % de su masa al fuego: réstelo antes de culpar al aglutinante
bench-larger-handful = esta balanza dice poco con ese puñado: seque { $mass } o más, o use una balanza más fina
bench-three-sprays = añádala en tres rociadas, amase diez minutos, deje una hora, apriete; guarde el último tercio, el agua no se saca
bench-give-weather = dé aire (air) y humedad (humidity), y superficie (area) o capa (layer), para el tiempo
bench-weigh-to-narrow = antes de pesar nada el tiempo vale a un tercio: dé weighed y after de la próxima pesada
bench-weigh-at = pese otra vez a las { $time }: espero { $mass }
bench-weigh-in = pese otra vez en { $minutes } min: espero { $mass }
bench-dry-enough = ya está bastante seca, o de más: recójala ahora
bench-stand-least = no se cuenta el agua que sube: aguanta al menos eso; cúbralo para ganar tiempo
bench-cover-damp = un molde cubierto o cerrado suda: mire su cara antes de colar, y no cuele en uno húmedo
bench-do-not-pour = no cuele en un molde o macho de aglutinante orgánico que estuvo a { $at }: séquelo u hornéelo antes
bench-never-so-dry = incluso el aire más seco de estas pastillas deja más que eso
bench-within-sources = { $part }: { $here } de la arena seca; las fuentes de aquí toman de { $low } a { $high }
bench-outside-sources = { $part }: { $here } de la arena seca queda fuera de todas las fuentes de aquí, que toman de { $low } a { $high }: haga un lote pequeño de cada una antes del montón
bench-part-left-out = { $part } se deja fuera: parts.{ $part }=… lo incluye, en partes por 100 de arena seca; las fuentes aquí toman { $low } a { $high }
bench-test-batch = mezcle primero un kilogramo y haga con él el apretón, la caída y la botella
bench-no-good-days = aún no hay día bueno de este ensayo en el libro: anote uno con --day DÍA --good cuando la arena moldee bien
bench-below-good-days = por debajo de todos sus { $count } días buenos
bench-above-good-days = por encima de todos sus { $count } días buenos
bench-like-good-days = como en sus { $count } días buenos
bench-repeat-once = repita a veces el ensayo en un lote: sin repeticiones nadie sabe cuánto se desvía uno
bench-test-coarse = este ensayo varía casi tanto como los lotes: tome la media de tres
bench-few-readings = { $count } lecturas son pocas: con menos de veinte los límites pueden errar un tercio
bench-in-hand = nada habla de un cambio
bench-signal-beyond = { $day }: una lectura más allá de tres desviaciones
bench-signal-two-of-three = { $day }: dos de tres más allá de dos desviaciones de un lado
bench-signal-four-of-five = { $day }: cuatro de cinco más allá de una desviación de un lado
bench-signal-eight = { $day }: ocho seguidas a un lado del centro
bench-signal-six = { $day }: seis seguidas que suben, o que bajan
bench-mean-beyond = { $day }: la media ponderada salió de sus límites, un cambio pequeño que dura
bench-step-beyond = { $day }: un paso mayor que los del azar
bench-passed-live-clay = muy poca arcilla viva: añada la arcilla indicada antes de la próxima colada, y ensaye
bench-passed-dead = demasiada materia muerta: cambie parte del montón por arena nueva antes de la próxima colada
bench-passed-organic = demasiado aglutinante sin quemar: da gas; mezcle arena nueva antes de la próxima colada
bench-soon-live-clay = en { $count } coladas así habrá muy poca arcilla viva: reponga antes
bench-soon-dead = en { $count } coladas así habrá demasiada materia muerta: tire la costra y parte del montón
bench-soon-organic = en { $count } coladas así habrá demasiado aglutinante sin quemar: añada menos
bench-lasts = ningún límite se pasa en { $count } coladas así
bench-do-not-dilute = no es sensato: tanto seco hace otro montón; extiéndalo y deje ir el agua
bench-dead-clay = muchos finos y un apretón que se desmorona son arcilla muerta, no arcilla suficiente
bench-gassy = esa pérdida al fuego da gas: no le añada más aglutinante
bench-short-sand = faltan { $mass } de arena nueva para eso
bench-short-clay = faltan { $mass } de arcilla nueva para eso
bench-wash-first = lave antes una muestra: sin sus finos nadie sabe cuán cansado está
bench-silicate-out = la arena de machos con silicato estropea la arcilla: tamice los terrones y manténgalos fuera
bench-dull-pour = ensaye otra vez antes de colar, y que la primera colada sea modesta, sin nada que perder
bench-step-dry = extiéndalo y séquelo hasta el peso de parada
bench-step-sieve = tamice terrones de macho y metal
bench-step-crust = tire primero la costra quemada, luego la parte a cambiar
bench-step-add = añada arena nueva, esparza la arcilla sobre ella húmeda
bench-step-mull = amase diez minutos o más, deje reposar la noche
bench-step-test = apretón, caída y botella; anótelos en el libro

## How tests are done

bench-how-sample = tome arena de tres sitios, mézclela, divídala hasta un ensayo
bench-how-squeeze = apriete un puñado, abra, rómpalo: felt=crumbles (se desmorona), sharp (huellas, rotura limpia) o smears (embarra)
bench-how-drop = apriete un terrón, suéltelo cada vez más alto hasta que rompa: height='60 cm'
bench-how-dent = deje caer una bola en la cara apisonada, media de cinco huellas: mass= ball= drop= dent=
bench-how-bottle = deje que una botella aspire aire por un tapón apisonado a 10 cm de agua: air= height= pressure='10 cmH2O' diameter= time=
bench-how-cylinder = apisone un tubo con tres golpes, sáquelo, apriételo en una balanza con una placa: load= diameter=
bench-how-bar = hornee una barra, apóyela en dos filos, apriete el medio en una balanza: load= span= breadth= height=
bench-how-disc = apriete un disco por el canto hasta que se parta: load= diameter= height=
bench-how-compactability = llene por tamiz un tubo de 120 mm, enrase, tres golpes: rammed='70 mm'
bench-how-moisture = pese un puñado, séquelo a 105 °C hasta que no cambie, péselo: wet= dry=

## Mulling, facing, and a sheet on paper

bench-mull-head = amasado: la arcilla trabajada bajo presión
bench-facing-head = arena de contacto
bench-sand-of-wet = humedad de la arena tal como está, de su masa húmeda
bench-mix-of-wet = humedad de la mezcla acabada, de la masa húmeda
bench-mix-of-dry = la misma, de la mezcla seca
bench-mull-by-hand = pala y botas, en el suelo
bench-mull-by-mixer = taladro con paleta, u hormigonera
bench-mull-by-muller = amasadora: ruedas o paletas que presionan
bench-facing-thick = grueso de la capa
bench-facing-volume = arena de contacto en su sitio, apisonada
bench-facing-laid = la misma en masa
bench-facing-ready = arena de contacto que preparar
bench-facing-open = la capa respira, de lo que respira el montón
bench-facing-both = capa y arena del montón juntas, de lo que respira el montón
bench-mull-minutes = amasado, lo usual: { $hand } con pala y botas, { $mixer } con taladro u hormigonera, { $muller } con amasadora
bench-mull-on = siga amasando: diez minutos dieron { $gain }, más que los { $sure } en que dos pruebas difieren de todos modos
bench-mull-enough = basta: diez minutos dieron { $gain }, dentro de los { $sure } en que dos pruebas difieren de todos modos
bench-mull-common-practice = los minutos son de uso hasta unos 30 kg, sin fuente: su propia prueba dice cuándo parar
bench-mull-hands = nunca meta la mano ni la pala en una máquina que gira: párela y desenchúfela
bench-mull-step-dry = primero arena y arcilla seca, la arena húmeda: dos minutos, hasta que no quede grumo gris
bench-mull-step-water = luego el agua en tres veces, rociada, cada una trabajada antes de la siguiente; el jarabe con la primera
bench-mull-step-press = presione y unte, no solo remueva: pise y voltee, apóyese en la pala, o deje rodar las ruedas
bench-mull-step-test = pruebe, amase diez minutos, pruebe otra vez: oddside sand mull before= after= test=
bench-mull-step-rest = déjela reposar tapada, una hora al menos, mejor una noche; críbela antes de usar
bench-facing-step-riddle = críbela húmeda, nunca seca, sobre el modelo hasta cubrirlo todo
bench-facing-step-press = apriétela con los dedos al grueso de arriba, sin exceso en los rincones
bench-facing-step-back = eche enseguida arena del montón detrás y apisone, antes de que la capa se seque
bench-facing-step-vent = ventile con alambre a través de montón y capa, parando antes del modelo
bench-facing-finish = ninguna ley publicada liga rugosidad y grano: uno o dos tamices más fina que el montón es lo usual
bench-facing-grain = dé heap_grain= y facing_grain= de sus fichas para ver qué cuesta la capa en respiración
bench-facing-closes = grano por grano, limpia e igual de apisonada, al molde le queda { $left } de su respiración: capa fina, y ventile
bench-paper-amount = cuánto
bench-paper-made = pesado
bench-paper-mind = Atención
bench-paper-steps = En este orden
bench-paper-notes = Conviene saber
bench-paper-blank-date = Fecha, quién
bench-paper-blank-start = Inicio, fin
bench-paper-blank-squeeze = Apretón
bench-paper-blank-drop = Caída, altura
bench-paper-blank-bottle = Botella, segundos
bench-paper-blank-seen = Qué se vio

## How well a test repeats

bench-test-difference = dos pruebas de la misma arena difieren más que una vez de cada veinte en
bench-test-share = la prueba, de todo lo que varía en su libro
bench-test-people = las manos difieren en (desviación típica)
bench-test-kinds = clases de arena que la prueba distingue
bench-people-studied = { $people } personas probaron las mismas amasadas: prueba y manos son el { $share } % de todo lo que varía; bajo 10 es bueno, hasta 30 soportable
bench-people-uneven = probaron varias personas: que cada una pruebe las mismas dos amasadas o más, dos veces cada una el mismo día, y esto dirá qué hacen las manos

## Pictures

bench-sizes-title = { $name }: tamaños de los granos
bench-sizes-caption = aberturas en mm, por factores; arriba los números de los tamices
bench-sizes-sieve = tamiz
bench-sizes-kept = retenido en cada tamiz
bench-sizes-finer = más fino
bench-sizes-pan = fondo
bench-chart-caption = a trazos: límites; un cuadro hueco con su día habla de un cambio

## Read off at the heap

bench-felt-crumbles = se desmorona
bench-felt-sharp = huellas nítidas de los dedos, rotura limpia
bench-felt-smears = se pega
bench-key-fall = altura de la caída
bench-key-ball-mass = masa de la bola
bench-key-ball = diámetro de la bola
bench-key-dent = diámetro de la huella
bench-key-air = aire desalojado
bench-key-plug = altura del tapón
bench-key-pressure = presión
bench-key-diameter = diámetro
bench-key-time = tiempo
bench-key-load = carga al ceder
bench-key-span = entre los apoyos
bench-key-breadth = ancho
bench-key-upright = altura
bench-key-rammed = altura apisonada
bench-key-wet = húmeda
bench-key-dry = seca
