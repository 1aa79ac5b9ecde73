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
