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
