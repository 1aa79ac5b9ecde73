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
