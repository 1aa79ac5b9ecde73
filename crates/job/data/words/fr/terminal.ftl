# French, from memory: not yet read by a native founder.

# What the terminal shows: plan, look, charge, card.

likely = probable
head-between = entre
head-or = ou
told-stop = STOP
told-caution = prudence
told-note = note
at-place = en { $place }
written-to = écrit dans { $folder } : { $files }
written = écrit : { $file }
stop-told = STOP : à ne pas couler en l'état ; voir les remarques
no-shop-file = pas de shop.toml : châssis, creusets et poids sont ceux du fichier de départ ; `oddside new DOSSIER` en écrit un à remplir
unsettled = pas de plan : il faut d'abord régler le maillage

plan-head = { $count ->
    [one] { $job }, en { $alloy }
   *[other] { $job }, { $count } pièces en { $alloy }
}

## A look at a mesh

look-accepted = accepté
look-healed = réparé
look-ask = à préciser
look-refused = refusé
look-size = taille
look-volume = volume
look-volume-told = { $volume }, surface { $surface }, centre de gravité { $centre }
look-facets = facettes
look-facets-told = { $facets }, corps { $bodies }, vides { $voids }
look-cast-in = coulé en
look-weighs = pèse
