# Spanish, from memory: not yet read by a native founder.

# What the terminal shows: plan, look, charge, card.

likely = probable
head-between = entre
head-or = o
told-stop = ALTO
told-caution = cuidado
told-note = nota
at-place = en { $place }
written-to = escrito en { $folder }: { $files }
written = escrito: { $file }
stop-told = ALTO: no debe colarse tal como está; vea las observaciones
no-shop-file = no se encontró shop.toml: cajas de moldeo, crisoles y hierros son los del archivo inicial; `oddside new DIR` escribe uno para llenar
unsettled = sin plan: primero hay que resolver la malla

plan-head = { $count ->
    [one] { $job }, en { $alloy }
   *[other] { $job }, { $count } piezas en { $alloy }
}

## A look at a mesh

look-accepted = aceptada
look-healed = reparada
look-ask = por aclarar
look-refused = rechazada
look-size = tamaño
look-volume = volumen
look-volume-told = { $volume }, superficie { $surface }, centro de masa { $centre }
look-facets = facetas
look-facets-told = { $facets }, cuerpos { $bodies }, huecos { $voids }
look-cast-in = colada en
look-weighs = pesa

## The mould as solids

mould-volume = volumen
mould-mass = pesa
mould-fills = metal, arena y machos llenan la caja con un error de { $off }
mould-joint-flat = la junta es plana
mould-joint-wanders = la junta ondula: de { $below } por debajo a { $above } por encima del borde de la caja, pendiente máxima { $slope } en { $place }
mould-off = las partes del molde no suman el interior de la caja por { $off }: hay arena contada dos veces o ninguna
piece-casting = pieza { $number }
piece-basin = cubeta
piece-sprue = bebedero
piece-well = pozo
piece-runner = canal { $number }
piece-gate = ataque { $number }
piece-feeder = mazarota { $number }
piece-vents = respiraderos
piece-core = macho «{ $name }»
piece-cavity = todo el metal en la caja
piece-cope = arena de la caja superior
piece-drag = arena de la caja inferior
side-wall = hasta la pared de la caja
side-top = hasta lo alto de la caja superior
side-bottom = hasta el fondo de la caja inferior
mould-thin-wall = { $piece }: { $sand } de arena { $side }, hacen falta { $wanted }; tome una caja mayor o muévalo
mould-thin-sand = { $piece } en { $place }: { $sand } de arena hasta { $other }, hacen falta { $wanted }; mueva uno de los dos
mould-touch = { $piece } entra en { $other }, { $shared } en común; mueva uno de los dos en { $key }
mould-apart = { $piece } en { $place } no llega a { $other }; muévalo en { $key }
mould-hooks = { $piece } en { $place } engancha la arena y la arranca al desmoldear
mould-no-gate = { $piece } no tiene ataque: el canal no la enfrenta en la junta; diga dónde en { $key }
mould-short-run-off = { $piece } acaba { $missing } demasiado pronto tras su último ataque; ahonde mejor su extremo
mould-low-feeder = { $piece } queda { $missing } más baja de lo calculado; levante la caja superior en ese sitio
mould-flat-elsewhere = la pieza sale de una junta plana a otra altura: escriba { $joint } en [mould]
mould-long-print = { $piece } atraviesa { $through } la pared de la caja: escriba print_depth = "{ $write }" junto a su portada en [[core]], o tome una caja mayor
mould-no-print = { $piece } atraviesa { $through } la pared de la caja, que no tiene sitio para su portada: tome una caja mayor
mould-core-not-drawn = el macho «{ $name }» solo se conoce por su volumen y falta aquí: el metal se cuenta como si no existiera
plan-solved = según el calor en el molde, un vistazo en { $cells } celdas: piezas sólidas tras { $likely } ({ $between }); piezas bastante frías para abrir tras { $open }
plan-solved-kept = según el calor en el molde, hallado por oddside freeze en { $cells } celdas: piezas sólidas tras { $likely } ({ $between }); piezas bastante frías para abrir tras { $open }
plan-solved-late = más tarde que la apertura del plan
serve-open = la hoja de trabajo está abierta en { $address }
serve-stop = solo esta máquina llega a ella; Ctrl-C la cierra
