# Spanish, from memory: not yet read by a native founder.

# What the terminal shows of a pattern that is made: oddside pattern.

making-head = modelo para { $job }
making-sizes = pieza { $part }, modelo { $pattern }
making-contracts = agrandado { $x } según x, { $y } según y, { $z } según z del dibujo
making-joint = junta a { $height } sobre el punto más bajo del modelo
making-joint-wanders = junta de { $low } a { $high } sobre el punto más bajo del modelo: sigue la línea de partición

making-step = paso
making-volume = volumen
making-change = cambio
making-part = la pieza
making-stock = sobrematerial de mecanizado
making-contraction = contracción
making-draught = salida
making-hollows = huecos rellenos para los machos
making-prints = portadas de macho

making-piece = sólido
making-size = tamaño
making-plastic = plástico
making-pattern = modelo
making-drag = mitad de abajo
making-cope = mitad de arriba
making-oddside = falsa caja
making-board = placa
making-numbered = { $what }, trozo { $number }

making-gauge = gramil, alturas sobre la mesa en mm
making-station = punto
making-height = altura
making-slope = pendiente

making-left-on = sobrematerial: { $depth } en { $area }, { $places ->
    [one] una cara o un agujero
   *[other] { $places } caras o agujeros
}, añade { $volume }
making-core-prints = macho { $name }: su hueco se rellena y { $count } portadas sobresalen { $lengths }, con { $play } de juego alrededor de las del macho; lugar y ancho llevan la contracción, el largo se mide después
making-core-print = macho { $name }: su hueco se rellena y una portada sobresale { $lengths }, con { $play } de juego alrededor de la del macho; lugar y ancho llevan la contracción, el largo se mide después
making-cores-by-hand = el trabajo da portadas a mano: las de los machos que la pieza necesita (en total { $count }) no se hacen ni se rellenan sus huecos; quite [[pattern.print]] para tenerlas
making-cores-none = no se hace macho para los huecos, y ninguno se rellena: { $why }
making-walls = salida dada a { $walls } paredes
making-tight = no cabe toda la salida en { $place } del dibujo, donde hay { $gap } de arena entre las paredes: se dieron { $has } de { $wanted }
making-tight-more = { $walls ->
    [one] otra pared no tiene
   *[other] otras { $walls } paredes no tienen
} sitio para toda la salida
making-no-draught = no se dio salida ({ $why }): dibújela en la pieza, o pida menos en pattern.draught
making-walls-held = { $area } de pared tiene metal encima y debajo y queda sin salida
making-holds-sand = sacado recto retiene { $volume } de arena: ahí hace falta un macho, una pieza suelta u otra junta
making-pins = espigas: dos varillas de { $rod }, justas en la mitad de arriba, en agujeros de { $hole } en la mitad de abajo, { $depth } de hondo arriba y { $wide } abajo
making-no-pins = la junta no tiene sitio para espigas: junte las mitades por una marca
making-loose = pieza suelta { $number }
making-loose-drag = la pieza suelta { $number } hacia { $place } se queda en la caja de abajo al sacar el modelo: muévala luego { $length } según { $way } hacia el hueco y levántela
making-loose-cope = la pieza suelta { $number } hacia { $place } se queda en la caja de arriba al sacar el modelo: dé la vuelta a la caja, muévala { $length } según { $way } hacia el hueco y levántela
making-loose-pins = pieza suelta { $number }: dos espigas de { $rod } la atraviesan desde fuera y entran { $depth } en el modelo; sáquelas cuando la arena esté firme a su alrededor
making-loose-no-pins = la pieza suelta { $number } no tiene sitio para dos espigas: sujétela con un alambre hasta que la arena esté firme a su alrededor
making-loose-stuck = ninguna pieza suelta libera los { $volume } de arena hacia { $place }, tendría que atravesar { $sand } de arena: ponga ahí un macho o gire la pieza
making-dowels = { $dowels } espigas unen los trozos
making-glued = { $cuts } cortes sin sitio para una espiga: péguelos plano contra plano
making-fill = falsa caja, modelo y caja de abajo dejan vacío { $gap } de su caja y llenan { $overlap } dos veces
making-thin-walls = paredes impresas de { $has } ceden bajo el pisón: imprímalas de { $wanted }
making-light-infill = un relleno de { $has } deja flexar las tapas bajo el pisón: imprima { $wanted }
making-coarse-layers = la arena se agarra a capas de { $has }: imprímalas de { $wanted }, o enmasíllelas
making-rub-along = selle la impresión y lije sus paredes en el sentido del desmoldeo: las líneas de través arrancan la arena
