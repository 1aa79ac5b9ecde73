# Spanish, from memory: not yet read by a native founder.

# The plan: names of figures, of what is chosen and of metals, in the order of the day.

# What a founder typed, and messages one after the other.
typed = { $words }
list = { $each }

## Figures

figure-part-volume = volumen de la pieza
figure-casting-mass = masa de la pieza fundida
figure-contraction = contracción
figure-pattern-length = largo del modelo
figure-pattern-length-rapped = largo del modelo, con golpeteo
figure-tolerance-on-the-longest-size = tolerancia en la medida mayor
figure-machining-stock-below-or-at-the-side = sobreespesor de mecanizado abajo o al costado
figure-machining-stock-under-the-cope = sobreespesor de mecanizado bajo la caja superior
figure-draught-on-the-deepest-wall = salida en la pared más profunda
figure-casting-from-the-original-as-it-is = pieza a partir del original tal como está
figure-laid-on-each-end-of-the-original = añadido en cada extremo del original
figure-master-length = largo del modelo maestro
figure-modulus-of-the-heaviest-section = módulo de la sección más gruesa
figure-modulus-of-the-thinnest-section = módulo de la sección más delgada
figure-pouring-temperature = temperatura de colada
figure-freezing-time-of-the-heaviest-section = tiempo de solidificación de la sección más gruesa
figure-shrinkage-to-be-fed = rechupe por alimentar
figure-feeder-diameter = diámetro de la mazarota
figure-feeder-diameter-by-modulus = diámetro de la mazarota por módulo
figure-feeder-diameter-by-volume = diámetro de la mazarota por volumen
figure-neck-across = ancho del cuello
figure-fill-time = tiempo de llenado
figure-effective-head = altura metalostática efectiva
figure-choke-area = sección de estrangulamiento
figure-sprue-foot-diameter = diámetro del pie del bebedero
figure-sprue-top-diameter = diámetro de la boca del bebedero
figure-runner-area = sección del canal
figure-gate-area = sección de los ataques
figure-gate-speed = velocidad en el ataque
figure-last-casting-full-after-the-first = última pieza llena después de la primera
figure-poured-each-second = colado por segundo
figure-slag-trap-volume = volumen de la trampa de escoria
figure-run-off-past-the-last-gate = prolongación tras el último ataque
figure-metal-in-the-running-system = metal en el sistema de colada
figure-poured-mass = masa colada
figure-charge = carga
figure-melt-loss = merma de fusión
figure-tongs-load = carga en las tenazas
figure-lift-out-temperature = temperatura al sacar el crisol
figure-fuel = combustible
figure-inoculant = inoculante
figure-wanted-carbon-equivalent = carbono equivalente pedido
figure-phosphor-copper = cobre fosforoso
figure-zinc-to-put-back = zinc por reponer
figure-sand-to-fill-the-flask = arena para llenar la caja
figure-sand-to-have-ready = arena que tener lista
figure-cope-lift = empuje sobre la caja superior
figure-cope-mass = masa de la caja superior
figure-weight-on-the-cope = peso sobre la caja superior
figure-force-on-each-of-four-clamps = fuerza en cada una de cuatro mordazas
figure-core-float = flotación del macho
figure-core-float-core-weightless = flotación del macho, macho sin peso
figure-core-print-pressure = presión en la portada del macho
figure-heavier-half-of-the-flask = mitad más pesada de la caja
figure-leave-alone-until = no tocar hasta
figure-may-be-opened = puede abrirse
figure-may-be-handled = puede manipularse

## What is chosen

choice-flask = caja de moldeo
choice-sprue-drill = broca del bebedero
choice-sprue-pipe = tubo del bebedero
choice-feeder = mazarota
choice-charge-from-heaps = carga de los montones
choice-crucible = crisol
choice-irons = hierros
choice-lifted-by = la levanta
choice-ram-to-a-dent-of = apisone hasta una huella de
choice-vents = respiraderos

## What is chosen, and why

chosen-flask = { $flask }: { $inside }, superior { $cope }, inferior { $drag }
flask-to-be-made = por hacer
reason-flask-wall = al menos { $wall } de arena alrededor del modelo
reason-flask-asked = pedida por su nombre; menos arena de la necesaria
reason-flask-no-list = no hay ninguna caja en shop.toml
reason-flask-none = ninguna de las suyas admite el modelo
cutter-drill = broca de { $size }
cutter-copper-tube = tubo de cobre de { $size }
cutter-steel-pipe = tubo de acero de { $size } (ext. { $outside })
reason-cutter = { $off } de la sección pedida
chosen-feeder-none = no hace falta
chosen-feeder-each = una en cada pieza, en su sección más gruesa
reason-feeder-thin = toda sección es bastante delgada para que la alimente su ataque
reason-feeder-firm = la fundición con este carbono se expande; molde mostrado firme por: { $shown }
reason-feeder-volume = manda el volumen: no debe vaciarse; tan alta como ancha
reason-feeder-freezing = manda la solidificación: debe solidificar la última; tan alta como ancha
chosen-crucible-none = ninguno de los suyos
reason-crucible = admite { $mass } lleno a { $fill } del borde
reason-crucible-none = la carga es más de lo que admite cualquiera
chosen-irons-none = ninguno: la caja superior pesa bastante
chosen-irons-short = no alcanzan los suyos
reason-irons-none = con el extremo alto del empuje
reason-irons-together = { $mass } en total
reason-irons-clamp = sujete con mordazas para la misma fuerza
chosen-one-person = una persona
chosen-two-people = dos personas
chosen-three-people = tres personas
chosen-nobody = nadie a mano
reason-lifting = guía a la altura del banco: { $one } para una persona, { $two } para dos; manda la norma local
chosen-dent = { $aim } (no más ancha que { $soft }, no menos que { $hard })
reason-dent = bola de { $ball } desde { $height }; la suya de { $metal } en un buen día fue { $dent }
chosen-vents = { $number } con alambre de 2 mm, parejos sobre las piezas, hasta 12 mm antes de ellas
chosen-vents-none = no hacen falta: la arena es bastante abierta
chosen-vents-too-few = ninguna cantidad de respiraderos de alambre basta
chosen-vents-habit = con alambre de 2 mm, cada 30 mm, hasta 12 mm antes del modelo
reason-vents-gas = cálculo a lápiz; gas de esta arena contra la altura del metal
reason-vents-open = seque o abra la arena, o deje mazarotas abiertas arriba
reason-vents-habit = costumbre: no se conocen a la vez la permeabilidad y la humedad del montón

## What sets the filling time

fill-because = no menos que el extremo bajo: { $low }; no más que el extremo alto: { $high }
fill-quick-rule = más rápido arrastra arena (regla para paredes delgadas)
fill-slow-rule = más lento deja que el metal forme piel (regla para paredes gruesas)
fill-thin-wall = la pared más delgada solidificaría antes de llenarse

## Metals

alloy-al-99-5 = Al 99.5
alloy-al-si12 = Al-Si12
alloy-al-si6-cu4 = Al-Si6-Cu4
alloy-al-si7-mg = Al-Si7-Mg
alloy-al-wrought-scrap = Chatarra de Al de forja
alloy-aluminium-bronze = Bronce al aluminio
alloy-grey-iron = Fundición gris
alloy-gunmetal-85-5-5-5 = Bronce rojo 85-5-5-5
alloy-pewter-92-7-5-0-5 = Peltre 92-7.5-0.5
alloy-silicon-brass = Latón al silicio
alloy-silicon-bronze = Bronce al silicio
alloy-tin-bronze-88-10-2 = Bronce al estaño 88-10-2
alloy-yellow-brass = Latón amarillo
alloy-za-12 = ZA-12
alloy-za-27 = ZA-27
alloy-za-8 = ZA-8
alloy-zamak-3 = Zamak 3
