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
