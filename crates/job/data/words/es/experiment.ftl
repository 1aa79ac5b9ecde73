# Spanish, from memory: not yet read by a native founder.

# Experiments on a heap: plans, results, pictures and batch cards.

## The plan

experiment-plan-head = { $name }: { $batches } amasadas de { $mass }, { $different } mezclas distintas
experiment-basis-dry = las cantidades cuentan cada parte en seco, y toda el agua como agua; los gramos son de cada parte tal como está
experiment-basis-lies = cantidades y gramos cuentan cada parte tal como está
experiment-order = hágalas en este orden, sacado a suerte (semilla { $seed })
experiment-mixes-made = cada mezcla se hace { $times } veces: { $names }
experiment-mixes-days = cada día lleva todas las mezclas, así que lo que hace el día se descuenta
experiment-mixes-shows = dos mezclas se distinguen si difieren en más de { $times } veces el ruido de una amasada
experiment-second-session = desde la amasada { $batch } una segunda sesión, con { $names }: hágala cuando la primera esté medida
experiment-repeats = repeticiones, que muestran el ruido: { $list }
experiment-repeats-one = { $batch } de { $of }
experiment-repeats-none = no se repite nada, así que el ruido no se distinguirá de las diferencias: pida al menos dos repeticiones
experiment-teaches-plane = enseñan lo que hace cada cosa por sí sola: { $names }
experiment-teaches-twisted = enseñan lo que hace cada cosa por sí sola y cada dos juntas: { $names }
experiment-teaches-bent = enseñan lo que hace cada cosa, cada dos juntas, y dónde está lo mejor entre los extremos: { $names }
experiment-spare = se aprenden { $terms } números; { $spare } amasadas de sobra muestran qué tan seguros son
experiment-spare-none = no sobra ninguna amasada, así que nada mostrará qué tan seguros son los resultados: haga más amasadas, o shape = "plane"
experiment-efficiency = enseñan { $share } % de lo que enseñaría el mejor plan de tantas amasadas, sin repetición obligada
experiment-shows = { $name } se nota si cambia el resultado más de { $times } veces el ruido de una amasada
experiment-hidden = { $term } no se aprende: si actúa, pasa por { $terms }
experiment-unattainable = { $name } no puede llegar a { $bound } % por los márgenes de los otros: { $reachable } % es su límite
experiment-coarse = { $name } baja a { $mass }, que su balanza puede errar en { $share } %: péselo en una balanza más fina, o haga amasadas mayores
experiment-dust = la arena y la arcilla secas hacen un polvo que daña los pulmones para siempre: humedezca, use mascarilla, mezcle al aire libre
experiment-batch = amasada
experiment-day = día
experiment-mix = mezcla

## What the results say

experiment-read-head = { $name }: { $measured } de { $batches } amasadas medidas
experiment-open = falta medir: amasada { $list }
experiment-response = { $name }: { $count } amasadas, de { $low } a { $high }
experiment-response-none = { $name }: aún sin resultados
experiment-unread-none = métalos con: oddside experiment enter
experiment-unread-alike = todos los resultados son iguales, así que no enseñan nada: mida más fino
experiment-unread-never = { $name } fue { $value } en cada amasada medida, así que nada puede decirse de ello: mida amasadas con otro valor
experiment-unread-few = { $batches } amasadas de { $different } mezclas distintas no pueden enseñar { $terms } números: mida más
experiment-unread-together = { $term } solo cambió junto con lo demás, así que no se distinguen: mida amasadas en que difieran
experiment-noise-repeats = ruido de una amasada, por las repeticiones: { $noise } ({ $low } a { $high }, 19 veces de 20)
experiment-noise-unrepeated = aún no se midió ninguna repetición, así que el ruido solo se conoce por lo que la forma deja
experiment-noise-left = la forma deja { $noise }, con { $spare } amasadas de sobra
experiment-foretold = recoge { $share } % de las diferencias, y habría predicho { $foretold } % de las de amasadas que no vio
experiment-foretold-badly = recoge { $share } % de las diferencias, y no predice mejor que la media una amasada que no vio
experiment-lack-none = la forma no yerra más que el ruido (azar { $chance } %)
experiment-lack = la forma yerra más que el ruido (azar { $chance } %): hay resultados del margen fuera de ella
experiment-lack-unjudged = no se sabe si la forma es correcta: hacen falta repeticiones y mezclas de sobra
experiment-effect = { $name }, de lo menos a lo más probado: { $change } ± { $within }
experiment-effect-unsure = { $name }, de lo menos a lo más probado: { $change }
experiment-day-apart = día { $day } contra el primero: { $change } ± { $within }, descontado
experiment-odd = la amasada { $batch } dio { $measured } donde las otras predicen { $foretold }: revísela, o repítala
experiment-winner = ganadora: { $mix }, { $value } ({ $low } a { $high })
experiment-as-good = { $share } % del margen conocido no se distingue de ella
experiment-leading = en cabeza: { $mix }, { $value }
experiment-unnamed-chance = no se nombra ganadora: el azar solo separa tanto las mezclas { $chance } veces de 100, y 5 es el límite
experiment-unnamed-spare = no se nombra ganadora: no sobra ninguna amasada, y el ruido no se distingue de las diferencias
experiment-unnamed-shape = no se nombra ganadora: la forma es errónea y no hay que fiarse de su cumbre; haga las próximas amasadas
experiment-unnamed-step = no se nombra ganadora: el ruido es menor que el paso del instrumento; lea más fino
experiment-unnamed-range = se quiere un margen, así que no se nombra ganadora solo por él
experiment-unnamed-unknown = no se nombra ganadora: ninguna mezcla se conoce lo bastante
experiment-mix-noise = ruido de una amasada: { $noise }, con { $spare } amasadas de sobra
experiment-mix-mean = { $mix }: { $value } ± { $within }, { $count } amasadas
experiment-mix-lead = { $leading } contra { $other }: { $by } ± { $within }
experiment-mix-winner = ganadora: { $mix }, { $value } ± { $within }
experiment-mix-unnamed = no se nombra ganadora, porque el azar solo separa tanto { $mix } de { $others } { $chance } veces de 100, y 5 es el límite
experiment-mix-unmeasured = no se nombra ganadora, porque { $mix } aún no tiene resultado
experiment-mix-unrepeated = no se nombra ganadora, porque se midieron muy pocas repeticiones para distinguir el ruido de la diferencia
experiment-mix-alike = no se nombra ganadora, porque cada repetición dio la misma lectura: lea más fino, o escriba el paso del instrumento
experiment-mix-days-hide = no se nombra ganadora, porque mezclas y días cambiaron juntos: mida una de las mezclas también los otros días
experiment-mix-next-measure = mida primero las amasadas que faltan
experiment-mix-next-nothing = no hace falta nada más para nombrar la mejor
experiment-mix-next-again = haga otra vez: { $mixes }
experiment-mix-next-in-all = hasta hacer cada una { $times } veces en total; eso muestra la ventaja si es tan grande como parece
experiment-mix-next-small = la ventaja es tan pequeña que 50 amasadas de cada una no la mostrarían: tome la mezcla que cueste menos
experiment-mix-next-how = añádalas al plan con: oddside experiment plan --more { $count }
experiment-joined = todos los deseos juntos
experiment-joined-mix = lo mejor para todos: { $mix } ({ $share } % de todos los deseos cumplidos)
experiment-joined-none = ninguna mezcla conocida cumple todos los deseos: alguno no vale nada en ninguna parte
experiment-joined-results = worthless y good de { $names } se tomaron de los resultados; escriba los suyos
experiment-wish = deseo cumplido
experiment-expected = esperado
experiment-next = qué hacer ahora
experiment-next-better = la más prometedora: { $mix }; esperado { $expected }, ganancia { $gain }
experiment-next-expected = { $name } { $value } ± { $deviation }
experiment-next-teaches = enseña más: { $mix }
experiment-next-few = cuál promete más se dice desde tres amasadas medidas
experiment-next-how = añádalas al plan con: oddside experiment plan --more 3

## Pictures

experiment-chart-across = a lo ancho: { $across }, { $low } a { $high }; hacia arriba: { $up }, { $from } a { $to }; 0 es { $least }, 9 es { $most }; un punto: no se conoce
experiment-picture = { $name }: líneas de igual resultado; las cruces son amasadas hechas; la parte rayada no se conoce
experiment-picture-held = fijo: { $held }

## Batch cards

experiment-card-title = Fichas de amasadas
experiment-card-batch = Amasada { $number }
experiment-card-day = día { $day }
experiment-card-holds = contiene { $water } de agua
experiment-card-made = pesado
experiment-card-notes = Notas
experiment-card-mask = El polvo daña los pulmones para siempre: mascarilla, arena húmeda, al aire libre.
experiment-card-in-order = Haga las amasadas en el orden de sus números. Anote lo que vea, también lo no previsto.

## Mixes together, masses as weighed, pictures of one thing

experiment-mix-met = { $mix }: { $share } % de todos los deseos cumplidos
experiment-mix-met-unsure = estas partes unen medias y no saben de ruido: una mezcla es mejor solo donde se nombra arriba
experiment-mix-picture = cruces: amasadas; círculos: medias y cuánto pueden errar, 19 de 20 veces; lleno: probada la mejor
experiment-picture-along = cruces: amasadas; la banda: cuánto puede errar la línea, 19 de 20 veces
experiment-weighed = { $count } amasadas se toman como se pesaron
experiment-weighed-mixes = { $count } amasadas se pesaron distinto de lo que dice su mezcla; cuentan como esa mezcla igual
experiment-next-believed = la mejor según todas las amasadas, hecha o no: { $mix }; se espera { $value } ± { $deviation }
