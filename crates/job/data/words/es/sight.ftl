# What is seen on castings, and what entries of the log are called.

## What is seen

sight-look-round-holes = agujeros redondos
sight-look-many-small-holes = muchos agujeros pequeños
sight-look-ragged-hole = un agujero de paredes desgarradas
sight-look-sponge = metal esponjoso
sight-look-sink = un hundimiento de la piel
sight-look-seam = una línea donde se encontraron dos chorros
sight-look-unfilled = falta metal, bordes redondos
sight-look-broken-edge = falta metal, bordes vivos
sight-look-drained = una cáscara, o una parte alta vacía
sight-look-fin = una rebaba delgada
sight-look-veins = rebabas finas en rincones o junto a los machos
sight-look-bulge = una cara hinchada
sight-look-lump = un bulto áspero de metal de más
sight-look-crack = una grieta o un desgarro
sight-look-rough = piel áspera
sight-look-sand-keyed = arena que no se desprende
sight-look-sand-in-metal = arena en el metal
sight-look-dross-in-metal = escoria o pieles en el metal
sight-look-scab = metal sobre una capa de arena
sight-look-groove = una línea o un surco poco hondo
sight-look-drag-marks = rayas en el sentido del desmoldeo
sight-look-offset = mitades que no coinciden
sight-look-wall-uneven = una pared con macho gruesa aquí y fina allá
sight-look-wrong-size = medidas erradas en todas partes
sight-look-hard-edge = bordes que no toma la lima

## Where

sight-place-cope-face = arriba
sight-place-drag-face = abajo
sight-place-side-wall = en un lado
sight-place-joint = en la junta
sight-place-at-gate = junto a un ataque
sight-place-opposite-gate = donde dio el chorro
sight-place-far-from-gate = donde el metal llegó al final
sight-place-heavy-section = en una parte gruesa
sight-place-thin-section = en una parte fina
sight-place-inner-corner = en un rincón
sight-place-edge = en un borde
sight-place-at-core = junto a un macho
sight-place-at-insert = junto a un enfriador, un soporte o un inserto
sight-place-under-feeder = bajo una mazarota
sight-place-large-flat = en una gran cara plana
sight-place-low-down = en lo hondo del molde
sight-place-between-arms = entre brazos retenidos
sight-place-everywhere = por todas partes
sight-place-inside = bajo la piel

## The wall of a hole, or the skin of the fault

sight-wall-smooth = lisa
sight-wall-shiny = lisa y brillante
sight-wall-dendritic = con agujas
sight-wall-oxidised = oscura o coloreada por el calor
sight-wall-bright = clara, como recién rota
sight-wall-sand-lined = con arena
sight-wall-dross-lined = con escoria
sight-wall-round-edged = de bordes redondos
sight-wall-sharp-edged = de bordes vivos
sight-wall-rough = áspera

## How large

sight-size-small = menos de 1 mm
sight-size-medium = 1 a 5 mm
sight-size-large = más de 5 mm

## When it was seen

sight-when-knock-out = al desmoldear
sight-when-cleaning = al limpiar
sight-when-machining = al mecanizar
sight-when-sawing = al serrar
sight-when-use = en el uso

## What an entry of the log says

log-key-poured = colado el
log-key-temperature = temperatura de colada
log-key-time = tiempo de llenado
log-key-mass = masa
log-key-freezing = la sección más gruesa, sólida tras
log-key-opening = desmoldado tras
log-key-how = cómo fue
log-key-note = nota
log-key-mark = marca
log-key-good = buena
log-key-use = para qué sirve
log-key-moisture = humedad de la arena
log-key-ramming = apisonado
log-key-vents = respiraderos
log-key-feeder = mazarotas
log-key-core = machos
log-key-weights = peso sobre la caja
log-key-charge = cargado
log-key-fuel = combustible gastado
log-key-melted = todo líquido a las
log-key-molten = mantenido líquido
log-key-scrap = la carga
log-key-degassed = desgasificado
log-key-skimmed = desescoriado
log-key-left = sobrante
log-key-look = lo que se ve
log-key-place = dónde
log-key-surface = pared o piel
log-key-size = tamaño
log-key-seen = cuándo se vio

## Words of the log

log-word-soft = flojo
log-word-even = parejo
log-word-hard = duro
log-word-none = ninguno
log-word-few = pocos
log-word-many = muchos
log-word-small = pequeñas
log-word-enough = suficientes
log-word-well-baked = bien cocidos
log-word-baked-short = poco cocidos
log-word-damp = húmedo
log-word-unvented = sin respiradero
log-word-steady = seguida
log-word-broken = interrumpida
log-word-splashed = con salpicaduras
log-word-slow = lenta, bebedero no lleno
log-word-ran-short = faltó metal
log-word-clean = limpia
log-word-dirty = sucia

## What may be said of a defect

sight-look = lo que se ve
sight-place = dónde
sight-surface = pared o piel
sight-size = tamaño
sight-when = cuándo se vio
sight-castings = en cuántas piezas
sight-metal = metal

sight-castings-one = una
sight-castings-some = algunas
sight-castings-all = todas

sight-metal-aluminium = aluminio
sight-metal-zinc = zinc
sight-metal-pewter = peltre
sight-metal-brass = latón
sight-metal-bronze = bronce
sight-metal-copper = cobre
sight-metal-iron = hierro
