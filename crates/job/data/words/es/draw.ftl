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

# Where its skin wants mending.

skin-draught = { $count ->
        [one] 1 pared, { $area }, pide
       *[other] { $count } paredes, { $area } en total, piden
    } más salida; la peor, hacia { $place }, tiene { $has } de { $wants } en { $depth }: `pattern` la da si no se dice otra cosa
skin-thin-metal = { $area } de pared hacia { $place } tienen { $has } de grueso, menos que los { $least } que este metal suele llenar: engrose, o cuele más caliente por más ataques
skin-thin-sand = la arena sobre { $area } hacia { $place } tiene { $has } de grueso: apisonada a mano aguanta desde { $least }; abra el hueco, ciérrelo o llénelo con un macho
skin-corners = { $count ->
        [one] 1 rincón
       *[other] { $count } rincones
    } sin radio, { $length } en total, el más largo gira { $turn } hacia { $place }: rompen la arena y empiezan grietas
skin-thickest = el metal más grueso, una bola de { $ball }, está detrás de { $place }: es el último en solidificar
