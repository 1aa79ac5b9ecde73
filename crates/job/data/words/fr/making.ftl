# French, from memory: not yet read by a native founder.

# What the terminal shows of a pattern that is made: oddside pattern.

making-head = modèle pour { $job }
making-sizes = pièce { $part }, modèle { $pattern }
making-contracts = agrandi de { $x } selon x, { $y } selon y, { $z } selon z du dessin
making-joint = joint à { $height } au-dessus du point le plus bas du modèle
making-joint-wanders = joint de { $low } à { $high } au-dessus du point le plus bas du modèle : il suit la ligne de joint

making-step = étape
making-volume = volume
making-change = écart
making-part = la pièce
making-stock = surépaisseur d'usinage
making-contraction = retrait
making-draught = dépouille
making-hollows = creux remplis pour les noyaux
making-prints = portées de noyau

making-piece = solide
making-size = taille
making-plastic = plastique
making-pattern = modèle
making-drag = demi-modèle de dessous
making-cope = demi-modèle de dessus
making-oddside = fausse partie
making-board = plaque
making-numbered = { $what }, morceau { $number }

making-gauge = trusquin, hauteurs au-dessus du plateau en mm
making-station = point
making-height = hauteur
making-slope = pente

making-left-on = surépaisseur : { $depth } sur { $area }, { $places ->
    [one] une face ou un trou
   *[other] { $places } faces ou trous
}, ajoute { $volume }
making-core-prints = noyau { $name } : son creux est rempli et { $count } portées dépassent de { $lengths }, avec { $play } de jeu autour de celles du noyau ; place et largeur portent le retrait, la longueur se mesure après
making-core-print = noyau { $name } : son creux est rempli et une portée dépasse de { $lengths }, avec { $play } de jeu autour de celle du noyau ; place et largeur portent le retrait, la longueur se mesure après
making-cores-by-hand = le travail donne des portées à la main : celles des noyaux dont la pièce a besoin (en tout { $count }) ne sont pas faites et leurs creux pas remplis ; ôter [[pattern.print]] pour les avoir
making-cores-none = aucun noyau n'est fait pour les creux, et aucun n'est rempli : { $why }
making-walls = dépouille donnée à { $walls } parois
making-tight = pas de place pour toute la dépouille en { $place } du dessin, où { $gap } de sable sépare les parois : { $has } donnés sur { $wanted }
making-tight-more = { $walls ->
    [one] une autre paroi n'a
   *[other] { $walls } autres parois n'ont
} pas de place pour toute la dépouille
making-no-draught = aucune dépouille n'a été donnée ({ $why }) : la dessiner dans la pièce, ou en demander moins sous pattern.draught
making-walls-held = { $area } de paroi a du métal dessus et dessous et reste sans dépouille
making-holds-sand = démoulé droit, il retient { $volume } de sable : il faut là un noyau, une pièce démontable ou un autre joint
making-pins = goujons : deux tiges de { $rod }, serrées dans le demi-modèle de dessus, dans des trous de { $hole } au demi-modèle de dessous, { $depth } de profond dessus et { $wide } dessous
making-no-pins = le joint n'a pas de place pour des goujons : assemblez les demi-modèles d'après un repère
making-loose = pièce démontable { $number }
making-loose-drag = la pièce démontable { $number } vers { $place } reste dans le dessous au démoulage : la pousser ensuite de { $length } selon { $way } dans le creux, puis la lever
making-loose-cope = la pièce démontable { $number } vers { $place } reste dans le dessus au démoulage : retourner le dessus, la pousser de { $length } selon { $way } dans le creux, puis la lever
making-loose-pins = pièce démontable { $number } : deux goujons de { $rod } la traversent de l'extérieur et entrent de { $depth } dans le modèle ; les retirer dès que le sable tient autour d'elle
making-loose-no-pins = la pièce démontable { $number } n'a pas de place pour deux goujons : la tenir par un fil jusqu'à ce que le sable tienne autour d'elle
making-loose-stuck = aucune pièce démontable ne libère les { $volume } de sable vers { $place }, elle devrait traverser { $sand } de sable : mettre là un noyau, ou tourner la pièce
making-dowels = { $dowels } goujons assemblent les morceaux
making-glued = { $cuts } coupes sans place pour un goujon : collez-les à plat
making-fill = fausse partie, modèle et dessous laissent vide { $gap } de leur boîte et remplissent { $overlap } deux fois
making-thin-walls = des parois imprimées de { $has } cèdent sous le fouloir : imprimez-les à { $wanted }
making-light-infill = un remplissage de { $has } laisse fléchir les dessus sous le fouloir : imprimez { $wanted }
making-coarse-layers = le sable s'accroche aux couches de { $has } : imprimez-les à { $wanted }, ou mastiquez-les
making-rub-along = enduisez l'impression et poncez ses parois dans le sens du démoulage : des lignes en travers arrachent le sable
