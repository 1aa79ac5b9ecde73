# Sens de démoulage d'une pièce.

draw-way = dessus levé selon
draw-held = sable retenu
draw-undercut = contre-dépouille
draw-cope = dans le dessus
draw-drag = dans le dessous
draw-wanders = le joint varie de
draw-shadow = ombre
draw-clear = posée comme dans le travail, selon { $way }, rien n'est retenu : elle se démoule
draw-holds = posée comme dans le travail, selon { $way }, { $held } de sable sont retenus

# Where its skin wants mending.

skin-draught = { $count ->
        [one] 1 paroi, { $area }, demande
       *[other] { $count } parois, { $area } en tout, demandent
    } plus de dépouille ; la pire, vers { $place }, a { $has } sur { $wants } pour { $depth } : `pattern` la donne sauf avis contraire
skin-thin-metal = { $area } de paroi vers { $place } ont { $has } d'épaisseur, moins que les { $least } que ce métal remplit d'ordinaire : épaississez, ou coulez plus chaud par plus d'attaques
skin-thin-sand = le sable sur { $area } vers { $place } a { $has } d'épaisseur : serré à la main il tient à partir de { $least } ; ouvrez l'intervalle, fermez-le, ou remplissez-le d'un noyau
skin-corners = { $count ->
        [one] 1 angle rentrant
       *[other] { $count } angles rentrants
    } sans congé, { $length } en tout, le plus long tournant de { $turn } vers { $place } : ils arrachent le sable et amorcent des criques
skin-thickest = le métal le plus épais, une boule de { $ball }, est derrière { $place } : il se solidifie en dernier
