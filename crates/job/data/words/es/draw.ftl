# Sentidos de extracción de una pieza.

draw-way = caja superior levantada según
draw-held = arena retenida
draw-undercut = contrasalida
draw-cope = en la superior
draw-drag = en la inferior
draw-wanders = la junta varía
draw-shadow = sombra
draw-clear = puesta como en el trabajo, según { $way }, nada queda retenido: sale
draw-holds = puesta como en el trabajo, según { $way }, quedan retenidos { $held } de arena
