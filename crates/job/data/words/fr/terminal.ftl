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

## The mould as solids

mould-volume = volume
mould-mass = pèse
mould-fills = métal, sable et noyaux remplissent le châssis à { $off } près
mould-joint-flat = le plan de joint est plat
mould-joint-wanders = le joint ondule : de { $below } au-dessous à { $above } au-dessus du bord du châssis, pente la plus forte { $slope } à { $place }
mould-off = les parties du moule s'écartent de l'intérieur du châssis de { $off } : du sable est compté deux fois ou pas du tout
piece-casting = pièce { $number }
piece-basin = bassin
piece-sprue = descente
piece-well = puits
piece-runner = canal { $number }
piece-gate = attaque { $number }
piece-feeder = masselotte { $number }
piece-vents = évents
piece-core = noyau « { $name } »
piece-cavity = tout le métal dans le châssis
piece-cope = sable du dessus
piece-drag = sable du dessous
side-wall = contre la paroi du châssis
side-top = jusqu'en haut du dessus
side-bottom = jusqu'en bas du dessous
mould-thin-wall = { $piece } : { $sand } de sable { $side }, il en faut { $wanted } ; prenez un châssis plus grand ou déplacez
mould-thin-sand = { $piece } en { $place } : { $sand } de sable jusqu'à { $other }, il en faut { $wanted } ; déplacez l'un des deux
mould-touch = { $piece } entre dans { $other }, { $shared } en commun ; déplacez l'un des deux sous { $key }
mould-apart = { $piece } en { $place } ne rejoint pas { $other } ; déplacez sous { $key }
mould-hooks = { $piece } en { $place } accroche le sable et l'arrache au démoulage
mould-no-gate = { $piece } n'a pas d'attaque : le canal ne lui fait pas face au joint ; dites où sous { $key }
mould-short-run-off = { $piece } finit { $missing } trop tôt après sa dernière attaque ; approfondissez plutôt son bout
mould-low-feeder = { $piece } est plus basse de { $missing } que calculé ; rehaussez le dessus à cet endroit
mould-flat-elsewhere = la pièce se démoule d'un joint plat à une autre hauteur : écrire { $joint } sous [mould]
mould-long-print = { $piece } traverse de { $through } la paroi du châssis : écrivez print_depth = "{ $write }" à côté de sa portée sous [[core]], ou prenez un châssis plus grand
mould-no-print = { $piece } traverse de { $through } la paroi du châssis, qui n'a pas de place pour sa portée : prenez un châssis plus grand
mould-core-not-drawn = le noyau « { $name } » n'est connu que par son volume et manque ici : le métal est compté comme s'il n'existait pas
plan-solved = d'après la chaleur dans le moule, coup d'œil sur { $cells } cellules : pièces solides après { $likely } ({ $between }) ; pièces assez froides pour ouvrir après { $open }
plan-solved-kept = d'après la chaleur dans le moule, trouvé par oddside freeze sur { $cells } cellules : pièces solides après { $likely } ({ $between }) ; pièces assez froides pour ouvrir après { $open }
plan-solved-late = plus tard que l'ouverture du plan
serve-open = la feuille de travail est ouverte à { $address }
serve-stop = seule cette machine y accède ; Ctrl-C la ferme
