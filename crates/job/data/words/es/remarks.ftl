# Spanish, from memory: not yet read by a native founder.

# Trade words: caja de moldeo, caja superior and caja inferior (sobre and bajo are heard too, and read
# like prepositions in a sentence), junta, bebedero, canal, ataque, mazarota, rechupe, contracción,
# salida, macho, portada. Numbers keep the decimal point and units their signs.

# What the founder is told beside the figures, and what to do about it.
#
# The id of a remark is its code; after a hyphen it says which of several wordings it is.

## The mesh

open_boundary = { $edges } arista(s) abierta(s) en { $loops } abertura(s): la piel tiene agujeros
    .advice = cierre la piel en ese lugar en su programa de dibujo y exporte un sólido
missing_face = faltaban caras de la piel ({ $area }) y se cerraron en plano; el volumen es de { $least } a { $most } según la tapa
    .advice = compruebe que la pieza es maciza ahí; una pieza hueca dibujada sin espesor se toma por maciza: dele una pared
winding = facetas vueltas contra sus vecinas a lo largo de { $edges } arista(s)
    .advice = exporte la pieza otra vez como un solo sólido
inverted = { $shells } cáscara(s) con lo de dentro hacia fuera
    .advice = exporte la pieza otra vez como un solo sólido
non_manifold = { $edges } arista(s) donde se juntan más de dos facetas
    .advice = una o separe los cuerpos que se juntan en esa arista
self_intersection = { $facets } faceta(s) atraviesan otras; { $miscounted } del metal contado dos veces o al revés
    .advice = una los cuerpos en su programa de dibujo y exporte otra vez
duplicate_facets = { $facets } faceta(s) repetida(s)
    .advice = exporte la pieza otra vez
degenerate_facets = { $facets } faceta(s) sin área
    .advice = exporte la pieza otra vez
multi_body = { $count } cuerpos separados
    .advice = cada uno se cuela como está puesto; use un archivo por cuerpo si son piezas distintas
multi_body-within = { $count } cuerpos separados, { $within } de ellos dentro del metal de otro
    .advice = una los cuerpos, o exporte el que corresponde
enclosed_void = { $count } hueco(s) encerrado(s) por metal, { $volume } en total
    .advice = ningún macho podría sostenerse en él ni sacarse al desmoldear: ábralo hacia fuera o rellénelo
no_volume = no hay volumen que se pueda colar
    .advice = dé una pared a la pieza y expórtela como sólido
unit_suspect = el archivo dice { $unit }, con lo que el lado mayor mide { $size }
    .advice = compare esa medida con el dibujo antes de hacer nada
unit_suspect-none = el archivo no da unidad y su lado mayor es { $size }
    .advice = elija (part.unit en el archivo, o --unit): { $offers }; una mano mide unos 190 mm, un lápiz 175 mm
    .sheet = elija su unidad: { $offers }; una mano mide unos 190 mm, un lápiz 175 mm
unit_judged = el archivo no da unidad; se toman milímetros: { $mm } ({ $inches })
    .advice = si está mal, indique la unidad: part.unit en el archivo, o --unit
    .sheet = si está mal, ponga otra en «{ key-unit }»
mended = reparado: { $done }
    .advice = el archivo mismo quedó como estaba

## The part

solids_apart = los sólidos forman { $bodies } cuerpos separados
    .advice = los que van juntos deben tocarse: haga que uno entre un milímetro en el otro
solid_adds_nothing = el sólido { $number } queda entero dentro de lo anterior
    .advice = revise su lugar y sus medidas; no añade metal
solid_takes_nothing = el sólido { $number } quita donde no hay nada
    .advice = revise su lugar; solo actúa sobre los sólidos anotados antes que él
volume_guessed = sin un peso, el metal es una suposición: { $low } a { $high }
    .advice = pese el modelo, mejor en agua, y escriba [part.displaced]; hasta entonces funda para el extremo alto
    .sheet = pese el modelo en aire y en agua y escriba ambos pesos en el archivo de la pieza, job.toml, en [part.displaced]; la hoja lo sigue en cuanto se guarda; hasta entonces funda para el extremo alto
volume_by_weight = solo por peso, el metal puede errar en { $off }
    .advice = pesar en agua lo reduce a un dos por ciento: escriba [part.displaced]
    .sheet = pesar también en agua lo reduce a un dos por ciento: escriba ambos pesos en el archivo de la pieza, job.toml, en [part.displaced]; la hoja lo sigue en cuanto se guarda
sizes_only = paredes, sombra y módulos se basan en cinco medidas, no en una forma
    .advice = sus márgenes son anchos: tome el lado seguro de cada uno, y escriba mould.joint
    .sheet = sus márgenes son anchos: tome el lado seguro de cada uno, y rellene «{ key-joint }»
sizes_only-joint = paredes, sombra y módulos se basan en cinco medidas, no en una forma; la junta se toma a media altura
    .advice = sus márgenes son anchos: tome el lado seguro de cada uno, y escriba mould.joint
    .sheet = sus márgenes son anchos: tome el lado seguro de cada uno, y rellene «{ key-joint }»
prove_it-pressure = la pieza soporta presión: ninguna cifra de aquí dice que sea segura
    .advice = { proved-by-test }
prove_it-lifting = la pieza sirve para izar o sostiene personas: ninguna cifra de aquí dice que sea segura
    .advice = { proved-by-test }
prove_it-brake = la pieza es parte de un freno: ninguna cifra de aquí dice que sea segura
    .advice = { proved-by-test }
prove_it-food = la pieza toca alimentos: ninguna cifra de aquí dice que sea segura
    .advice = { proved-by-test }
prove_it-load = la pieza lleva una carga: ninguna cifra de aquí dice que sea segura
    .advice = { proved-by-test }

## The pattern

enclosed_void-plan = { $count } hueco(s) cerrado(s) dentro de la pieza no se pueden moldear
    .advice = ningún macho puede sostenerse dentro ni sacarse al desmoldear: ábralos hacia fuera o rellénelos
thin_wall = paredes de unos { $wall }; este metal suele pedir { $least } en arena
    .advice = engruese la pared, ponga el ataque cerca de ella, o cuele en el extremo caliente del margen
walls_unmeasured = las paredes en { $share } de la superficie son demasiado delgadas para las celdas usadas aquí
    .advice = mídalas a mano; no entran en las secciones
contraction_disputed = { $sources } fuentes dan la contracción en { $low } a { $high }
    .advice = mida su próxima pieza y escriba metal.contraction en el trabajo
    .sheet = mida su próxima pieza y rellene «{ key-contraction }»
worn_original = moldeado tal como está, un original de { $longest } da { $low } a { $high }: ya se contrajo una vez
    .advice = aumente sus caras por contracción, desgaste y mecanizado antes de moldearlo; la pintura vieja puede tener plomo: no la lije en seco
machined_faces = el sobreespesor de mecanizado no está en la malla, hasta donde sabe este plan
    .advice = súmelo a cada cara mecanizada, más a las que quedan bajo la caja superior; mejor, ponga hacia abajo la cara más importante
rapping_not_counted = con { $longest }, el golpeteo del modelo no compensa la contracción
    .advice = haga el modelo más grande por la contracción entera; por encima de unos 75 mm el golpeteo es muy poco a su lado
no_draft = { $share } de la piel queda vertical con la pieza tendida: no tiene salida para desmoldear
    .advice = dé a esas paredes la salida que pide el plan; donde aprietan la arena hace falta más
print_lines = un modelo impreso en capas de { $layer } retiene la arena en sus líneas
    .advice = séllelo, líjelo en el sentido del desmoldeo y encérelo antes de apisonar
cannot_draw = { $what }: tal como está dibujado no sale de la arena
    .advice = escalone la junta hasta allí, hágalo pieza suelta o macho, o asiente el modelo en un falso molde
not_looked_at = salida, contrasalidas, junta y portadas del macho no se revisan aquí
    .advice = pruebe el modelo en arena seca antes de apisonarlo

## Flask, sand and weights

flask_none = { $why }
    .advice = el plan sigue con una caja de esa medida, por hacer
flask_tight = { $why }
    .advice = apisone con cuidado los lugares estrechos, o tome una caja más grande
no_head = la colada llega a { $pour } sobre la junta y la pieza a { $top }: no puede llenarse
    .advice = levante el pocillo, tome una caja superior más alta, o ponga más de la pieza en la caja inferior
sand_short = el molde pide { $wanted } de arena, el montón tiene { $there }
    .advice = mezcle más, o rellene detrás de la arena de contacto con arena vieja seca
heap_unknown = el montón no está en shop.toml, por eso la arena no se compara con él
    .advice = péselo una vez por baldes y escriba [heap]
    .sheet = péselo una vez por baldes y rellene «{ key-heap-mass }» en la hoja de la arena
too_wet = el montón está a { $moisture } de la masa húmeda; por encima de { $limit } el agua del molde se vuelve vapor
    .advice = séquelo y pese otra vez un puñado antes de apisonar
moisture_unknown = no se conoce la humedad del montón
    .advice = pese un puñado húmedo y seco; la arena mojada bajo el metal se lo lanza a usted encima
flask_heavy = media caja pesa { $load }; tres personas pueden levantar juntas { $three }
    .advice = use un polipasto, apisónela donde se cuela, o tome una caja más pequeña
weights_needed = el metal levanta la caja superior: { $lay } encima de ella no son opcionales
    .advice = póngalos, o sujete con mordazas para la misma fuerza, antes de la primera gota
mould_stands = el molde espera { $stands } antes de la colada; una arena así se conserva unas { $keeps }
    .advice = ciérrelo y cúbralo; antes de colar toque la piel: ni gotas, ni migas, ni polvo
mould_stands-long = el molde espera { $stands } antes de la colada; una arena así se conserva unas { $keeps }
    .advice = cúbralo; antes de colar toque la piel: si se desmorona, humedezca, deje reposar y endurezca; si gotea o se siente mojada, séquela o moldee de nuevo
irons_short = { $wanted } deben ir sobre la caja superior; sus hierros suman { $there }
    .advice = sujete caja superior e inferior con mordazas para la misma fuerza, o consiga pesos prestados

## Feeding and filling

feeder_none-thin = sin mazarota: toda sección es bastante delgada para que la alimente su ataque
    .advice = si aun así se rechupa un resalte, alimente ese resalte la próxima vez
feeder_none-iron = sin mazarota: la fundición con este carbono se expande en un molde mostrado firme por: { $shown }
    .advice = vale solo mientras cada molde sea igual de firme; un cubo grueso puede rechuparse: aliméntelo o póngale un enfriador
feeder_iron = se prevé una mazarota: ningún ensayo muestra firme el molde, o no se conoce el carbono
    .advice = escriba mould.firm y metal.carbon_equivalent cuando los conozca
    .sheet = cuando los conozca, escriba en el archivo de la pieza, job.toml, qué mostró firme el molde (firm, en [mould]) y carbon_equivalent (en [metal])
feeder_impossible = el rechupe es más de lo que puede dar una mazarota simple de cualquier tamaño
    .advice = use un manguito aislante, varias mazarotas, o enfriadores; consulte a un fundidor con experiencia
feeder_high = la mazarota tiene { $height } de alto y la caja superior { $cope }
    .advice = ponga un anillo de arena sobre la caja superior, o tome una caja superior más alta
hot_spot-meet = lo último en solidificar es donde { $one } se une con { $other }
    .advice = ahí va la mazarota o el enfriador, aunque otra parte parezca más gruesa
hot_spot-in = lo último en solidificar está en { $one }
    .advice = ahí va la mazarota o el enfriador, aunque otra parte parezca más gruesa
more_heavy_sections = { $count } sección(es) más casi tan gruesa(s) como la alimentada, esta es la siguiente
    .advice = cada una solidifica por su cuenta: aliméntela o póngale un enfriador, o únalas con una pared más gruesa
fills_too_late = la pared más delgada, unos { $wall }, solidifica en { $freezes }: ningún bebedero usual la llena
    .advice = espere que salga incompleta: engrósela, ponga el ataque directo en ella, o déjela para mecanizar
fill_must_hurry = la pared más delgada solidifica antes del tiempo de llenado usual
    .advice = el estrangulamiento es para el tiempo más corto: cuele sin pausa, en el extremo caliente del margen
gate_too_fast-widen = el ataque más rápido corre a { $speed }; por encima de { $limit } el frente se rompe, pliega su piel hacia dentro y arrastra arena
    .advice = corte los ataques a { $area } en total, anchos y bajos, y alimente desde abajo
gate_too_fast-slow = el ataque más rápido corre a { $speed }; por encima de { $limit } el frente se rompe, pliega su piel hacia dentro y arrastra arena
    .advice = baje la altura de colada o frene el metal en un canal más ancho o un filtro; los ataques solos no lo dominan
gates_uneven = con ataques de un solo tamaño, la última pieza se llena { $lag } después de la primera
    .advice = corte los ataques a { $cut } desde el bebedero hacia fuera, o reduzca el canal por escalones

## Cores

core_seat_unknown = no se dice cómo se apoya el macho "{ $core }"; se cuenta toda su flotación
    .advice = escriba sits = hung, bridged, standing o chaplets; dele respiradero por su portada
core_pins = el macho "{ $core }" no tiene portada y tiene { $pins } pasadores: puede girar sobre ellos
    .advice = tres pasadores como mínimo, no todos en un plano, y un respiradero al aire
core_loose = el macho "{ $core }" descansa sobre su portada y flota con { $lift } en cuanto el metal se mete debajo
    .advice = sujételo desde arriba con pasador o soporte; dele respiradero por la portada, libre de metal
core_oversize = lo grueso solidifica mucho después de lo delgado; un macho "{ $core }" mayor quita metal donde atraviesa lo grueso
    .advice = haga el agujero con macho más grande si el dibujo lo permite, tanto más que la pieza se contrae de { $low } a { $high }
core_print = la portada del macho "{ $core }" aprieta con { $pressure } sobre arena que aguanta { $strength }
    .advice = agrande la portada hasta que la arena sea el doble de fuerte, o apisónela más duro ahí

## The metal

crucible_none = ninguno de sus crisoles admite { $charge } al llenado de trabajo
    .advice = un molde debe colarse de una vez: cuele menos piezas, o consiga un crisol prestado
crucible_unknown = no hay crisol en shop.toml, por eso la carga no se compara con uno
    .advice = escriba [[crucible]] con su marca o su volumen hasta el borde
    .sheet = escriba su marca o su volumen hasta el borde en el archivo del taller, shop.toml, en [[crucible]]; la hoja lo sigue en cuanto se guarda
loss_unknown = no hay cifra de merma de fusión de este metal en esta clase de horno; se toma de lo mejor a lo peor de los otros hornos
    .advice = pese una vez lo que entra y lo que sale, y escriba melt.loss
    .sheet = pese una vez lo que entra y lo que sale, y rellene «{ key-loss }»
lead_food = este metal tiene plomo, o puede tenerlo: no se cuela con él nada que toque alimentos
    .advice = solo lingote limpio de composición conocida; separar la chatarra baja el riesgo y no lo elimina; pregunte a su autoridad sanitaria de alimentos
zinc_back = el zinc se va en humo y se repone al final: puede inflamarse
    .advice = caliente, seco, hundido con tenazas, a la temperatura más baja que corra; al aire libre, del lado de donde viene el viento, con respirador para humos
pour_hot = la fundición en una pared de { $wall } se cuela caliente: de { $low } a { $high }; más fría no llena y sale blanca
    .advice = en el pico, a pocos minutos del inoculante; los libros dicen de 1350 a 1450 °C para paredes delgadas, una fundición cuela todo de 1320 a 1440 °C
no_probe = sin sonda: el calor se lee en una tarjeta de colores y piel, y por lo que tarda en solidificar una cucharada
    .advice = oddside reckon spoon lee ambas cosas; ajuste la cuchara una vez junto a una sonda prestada; en la duda, cuele primero una barra de prueba
scrap_was = { $was }: { $mind }
    .advice = antes de meter nada en el crisol; lo que no se puede limpiar se queda fuera
wanted_equivalent = una pared de { $wall } pide un carbono equivalente de { $low } a { $high }, para que se pueda limar
    .advice = indique la mezcla de la chatarra como intervalo; placas de estufa y radiadores son ricos en fósforo
degas = desgasificar lleva de { $low } a { $high } de pastillas a 730 a 760 °C, si es que se hace
    .advice = al aire libre y del lado de donde viene el viento, hundidas secas y calientes, luego 2 a 3 min de reposo; dos vasitos de muestra dicen si sirvió

# These four say the same as the table of fume and poison, crates/metal/data/fumes.toml.
zinc_fume = el zinc hierve en humo blanco y da fiebre de los humos metálicos
    .advice = al aire libre o bajo campana, del lado de donde viene el viento, con respirador para humos; no sobrecaliente
lead = tiene plomo: el humo, el polvo y las espumas envenenan
    .advice = respirador, no coma ni fume cerca, lávese antes de ir a casa; nunca para alimentos
magnesium_scrap = el magnesio parece aluminio; arde, y el agua lo empeora
    .advice = pruebe cada trozo de chatarra; tenga a mano arena seca o un extintor de clase D
unknown_scrap = la chatarra de composición desconocida puede tener plomo, cadmio o pintura
    .advice = tome solo chatarra que ya fue colada antes y cuyo origen conozca; nunca para alimentos

takes_up_gas = toma hidrógeno si se mantiene mucho tiempo, caliente o con humedad: poros
    .advice = funda rápido, seque todo, cuele apenas esté listo
oxide_folds = una piel dura se pliega hacia dentro donde el chorro se rompe
    .advice = mantenga lleno el pocillo, llene desde abajo, sin salpicar
spoiled_by_lead = trazas de plomo, estaño o cadmio pudren estas piezas con los años
    .advice = solo lingote conocido, con crisol y útiles propios
spoiled_by_aluminium = un poco de aluminio o silicio de otra chatarra lo arruina
    .advice = guarde aparte sus retornos y útiles
spoiled_by_brass_returns = los retornos con plomo lo agrietan
    .advice = ningún retorno de latón ni de bronce rojo en esta carga
chills_white = las secciones delgadas pueden salir blancas y duras
    .advice = cuele primero una cuña de temple; inocule y cuele en pocos minutos
tears_hot = se desgarra en el molde donde queda retenido
    .advice = redondee las esquinas, apisone flojos los machos, abra bastante pronto
fine_sponge = esponja fina en secciones gruesas con cualquier mazarota
    .advice = ponga hacia abajo las caras que se mecanizan, con enfriadores

## The charge

charge_galvanised = { $heap }: recubierto de zinc: humo blanco al fundirse, y fiebre después
    .advice = no lo cargue; si tiene que entrar, al aire libre, del lado de donde viene el viento, con respirador para humos
charge_leaded = { $heap }: tiene plomo: su humo, su polvo y sus espumas envenenan
    .advice = respirador, no coma ni fume cerca, lávese antes de ir a casa; nunca para alimentos
charge_painted = { $heap }: la pintura y los recubrimientos arden con humo venenoso; la pintura vieja tiene plomo
    .advice = quítela primero, no con fuego; al aire libre, del lado de donde viene el viento, con respirador para humos
charge_oily = { $heap }: el aceite se inflama, humea y mete gas en el baño
    .advice = lávelo y séquelo; nunca eche metal aceitoso en un baño
charge_plated = { $heap }: el recubrimiento puede ser de cromo, níquel o cadmio: humo venenoso
    .advice = no lo cargue si no sabe de qué es ese recubrimiento
charge_damp = { $heap }: los trozos húmedos o huecos hacen saltar el metal líquido fuera del crisol
    .advice = abra todo hueco, séquelo con calor, y cárguelo solo en un crisol frío
charge_unstated = { $heap }: nada dicho de { $elements }; se toma que no hay
    .advice = escriba un intervalo, como "below 0.15 %": la probabilidad cuenta lo que está escrito
charge_no_price = sin precio para { $heaps }: se cuenta como si no costara nada
    .advice = escriba lo que darían por él o lo que cuesta algo parecido; si no, entra primero
charge_scale = redondeado a la balanza, { $elements } se sale del objetivo
    .advice = pese en una balanza más fina (scale_step), o haga una carga más grande
charge_unsure = los montones no se conocen bastante bien para este objetivo
    .advice = sepárelos, haga analizar un trozo de cada uno, o tome más del metal más puro
charge_try = una composición de carga es una suma de suposiciones hasta que se prueba el baño
    .advice = cuele una cuña o una barra de prueba y mire la fractura antes de colar el molde
charge_not_made = no hay carga con sus montones: { $why }
    .advice = añada lo que se nombra, o amplíe los límites en [charge]
    .sheet = añada lo que se nombra a los montones del archivo del taller, shop.toml, o amplíe los límites en el archivo de la pieza, job.toml, en [charge]

## Opening

hot_mould = si se abre antes de { $open } puede estar líquido o al rojo por dentro
    .advice = cuente desde el final de la colada; tenazas, guantes, botas; nunca agua encima
hot_mould-oil = si se abre antes de { $open } puede estar líquido o al rojo por dentro, y el aceite en la arena caliente se inflama
    .advice = cuente desde el final de la colada; tenazas, guantes, botas; nunca agua encima
open_late = lo grueso y lo delgado van unidos: lo que enfría primero tira, y agrieta o se agrieta
    .advice = déjelo { $open } en su arena; curve los brazos rectos entre grueso y delgado, en número impar y esbeltos; nada de esto basta por sí solo
never_cold = tanto metal en tan poca arena no está frío en dos semanas
    .advice = tome una caja más grande, o haga que la abra un fundidor con experiencia
solved_longer = según el calor en el molde, las piezas tardan { $solved } en solidificarse, y no { $pencil } como según la ley de los módulos
    .advice = cuente con lo más largo: no toque el molde hasta entonces
solved_sooner = según el calor en el molde, las piezas están sólidas tras { $solved }, y no { $pencil } como según la ley de los módulos
    .advice = la ley cuenta solo la sección más gruesa; el plan queda del lado tardío
solved_open = según el calor en el molde, las piezas están bastante frías tras { $solved }, y no { $plan } como dice el plan
    .advice = abra a la hora más tardía
solved_cut_off = lugares de las piezas cortados de toda mazarota mientras se solidifican: { $count }; les faltan { $lacks } de metal
    .advice = vea dónde con oddside freeze: alimente, enfríe o engruese el paso
    .sheet = vea dónde en el corte de la solidificación, más abajo: alimente, enfríe o engruese el paso
solved_stale = lo guardado de una solidificación es de otro plan u otra malla y no se usa
    .advice = ejecute otra vez oddside freeze con --force
    .sheet = siga la solidificación una vez más, más abajo
