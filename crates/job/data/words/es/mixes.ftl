# Spanish, from memory: not yet read by a native founder.

# Mixes: what each is, what to do in order, and what to mind.

mix-sugar-clay = arena ligada con melaza y bentonita cálcica
mix-bentonite = arena lavada ligada con bentonita sódica
mix-natural = arena natural tal como se extrae, o arena con arcilla de tierra
mix-oil-core = arena de machos ligada con aceite de linaza cocido y cereal
mix-silicate-core = arena de machos ligada con silicato de sodio
mix-flour-core = arena de machos horneada con harina y aceite de linaza cocido

## Steps

mix-step-strew-bentonite = humedezca la arena, espolvoree la bentonita, mezcle hasta que no quede ningún grumo gris
mix-step-spray-in-thirds = rocíe el agua en tres veces y guarde el último tercio
mix-step-mull = amase hasta que no quede ninguna veta y dos pruebas con diez minutos entre ellas den igual: oddside sand mull
mix-step-squeeze-before-the-rest = deje reposar una hora o una noche; apriete un puñado, rómpalo, apisone una probeta; solo entonces temple el resto
mix-step-flour-oil-water = mezcle arena y harina, luego el aceite, luego agua hasta que aguante
mix-step-bake-till-smoking = hornee despacio hasta 250 °C, hasta que esté oscuro y apenas humee
mix-step-riddle-and-look-at-the-clay = criba piedras y raíces; mire primero la arcilla: frasco, luego lavado
mix-step-temper-natural = temple una prueba con 7, 8 y 9 % de agua y tome el mejor apretón: las cifras de la bentonita no valen
mix-step-cereal-oil-water = mezcle arena y cereal, luego el aceite; el agua solo cuando el aceite esté mezclado
mix-step-bake-till-brown = hornee una hora en caliente por cada 25 mm: 180 a 200 °C, hasta que sea color nuez por dentro
mix-step-mix-and-gas = mezcle dos minutos, apisone enseguida, gasee en golpes de pocos segundos y pare cuando esté firme
mix-step-compare-by-solids = las dosis de frascos distintos se comparan solo por sus sólidos: lea sosa y sílice en la etiqueta
mix-step-wash-sand = lave la arena en cuatro o cinco aguas, y séquela
mix-step-clay-then-syrup = mezcle arena y bentonita, humedecidas; luego la melaza disuelta en el agua
mix-step-dry-back = el agua añadida solo facilita mezclar: séquela de vuelta a su temple de trabajo, por su buen apretón
mix-step-part-without-flour = separe con polvo de cocina coloreado, nunca con harina de sílice; un modelo impreso de plástico a menudo no lo necesita
mix-step-skin-dry = seque la piel u hornee antes de colar, y cuele mientras esté caliente

## What to mind

mix-mind-soft-water = el agua dura o salada estropea la bentonita sódica: use agua de lluvia
mix-mind-flour-burns = la harina en el aire de una mezcladora arde: ninguna llama cerca
mix-mind-starch-gas = almidón y aceite dan gas al colar encima: ventile el macho, y cuele al aire libre
mix-mind-natural-water = las arenas naturales se moldean con 8 a 9 % de agua: no las corrija a 4
mix-mind-oily-rags = los trapos con aceite de linaza arden solos: extiéndalos al aire libre, o en agua
mix-mind-bake-outdoors = hornee al aire libre o bajo campana: un macho poco horneado da gas por dentro
mix-mind-silicate-lye = el silicato es cáustico: guantes y gafas, y agua a mano para los ojos
mix-mind-carbon-dioxide = el dióxido de carbono pesa más que el aire y no se huele: nunca gasee en un foso ni en un cuarto cerrado
mix-mind-silicate-out = mantenga los machos de silicato rotos fuera de un montón con arcilla
mix-mind-calcium-bentonite = bentonita cálcica, no sódica
mix-mind-sugar-gas = el azúcar da gas al colar encima: ventile, y cuele al aire libre
