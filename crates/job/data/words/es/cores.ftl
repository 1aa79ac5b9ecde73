# Los machos como cuerpos: lo que se hace y lo que queda al fundidor.

cores-none = nada en esta pieza necesita macho cuando se extrae en este sentido
core-made = macho { $name }: { $volume } de arena de macho, { $mass }, con sus portadas, alrededor de { $place }
core-prints = macho { $name }: { $count } portadas, de { $lengths } de largo, tan largas como anchas hasta 3 in; el modelo las lleva con 0,4 mm de juego
core-prints-by-sand = macho { $name }: { $count } portadas, de { $lengths } de largo, para que esta arena soporte tres veces el macho; el modelo las lleva con 0,4 mm de juego
core-prints-by-job = macho { $name }: { $count } portadas, de { $lengths } de largo como dice el trabajo; el modelo las lleva con 0,4 mm de juego
core-one-print = el macho { $name } se sostiene solo de un extremo, con una portada de { $length }: alárguela hasta que pese más que el macho, o ponga soportes
core-box-halves = macho { $name }: caja de dos mitades, inferior { $lower }, superior { $upper }, lados abiertos para apisonar: { $open }
core-box-stepped = macho { $name }: caja de dos mitades con junta escalonada, inferior { $lower }, superior { $upper }, lados abiertos para apisonar: { $open }
core-box-slides = macho { $name }: la caja tiene { $count ->
    [one] una corredera
   *[other] { $count } correderas
}, que se sacan a nivel antes de levantar las mitades, según { $ways }; líjelas hasta que corran bien, y marque el lugar de cada una
core-box-none = macho { $name }: ninguna caja de dos mitades lo suelta, con correderas o sin ellas, quedan sujetos { $held } hacia { $place }: haga el macho en dos partes y péguelas
core-box-none-sought = macho { $name }: ninguna caja de dos mitades lo suelta, y está tallado demasiado fino para buscarle correderas; quedan sujetos { $held } hacia { $place }: haga el macho en dos partes y péguelas
core-box-fails = macho { $name }: no se pudo cortar su caja: { $why }
core-vent-straight = macho { $name }: pínchelo con un alambre recto, de { $length } de largo y no más grueso que { $across }, de portada a portada
core-vent-bent = macho { $name }: su respiradero es curvo: apisone en el medio un cordón de cera de { $length } y no más grueso que { $across }, y derrítalo
core-vent-none = macho { $name }: demasiado delgado para un respiradero en el medio: use arena abierta y ventile sus portadas
core-left = { $volume } de arena alrededor de { $place } retienen el modelo: { $remedy }; { $why }
hollows-small = { $count ->
    [one] un lugar pequeño retiene
   *[other] { $count } lugares pequeños retienen
} { $volume } de arena: rellénelos o redondéelos en el modelo
remedy-loose-piece = haga de esa parte del modelo una pieza suelta
remedy-core = llénelo con un macho
remedy-drawback = refuerce ese bloque de arena con una placa y sáquelo de lado
remedy-turn = extraiga la pieza en otro sentido
hollow-opens-sideways = se abre a un lado y es poco hondo
hollow-opens-long = se abre a un lado, pero es demasiado largo para una pieza suelta
hollow-deeper-than-high = es más hondo que alto, y la arena se rompería
hollow-runs-through = atraviesa la pieza
hollow-no-single-move = ningún movimiento recto lo libera
hollow-closed = no se abre a ningún lado
hollow-clear-when-turned = extraída así, nada retiene
