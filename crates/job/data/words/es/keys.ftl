# What is typed in a job's file, as the sheet calls it.

key-name = nombre del trabajo
key-date = día de la colada
key-alloy = aleación
key-count = piezas por molde
key-serves = para qué sirve
key-form = forma de la carga
key-loss = pérdida al fundir
key-pig = reservado para la lingotera
key-flask = caja
key-unit = unidad de la malla
key-up = qué lado queda arriba
key-from = qué representa la malla
key-contraction = su propia contracción
key-machined = hay caras mecanizadas
key-rapped = el modelo se golpea bien
key-printed = impreso en capas de
key-joint = altura de la junta
key-sprue = lugar del bebedero
key-gates = lugares de los ataques
key-feeders = lugares de las mazarotas
key-pour-height = altura de la junta a la copa

## The words that may be chosen

said-ornament = de adorno
said-machine = en una máquina
said-food = para comer o beber
said-pressure = aguanta presión
said-lifting = levanta, o sostiene a una persona
said-brake = frena algo
said-ingot = lingote, retornos limpios
said-heavy = piezas rotas
said-thin = chapa, pintada o grasienta
said-swarf = virutas, limaduras
said-cans = latas
said-part = la pieza tal como se quiere
said-worn-original = un original gastado

## The shop

key-units = unidades que van primero
key-words = idioma, y palabras británicas o americanas
key-furnace = clase de horno
key-heap-mass = arena en el montón
key-heap-bond = qué la liga
key-heap-moisture = su humedad
said-metric = kg y mm
said-inch = lb y pulgadas
said-uk = inglés, palabras británicas
said-us = inglés, palabras americanas
said-fr = francés
said-es = español
said-bentonite = bentonita
said-natural = su propia arcilla
said-oil = aceite
said-fuel-crucible = crisol a gas, aceite o carbón vegetal
said-electric-crucible = crisol eléctrico
said-induction = inducción
said-cupola = cubilote

## What is typed of a sand and a heap

bench-test-sand = La arena
bench-test-moisture = Un puñado, pesado húmedo y secado
bench-test-jar = Agitada en un tarro de agua y asentada
bench-test-wash = Lavada hasta agua clara
bench-test-burning = Quemada al rojo vivo
bench-test-tin = Una lata de volumen conocido, apisonada
bench-test-heap = Tal como empieza su libro
bench-given-name = nombre
bench-given-shape = granos con la lupa
bench-given-clay = la arcilla que la liga
bench-given-wet = húmedo
bench-given-dry = secado
bench-given-step = la balanza distingue
bench-given-fine = la capa fina de arriba
bench-given-all = todo lo asentado
bench-given-dried = secada, antes
bench-given-washed = lavada y secada
bench-given-burnt = después
bench-given-volume = lo que cabe en la lata
bench-given-holds = la arena dentro, enrasada
bench-given-moisture = humedad de esa arena
bench-given-sand = la arena tal como está
bench-given-now = humedad ahora
bench-given-wanted = humedad deseada
bench-given-tub = la arena en la cuba
bench-given-air = temperatura del aire
bench-given-humidity = humedad del aire
bench-given-wind = viento
bench-given-sun = sol en W/m², 0 a la sombra
bench-given-area = superficie de la bandeja
bench-given-layer = espesor de la capa
bench-given-weighed = la cuba, pesada de nuevo
bench-given-after = después de
bench-given-least = humedad mínima de su piel
bench-given-dry_sand = arena seca
bench-given-mix = o toda la mezcla
bench-given-flasks = o para estas cajas
said-rounded = redondos
said-sub-angular = aristas gastadas
said-angular = aristas vivas
said-compound = granos pegados
said-sodium-bentonite = bentonita sódica
said-calcium-bentonite = bentonita cálcica
said-other = arcilla refractaria o arcilla tal cual

## A part that is described

shape-sizes = cinco medidas
shape-box = paralelepípedo
shape-cylinder = barra redonda o disco
shape-tube = tubo
shape-cone = cono
shape-ball = bola
shape-ellipsoid = elipsoide
shape-ring = anillo
shape-block = bloque
shape-disc = disco
shape-plate = placa
shape-frame = marco
shape-shell = cáscara
shape-any = nada de esto
size-length = longitud
size-width = anchura
size-height = altura, de pie
size-thickest = sección más gruesa
size-thinnest = pared más fina
size-diameter = diámetro
size-bore = agujero
size-top = diámetro de arriba
size-thickness = grosor de su barra
