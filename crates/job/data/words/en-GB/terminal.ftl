# What the terminal shows: plan, look, charge, card.

likely = likely
head-between = between
head-or = or
told-stop = STOP
told-caution = caution
told-note = note
at-place = at { $place }
written-to = written to { $folder }: { $files }
written = written: { $file }
stop-told = STOP: not to be poured as it stands; see the remarks
no-shop-file = no shop.toml found: flasks, crucibles and irons are those of the starter file; `oddside new DIR` writes one to fill in
unsettled = no plan: the mesh has to be settled first

plan-head = { $count ->
    [one] { $job }, in { $alloy }
   *[other] { $job }, { $count } castings in { $alloy }
}

## A look at a mesh

look-accepted = accepted
look-healed = healed
look-ask = ask
look-refused = refused
look-size = size
look-volume = volume
look-volume-told = { $volume }, surface { $surface }, centre of mass { $centre }
look-facets = facets
look-facets-told = { $facets }, bodies { $bodies }, voids { $voids }
look-cast-in = cast in
look-weighs = weighs
